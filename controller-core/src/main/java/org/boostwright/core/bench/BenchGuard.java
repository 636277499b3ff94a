package org.boostwright.core.bench;

import org.boostwright.core.bench.model.Coil;
import org.jspecify.annotations.Nullable;

/**
 * The limits every bench step keeps: pressure, samples, coil temperature by the energy model, and
 * being called in time.
 */
final class BenchGuard {
  static final double COIL_ABORT_C = 110.0;
  private static final long STALE_NANOS = 100_000_000L;
  private static final long LATE_NANOS = 250_000_000L;
  // An engine is known to be stopped two seconds after the controller began.
  private static final long REFUSED_NANOS = 3_000_000_000L;
  // Wide enough for a sensor declared in other units, which the ambient step then names.
  private static final double LOWEST_KPA = -20.0;
  private static final double HIGHEST_KPA = 800.0;

  private final Coil coil;
  private final double airC;
  private final double limitKpaGauge;

  private double coilC;
  private double hottestC;
  private long lastNanos;
  private long refusedNanos;
  private boolean started;

  BenchGuard(BenchPlan plan) {
    coil = plan.coil();
    airC = plan.airC();
    coilC = airC;
    hottestC = airC;
    limitKpaGauge = plan.pressureLimitKpaGauge();
  }

  double hottestC() {
    return hottestC;
  }

  /**
   * @param drivenDuty duty commanded since the last call, 0 when the coil was off
   * @param ambientKpaAbs ambient pressure, kPa absolute; NaN before it is known
   * @return why the session must stop, null when it may go on
   */
  @Nullable AbortReason check(
      long nowNanos, BenchInputs in, double drivenDuty, double ambientKpaAbs) {
    long elapsed = started ? nowNanos - lastNanos : 0L;
    started = true;
    lastNanos = nowNanos;
    coilC = coil.warmed(coilC, airC, drivenDuty, elapsed * 1e-9);
    hottestC = Math.max(hottestC, coilC);
    refusedNanos = in.refused ? refusedNanos + elapsed : 0L;
    if (in.abort) {
      return AbortReason.ASKED;
    }
    if (!(elapsed >= 0L && (drivenDuty == 0.0 || elapsed <= LATE_NANOS))) {
      return AbortReason.LATE;
    }
    if (refusedNanos > REFUSED_NANOS) {
      return AbortReason.REFUSED;
    }
    long age = nowNanos - in.sampleNanos;
    if (Double.isNaN(in.lineKpaAbs) || !(age >= 0L && age <= STALE_NANOS)) {
      return AbortReason.SENSOR_LOST;
    }
    if (!(in.lineKpaAbs >= LOWEST_KPA && in.lineKpaAbs <= HIGHEST_KPA)) {
      return AbortReason.SENSOR_RANGE;
    }
    // Until ambient is known the air is off and the reading's unit is not yet trusted.
    if (!Double.isNaN(ambientKpaAbs) && !(in.lineKpaAbs - ambientKpaAbs <= limitKpaGauge)) {
      return AbortReason.PRESSURE;
    }
    return coilC <= COIL_ABORT_C ? null : AbortReason.COIL_HOT;
  }
}
