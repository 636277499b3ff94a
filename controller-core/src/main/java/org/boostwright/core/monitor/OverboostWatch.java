package org.boostwright.core.monitor;

import org.boostwright.core.signal.SignalStatus;
import org.boostwright.core.signal.Signals;

/**
 * Pressure above the limit, independent of the control law.
 *
 * <p>Only valid samples count, and while pressure changes faster than an engine can (300 kPa/s) the
 * watch waits, for at most 100 ms: a wire that shorts to supply is the sensor's fault and not
 * overboost. Three valid samples above the limit confirm. The third trip since key-on locks. When
 * pressure stays above the limit 300 ms after rest, the valve has no effect, and the engine cut may
 * be asked for.
 */
public final class OverboostWatch {
  static final double POSSIBLE_KPA_PER_SECOND = 300.0;
  static final long LONGEST_WAIT_NANOS = 100_000_000L;
  static final long NO_EFFECT_NANOS = 300_000_000L;
  static final int LOCKING_TRIP = 3;
  static final double CUT_RELEASE_KPA = 10.0;

  private final double limitKpaAbs;
  private final boolean cutAllowed;

  private boolean waiting;
  private long waitingSinceNanos;
  private int trips;
  private boolean above;
  private long restSinceNanos;
  private boolean resting;
  private boolean cutRequest;
  private double peakKpaAbs;

  /**
   * @param limitKpaAbs overboost limit, kPa absolute
   * @param cutAllowed the settings allow an engine-cut request
   */
  public OverboostWatch(double limitKpaAbs, boolean cutAllowed) {
    this.limitKpaAbs = limitKpaAbs;
    this.cutAllowed = cutAllowed;
  }

  /** Judges one tick. */
  public void update(long nowNanos, Signals signals, FaultTable faults, boolean keyOn) {
    boolean valid = signals.map().fresh() && signals.map().status() == SignalStatus.VALID;
    if (!keyOn) {
      trips = 0;
    }
    if (valid) {
      double kpa = signals.map().value();
      above = !(kpa <= limitKpaAbs);
      if (above && kpa > peakKpaAbs) {
        peakKpaAbs = kpa;
      }
      if (!waits(nowNanos, signals.mapSlopeKpaPerSecond())) {
        faults.sample(FaultCode.OVERBOOST, above, nowNanos);
        if ((faults.newlyConfirmed() & FaultCode.OVERBOOST.bit()) != 0) {
          trips++;
          resting = true;
          restSinceNanos = nowNanos;
        }
      }
      if (kpa <= limitKpaAbs - CUT_RELEASE_KPA) {
        cutRequest = false;
      }
    }
    faults.sample(FaultCode.OVERBOOST_REPEATED, trips >= LOCKING_TRIP, nowNanos);
    judgeEffect(nowNanos, valid, faults);
  }

  private boolean waits(long nowNanos, double slopeKpaPerSecond) {
    boolean possible = Math.abs(slopeKpaPerSecond) <= POSSIBLE_KPA_PER_SECOND;
    if (possible) {
      waiting = false;
      return false;
    }
    if (!waiting) {
      waiting = true;
      waitingSinceNanos = nowNanos;
    }
    return nowNanos - waitingSinceNanos < LONGEST_WAIT_NANOS;
  }

  private void judgeEffect(long nowNanos, boolean valid, FaultTable faults) {
    if (!resting) {
      return;
    }
    if (!faults.isActive(FaultCode.OVERBOOST) || (valid && !above)) {
      resting = faults.isActive(FaultCode.OVERBOOST) && nowNanos - restSinceNanos < NO_EFFECT_NANOS;
      return;
    }
    // Only a sample taken since says whether the valve had an effect.
    if (valid && nowNanos - restSinceNanos >= NO_EFFECT_NANOS) {
      faults.sample(FaultCode.VALVE_NO_EFFECT, above, nowNanos);
      cutRequest = cutAllowed && above;
    }
  }

  /** Overboost trips since key-on. */
  public int trips() {
    return trips;
  }

  /** Highest pressure seen above the limit, kPa absolute; 0 when it never was above. */
  public double peakKpaAbs() {
    return peakKpaAbs;
  }

  /** The engine cut is asked for. */
  public boolean cutRequest() {
    return cutRequest;
  }
}
