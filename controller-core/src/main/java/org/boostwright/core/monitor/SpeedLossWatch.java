package org.boostwright.core.monitor;

import org.boostwright.core.signal.Signals;

/**
 * Engine-speed pulses that stay away while manifold pressure says that the engine works.
 *
 * <p>Under boost they are missed after 250 ms when they stopped at running speed: an engine that
 * slowed down first has stalled. Under vacuum only after 2.25 s of it: an engine that was switched
 * off at speed leaves a vacuum, which fills up in about a second. Pulses alone are good; silence
 * near ambient pressure says nothing.
 */
final class SpeedLossWatch {
  /** No engine pulse for this long under boost is a lost signal, ns. */
  static final long LOST_NANOS = 250_000_000L;

  /** No engine pulse for this long under vacuum is a lost signal, ns. */
  static final long LOST_UNDER_VACUUM_NANOS = 2_250_000_000L;

  /** A pressure this far from ambient cannot belong to a stopped engine, kPa. */
  static final double AT_WORK_KPA = 15.0;

  private long noVacuumNanos;

  /** Judges one tick. */
  void update(
      long nowNanos, Signals signals, EngineWatch engine, AmbientWatch ambient, FaultTable faults) {
    boolean usable = signals.map().usable();
    double kpa = signals.map().value();
    double lowest = ambient.known() ? ambient.kpaAbs() : EngineWatch.AMBIENT_LOW_KPA;
    double highest = ambient.known() ? ambient.kpaAbs() : EngineWatch.AMBIENT_HIGH_KPA;
    if (!(usable && kpa < lowest - AT_WORK_KPA)) {
      noVacuumNanos = nowNanos;
    }
    long silentNanos = engine.silentNanos(nowNanos, signals);
    if (silentNanos < LOST_NANOS) {
      faults.sample(FaultCode.ENGINE_SPEED_LOST, false, nowNanos);
      return;
    }
    if (engine.stopped() || engine.steadyOutOfRange()) {
      return;
    }
    boolean boost =
        usable && kpa > highest + AT_WORK_KPA && engine.isRunningSpeed(signals.lastPulseRpm());
    boolean vacuum = Math.min(silentNanos, nowNanos - noVacuumNanos) >= LOST_UNDER_VACUUM_NANOS;
    if (boost || vacuum) {
      faults.sample(FaultCode.ENGINE_SPEED_LOST, true, nowNanos);
    }
  }
}
