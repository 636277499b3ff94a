package org.boostwright.core.control;

import org.boostwright.core.settings.LimitSettings;
import org.boostwright.core.settings.Settings;
import org.boostwright.core.table.Table2d;

/**
 * Boost target: the table, then everything that may only lower it.
 *
 * <p>In order: intake air temperature scales the boost above ambient; gear and selector cap it; a
 * pressure sensor that may read low leaves a share of it; the pressure ratio over the lowest
 * ambient that is possible caps that. Nothing here raises a target.
 */
public final class TargetStage {
  private final Table2d table;
  private final LimitSettings limits;
  private final boolean hasSelector;
  private long outside;
  private double targetKpaAbs = Double.NaN;
  private double tabledKpaAbs = Double.NaN;
  private boolean limited;

  /** A stage that has computed nothing yet. */
  public TargetStage(Settings settings) {
    table = settings.target();
    limits = settings.limits();
    hasSelector = settings.optional().boostSelector() || limits.guest();
  }

  /**
   * Computes the target.
   *
   * @param throttlePct throttle, percent
   * @param rpm engine speed, 1/min
   * @param gear gear, 0 when unknown: then the lowest gear limit applies
   * @param ambientKpaAbs ambient in use
   * @param ambientFloorKpaAbs lowest ambient that is possible by now
   * @param trustedShare share that a sensor which may read low leaves, 0 to 1
   * @param intakeAirC intake air, degC
   * @param highBoost what {@link BoostSelector} makes of the selector and the guest setting
   */
  public void update(
      double throttlePct,
      double rpm,
      int gear,
      double ambientKpaAbs,
      double ambientFloorKpaAbs,
      double trustedShare,
      double intakeAirC,
      boolean highBoost) {
    if (!table.covers(throttlePct, rpm)) {
      outside++;
    }
    double wanted = table.at(throttlePct, rpm);
    tabledKpaAbs = wanted;
    double target = wanted;
    if (!(intakeAirC < limits.springOnlyIntakeC())) {
      target = Math.min(target, ambientKpaAbs);
    } else if (target > ambientKpaAbs) {
      target =
          ambientKpaAbs
              + (target - ambientKpaAbs) * limits.targetFactorOverIntakeC().at(intakeAirC);
    }
    target = Math.min(target, gearLimit(gear));
    if (hasSelector && !highBoost) {
      target = Math.min(target, limits.lowBoostKpaAbs());
    }
    target = Math.min(target * trustedShare, limits.pressureRatioMax() * ambientFloorKpaAbs);
    targetKpaAbs = target;
    limited = !(target >= wanted - 0.5);
  }

  private double gearLimit(int gear) {
    int count = limits.gearTargets();
    if (gear >= 1 && gear <= count) {
      return limits.gearTargetKpaAbs(gear - 1);
    }
    double lowest = Double.POSITIVE_INFINITY;
    for (int i = 0; i < count; i++) {
      lowest = Math.min(lowest, limits.gearTargetKpaAbs(i));
    }
    return lowest;
  }

  /** Target after every adjustment, kPa absolute; NaN when an input is unknown. */
  public double targetKpaAbs() {
    return targetKpaAbs;
  }

  /** Target of the table before any adjustment, kPa absolute. */
  public double tabledKpaAbs() {
    return tabledKpaAbs;
  }

  /** Something lowered the table's target by more than 0.5 kPa. */
  public boolean limited() {
    return limited;
  }

  /** Lookups outside the table's axes. */
  public long outside() {
    return outside;
  }
}
