package org.boostwright.core.settings;

import java.util.Arrays;
import java.util.Objects;
import org.boostwright.core.table.Curve;
import org.jspecify.annotations.Nullable;

/**
 * What is never exceeded, whatever tables and feedback want.
 *
 * @param cutoffKpaAbs overboost limit, kPa absolute
 * @param pressureRatioMax highest manifold pressure over ambient pressure a target may ask for
 * @param dutyCeiling highest duty over engine speed, 0 to 1; applies to the spool strategy too
 * @param trimCapDuty how far the feedback may move duty from base duty, 0 to 0.3
 * @param targetFactorOverIntakeC share of the boost above ambient that remains over intake air
 *     temperature, 1 cold to 0 hot
 * @param springOnlyIntakeC from this intake air temperature the target is ambient, degC
 * @param gearTargetKpaAbs highest target in each gear, first gear first, kPa absolute; empty when
 *     gears are not limited
 * @param lowBoostKpaAbs highest target while the selector asks for low boost, kPa absolute
 * @param minControlRpm below this engine speed duty stays 0, 1/min
 * @param minThrottlePct below this throttle duty stays 0, percent
 * @param engineCut allows the engine-cut request; off by default
 * @param guest low boost holds until the owner has said otherwise to the runtime, which remembers
 */
@SuppressWarnings("ArrayRecordComponent") // copied on the way in and out
public record LimitSettings(
    double cutoffKpaAbs,
    double pressureRatioMax,
    Curve dutyCeiling,
    double trimCapDuty,
    Curve targetFactorOverIntakeC,
    double springOnlyIntakeC,
    double[] gearTargetKpaAbs,
    double lowBoostKpaAbs,
    double minControlRpm,
    double minThrottlePct,
    boolean engineCut,
    boolean guest) {

  /** Limits without a guest setting. */
  public LimitSettings(
      double cutoffKpaAbs,
      double pressureRatioMax,
      Curve dutyCeiling,
      double trimCapDuty,
      Curve targetFactorOverIntakeC,
      double springOnlyIntakeC,
      double[] gearTargetKpaAbs,
      double lowBoostKpaAbs,
      double minControlRpm,
      double minThrottlePct,
      boolean engineCut) {
    this(
        cutoffKpaAbs,
        pressureRatioMax,
        dutyCeiling,
        trimCapDuty,
        targetFactorOverIntakeC,
        springOnlyIntakeC,
        gearTargetKpaAbs,
        lowBoostKpaAbs,
        minControlRpm,
        minThrottlePct,
        engineCut,
        false);
  }

  /** Takes its own copy of the array. */
  public LimitSettings {
    gearTargetKpaAbs = gearTargetKpaAbs.clone();
  }

  /** The same with another overboost limit, kPa absolute. */
  public LimitSettings withCutoffKpaAbs(double other) {
    return new LimitSettings(
        other,
        pressureRatioMax,
        dutyCeiling,
        trimCapDuty,
        targetFactorOverIntakeC,
        springOnlyIntakeC,
        gearTargetKpaAbs,
        lowBoostKpaAbs,
        minControlRpm,
        minThrottlePct,
        engineCut,
        guest);
  }

  /** The same with another highest duty over engine speed. */
  public LimitSettings withDutyCeiling(Curve other) {
    return new LimitSettings(
        cutoffKpaAbs,
        pressureRatioMax,
        other,
        trimCapDuty,
        targetFactorOverIntakeC,
        springOnlyIntakeC,
        gearTargetKpaAbs,
        lowBoostKpaAbs,
        minControlRpm,
        minThrottlePct,
        engineCut,
        guest);
  }

  /** A copy; inside the tick use {@link #gearTargetKpaAbs(int)}, which allocates nothing. */
  @Override
  public double[] gearTargetKpaAbs() {
    return gearTargetKpaAbs.clone();
  }

  /** Number of gears with a highest target; 0 when gears are not limited. */
  public int gearTargets() {
    return gearTargetKpaAbs.length;
  }

  /** Highest target in one gear, first gear 0, kPa absolute. */
  public double gearTargetKpaAbs(int index) {
    return gearTargetKpaAbs[index];
  }

  @Override
  public boolean equals(@Nullable Object other) {
    return other instanceof LimitSettings that
        && Double.compare(cutoffKpaAbs, that.cutoffKpaAbs) == 0
        && Double.compare(pressureRatioMax, that.pressureRatioMax) == 0
        && dutyCeiling.equals(that.dutyCeiling)
        && Double.compare(trimCapDuty, that.trimCapDuty) == 0
        && targetFactorOverIntakeC.equals(that.targetFactorOverIntakeC)
        && Double.compare(springOnlyIntakeC, that.springOnlyIntakeC) == 0
        && Arrays.equals(gearTargetKpaAbs, that.gearTargetKpaAbs)
        && Double.compare(lowBoostKpaAbs, that.lowBoostKpaAbs) == 0
        && Double.compare(minControlRpm, that.minControlRpm) == 0
        && Double.compare(minThrottlePct, that.minThrottlePct) == 0
        && engineCut == that.engineCut
        && guest == that.guest;
  }

  @Override
  public int hashCode() {
    return Objects.hash(
        cutoffKpaAbs,
        pressureRatioMax,
        dutyCeiling,
        trimCapDuty,
        targetFactorOverIntakeC,
        springOnlyIntakeC,
        Arrays.hashCode(gearTargetKpaAbs),
        lowBoostKpaAbs,
        minControlRpm,
        minThrottlePct,
        engineCut,
        guest);
  }
}
