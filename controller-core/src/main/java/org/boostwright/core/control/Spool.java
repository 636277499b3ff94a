package org.boostwright.core.control;

import org.boostwright.core.settings.SpoolSettings;

/**
 * Spool strategy: hold the wastegate shut while pressure climbs towards the target, hand over in
 * time.
 *
 * <p>It may act only above ambient + 15 kPa, within a time limit, and while pressure rises as
 * expected; otherwise base duty takes over and {@link #gaveUp} says so. Handover happens when
 * {@code MAP + lead * rate >= target}: the faster the rise, the earlier. After a handover it rests
 * until the demand has gone, so that it cannot hunt.
 */
public final class Spool {
  static final double MIN_GAUGE_KPA = 15.0;
  private static final double WORTH_KPA = 10.0;
  private static final double RISE_CHECK_SECONDS = 0.5;

  private enum Phase {
    ARMED,
    HOLDING,
    DONE
  }

  private final SpoolSettings settings;
  private Phase phase = Phase.ARMED;
  private double heldSeconds;
  private double sinceCheckSeconds;
  private double checkKpaAbs;
  private boolean gaveUp;

  /** An armed strategy. */
  public Spool(SpoolSettings settings) {
    this.settings = settings;
  }

  /** The demand has gone: arm again. */
  public void arm() {
    phase = Phase.ARMED;
    gaveUp = false;
  }

  /**
   * One tick while controlling.
   *
   * @return true while the wastegate shall be held shut
   */
  public boolean update(
      double mapKpaAbs,
      double rateKpaPerSecond,
      double targetKpaAbs,
      double ambientKpaAbs,
      double dt) {
    if (!settings.enabled()) {
      return false;
    }
    boolean handOver = !(mapKpaAbs + settings.leadSeconds() * rateKpaPerSecond < targetKpaAbs);
    if (phase == Phase.ARMED) {
      boolean mayAct = mapKpaAbs > ambientKpaAbs + MIN_GAUGE_KPA;
      if (mayAct && !handOver && targetKpaAbs - mapKpaAbs > WORTH_KPA) {
        phase = Phase.HOLDING;
        heldSeconds = 0.0;
        sinceCheckSeconds = 0.0;
        checkKpaAbs = mapKpaAbs;
      }
    } else if (phase == Phase.HOLDING) {
      hold(mapKpaAbs, handOver, dt);
    }
    return phase == Phase.HOLDING;
  }

  private void hold(double mapKpaAbs, boolean handOver, double dt) {
    heldSeconds += dt;
    sinceCheckSeconds += dt;
    if (handOver) {
      phase = Phase.DONE;
      return;
    }
    if (sinceCheckSeconds >= RISE_CHECK_SECONDS) {
      double rise = (mapKpaAbs - checkKpaAbs) / sinceCheckSeconds;
      gaveUp = !(rise >= settings.minRiseKpaPerSecond());
      sinceCheckSeconds = 0.0;
      checkKpaAbs = mapKpaAbs;
    }
    if (!(heldSeconds < settings.timeLimitSeconds())) {
      gaveUp = true;
    }
    if (gaveUp) {
      phase = Phase.DONE;
    }
  }

  /** Given up on this demand because pressure did not rise as expected or time ran out. */
  public boolean gaveUp() {
    return gaveUp;
  }

  /** Enabled, has not acted on this demand, and will once pressure is high enough. */
  public boolean pending(double errorKpa) {
    return settings.enabled() && phase == Phase.ARMED && errorKpa > WORTH_KPA;
  }

  /** Armed: has not acted on this demand. */
  public boolean armed() {
    return phase == Phase.ARMED;
  }
}
