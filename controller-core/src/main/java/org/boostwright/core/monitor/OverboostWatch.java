package org.boostwright.core.monitor;

import org.boostwright.core.signal.SignalStatus;
import org.boostwright.core.signal.Signals;

/**
 * Pressure above the limit, independent of the control law.
 *
 * <p>Only valid samples count, and while pressure changes faster than an engine can (300 kPa/s) the
 * watch waits, for at most 100 ms: a wire that shorts to supply is the sensor's fault and not
 * overboost. Three valid samples above the limit confirm. The third trip since key-on locks.
 *
 * <p>Pressure that is above the limit without a break for 300 ms of rest says that the valve has no
 * effect; the engine cut may then be asked for. It is asked for again whenever pressure returns
 * above the limit while that is known, as long as pressure is seen.
 */
public final class OverboostWatch {
  static final double POSSIBLE_KPA_PER_SECOND = 300.0;
  static final long LONGEST_WAIT_NANOS = 100_000_000L;
  static final long NO_EFFECT_NANOS = 300_000_000L;

  /** Once the valve is known to have no effect: three samples, not another 300 ms. */
  static final long KNOWN_NO_EFFECT_NANOS = 10_000_000L;

  static final int LOCKING_TRIP = 3;
  static final double CUT_RELEASE_KPA = 10.0;

  /** The limit falls by as much as a target this far below it, so that their distance stays. */
  static final double ABOVE_TARGET_KPA = 25.0;

  private final double fullLimitKpaAbs;
  private final boolean cutAllowed;

  private double limitKpaAbs;
  private boolean waiting;
  private long waitingSinceNanos;
  private int trips;
  private boolean aboveAtRest;
  private long aboveAtRestSinceNanos;
  private long validNanos;
  private boolean cutRequest;
  private double peakKpaAbs;

  /**
   * @param limitKpaAbs overboost limit, kPa absolute
   * @param cutAllowed the settings allow an engine-cut request
   */
  public OverboostWatch(double limitKpaAbs, boolean cutAllowed) {
    fullLimitKpaAbs = limitKpaAbs;
    this.limitKpaAbs = limitKpaAbs;
    this.cutAllowed = cutAllowed;
  }

  /**
   * Judges one tick.
   *
   * @param keyCycled the key is off, or the engine is known to be stopped where no key is wired
   * @param limitShare share of the target that is left, 0 to 1; NaN breaks every limit
   */
  public void update(
      long nowNanos, Signals signals, FaultTable faults, boolean keyCycled, double limitShare) {
    limitKpaAbs = fullLimitKpaAbs - (1.0 - limitShare) * (fullLimitKpaAbs - ABOVE_TARGET_KPA);
    if (keyCycled) {
      trips = 0;
    }
    if (signals.map().fresh() && signals.map().status() == SignalStatus.VALID) {
      validNanos = nowNanos;
      judge(nowNanos, signals.map().value(), signals.mapSlopeKpaPerSecond(), faults);
    } else if (nowNanos - validNanos >= NO_EFFECT_NANOS) {
      // Taking the engine's torque away needs a reason that is seen.
      cutRequest = false;
      aboveAtRest = false;
    }
    faults.sample(FaultCode.OVERBOOST_REPEATED, trips >= LOCKING_TRIP, nowNanos);
  }

  private void judge(long nowNanos, double kpa, double slopeKpaPerSecond, FaultTable faults) {
    boolean above = !(kpa <= limitKpaAbs);
    if (above && kpa > peakKpaAbs) {
      peakKpaAbs = kpa;
    }
    boolean waits = waits(nowNanos, slopeKpaPerSecond);
    if (!waits) {
      faults.sample(FaultCode.OVERBOOST, above, nowNanos);
      if ((faults.newlyConfirmed() & FaultCode.OVERBOOST.bit()) != 0) {
        trips++;
      }
    }
    if (kpa <= limitKpaAbs - CUT_RELEASE_KPA) {
      cutRequest = false;
    }
    judgeEffect(nowNanos, above, waits, faults);
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

  private void judgeEffect(long nowNanos, boolean above, boolean waits, FaultTable faults) {
    boolean known = faults.isActive(FaultCode.VALVE_NO_EFFECT);
    if (!(known || faults.isActive(FaultCode.OVERBOOST))) {
      aboveAtRest = false;
      return;
    }
    if (!above) {
      aboveAtRest = false;
      faults.sample(FaultCode.VALVE_NO_EFFECT, false, nowNanos);
      return;
    }
    if (!aboveAtRest) {
      if (waits) {
        return;
      }
      aboveAtRest = true;
      aboveAtRestSinceNanos = nowNanos;
    }
    long patience = known ? KNOWN_NO_EFFECT_NANOS : NO_EFFECT_NANOS;
    if (nowNanos - aboveAtRestSinceNanos >= patience) {
      faults.sample(FaultCode.VALVE_NO_EFFECT, true, nowNanos);
      cutRequest = cutAllowed;
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
