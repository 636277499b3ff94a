package org.boostwright.core.monitor;

import org.boostwright.core.signal.ChannelSignal;
import org.jspecify.annotations.Nullable;

/**
 * Ambient pressure in use: of the barometer, else as last measured with the engine stopped, else as
 * kept from an earlier run, else as the settings assume.
 *
 * <p>What was measured ages: the lowest pressure that is possible by now falls with the fastest
 * climb, down to a declared bound (a climb of 2000 m). The target is limited by that.
 */
final class AmbientWatch {
  /** Largest drift allowed for without a barometer (a climb of 2000 m), kPa. */
  static final double CLIMB_BOUND_KPA = 22.0;

  private double kpaAbs;
  private double floorKpaAbs;
  private boolean barometerSeen;
  private long barometerNanos;
  private boolean known;

  /**
   * @param assumedKpaAbs ambient pressure to assume, kPa absolute; NaN for none
   */
  AmbientWatch(double assumedKpaAbs) {
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
      barometerNanos = nowNanos;
      ageSeconds = 0.0;
    } else if (engine.stopped()) {
      kpaAbs = engine.ambientKpaAbs();
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

  /** Measured in this run, not assumed. */
  boolean known() {
    return known;
  }
}
