package org.boostwright.rig.scenario;

import java.util.List;
import org.boostwright.core.settings.Settings;

/**
 * A pull as it went: the controller's log rows and beside each what was really the case.
 *
 * @param settings settings of the controller
 * @param plan what was driven
 * @param rows log rows, columns as in {@link org.boostwright.core.record.LogFormat}
 * @param truths what was really the case, one for each row
 * @param openedAt row in which the throttle opened
 * @param shutAt row in which it shut
 * @param eventRows row in which each event of the plan took place
 */
public record PullRun(
    Settings settings,
    PullPlan plan,
    List<double[]> rows,
    List<Truth> truths,
    int openedAt,
    int shutAt,
    List<Integer> eventRows) {

  /**
   * The virtual car at one moment.
   *
   * @param mapKpaAbs manifold pressure, kPa absolute
   * @param actuatorKpaGauge actuator pressure, kPa gauge
   * @param wastegateLift lift, 0 to 1
   * @param turboKrpm turbo speed, 1000/min
   * @param engineRpm engine speed, 1/min
   */
  public record Truth(
      double mapKpaAbs,
      double actuatorKpaGauge,
      double wastegateLift,
      double turboKrpm,
      double engineRpm) {}
}
