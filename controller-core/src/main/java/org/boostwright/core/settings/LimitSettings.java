package org.boostwright.core.settings;

import org.boostwright.core.table.Curve;

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
 */
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
    boolean engineCut) {}
