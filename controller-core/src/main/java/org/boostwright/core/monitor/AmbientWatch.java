package org.boostwright.core.monitor;

import org.boostwright.core.settings.UnitSettings;
import org.boostwright.core.signal.ChannelSignal;
import org.jspecify.annotations.Nullable;

/**
 * Ambient pressure in use: of the barometer, else as last measured with the engine stopped, else as
 * kept from an earlier run, else as the settings assume.
 *
 * <p>What was measured ages: the lowest pressure that is possible by now falls with the fastest
 * climb, down to a declared bound (a climb of 2000 m). The target is limited by that.
 *
 * <p>A reading below the air at home is thin air or a sensor that reads low, and one sensor cannot
 * tell which. Without a barometer the worse is taken to be true: target and overboost limit fall
 * with the reading ({@link #trustedShare}), so that a sensor whose gain or offset is low since
 * before it was read with the engine stopped makes the boost low and not high. In thin air that
 * keeps the pressure ratio.
 */
final class AmbientWatch {
  /** Largest drift allowed for without a barometer (a climb of 2000 m), kPa. */
  static final double CLIMB_BOUND_KPA = 22.0;

  private final double homeKpaAbs;
  private double kpaAbs;
  private double floorKpaAbs;
  private boolean barometerSeen;
  private boolean byBarometer;
  private long barometerNanos;
  private boolean known;

  /**
   * @param assumedKpaAbs ambient pressure to assume, and that of home; kPa absolute. NaN for none,
   *     and home at the standard atmosphere at sea level
   */
  AmbientWatch(double assumedKpaAbs) {
    homeKpaAbs = Double.isNaN(assumedKpaAbs) ? UnitSettings.STANDARD_ATMOSPHERE_KPA : assumedKpaAbs;
    kpaAbs = assumedKpaAbs;
    floorKpaAbs = assumedKpaAbs;
  }

  /** Begins with the ambient pressure of an earlier run, kPa absolute. */
  void recall(double recalledKpaAbs) {
    kpaAbs = recalledKpaAbs;
    floorKpaAbs = recalledKpaAbs - CLIMB_BOUND_KPA;
  }

  /** Judges one tick; the engine's state is already that of this tick. */
  void update(
      long nowNanos, @Nullable ChannelSignal barometer, EngineWatch engine, FaultTable faults) {
    boolean read = barometer != null && barometer.usable();
    double ageSeconds = engine.ambientAgeSeconds(nowNanos);
    if (barometer != null && read) {
      kpaAbs = barometer.value();
      barometerSeen = true;
      byBarometer = true;
      barometerNanos = nowNanos;
      ageSeconds = 0.0;
    } else if (engine.stopped()) {
      kpaAbs = engine.ambientKpaAbs();
      byBarometer = false;
    } else if (barometerSeen) {
      ageSeconds = Math.min(ageSeconds, (nowNanos - barometerNanos) * 1e-9);
    }
    known = barometerSeen || engine.ambientMeasured();
    double drift = EngineWatch.CLIMB_KPA_PER_SECOND * ageSeconds;
    floorKpaAbs = kpaAbs - Math.min(CLIMB_BOUND_KPA, drift);
    boolean inDoubt = engine.running() && !(known && drift < CLIMB_BOUND_KPA);
    faults.sample(FaultCode.AMBIENT_IN_DOUBT, inDoubt, nowNanos);
    if (!engine.onBench() && (engine.stopped() || engine.steadyOutOfRange())) {
      double apart = read ? Math.abs(engine.steadyKpaAbs() - kpaAbs) : 0.0;
      boolean agrees = engine.stopped() && apart <= EngineWatch.AMBIENT_TOLERANCE_KPA;
      faults.sample(FaultCode.MAP_AMBIENT_MISMATCH, !agrees, nowNanos);
    }
  }

  /** Ambient pressure in use, kPa absolute; NaN while unknown. */
  double kpaAbs() {
    return kpaAbs;
  }

  /** Lowest ambient pressure that is possible by now, kPa absolute; NaN while unknown. */
  double floorKpaAbs() {
    return floorKpaAbs;
  }

  /**
   * Share of a pressure that a reading may reach because the sensor may read low: {@code ambient /
   * home}, 1 at most. It is 1 where a barometer has read the ambient pressure, and down to a
   * tolerance below home, for weather and a good sensor's error; over as much again it comes down
   * to the full share.
   */
  double trustedShare() {
    double full = kpaAbs / homeKpaAbs;
    double beyond = homeKpaAbs - EngineWatch.AMBIENT_TOLERANCE_KPA - kpaAbs;
    double share = Math.max(full, 1.0 - 2.0 * beyond / homeKpaAbs);
    return share < 1.0 && !byBarometer ? share : 1.0;
  }

  /** Measured in this run, not assumed. */
  boolean known() {
    return known;
  }
}
