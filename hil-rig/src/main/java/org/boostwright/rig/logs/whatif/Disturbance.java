package org.boostwright.rig.logs.whatif;

import org.boostwright.core.table.Axis;
import org.boostwright.core.table.Curve;
import org.boostwright.rig.logs.identify.RecordedDrive;
import org.boostwright.rig.logs.pulls.Pull;
import org.boostwright.rig.plant.PlantParams;

/**
 * What a recording implies beyond the model: recorded less modelled pressure, the model led through
 * the recorded engine speed, throttle and duty. Carried over at the same engine speed.
 */
final class Disturbance {
  private static final double LEAST_STEP_RPM = 1.0;

  private final Curve kpaOverRpm;

  private Disturbance(Curve kpaOverRpm) {
    this.kpaOverRpm = kpaOverRpm;
  }

  static Disturbance of(PlantParams car, Pull pull) {
    double[] recorded = RecordedDrive.recorded(pull);
    double[] driven = RecordedDrive.driven(car, pull);
    double[] rpm = new double[recorded.length];
    double[] kpa = new double[recorded.length];
    int n = 0;
    for (int i = 0; i < recorded.length; i++) {
      double at = pull.log().rpm(RecordedDrive.row(pull, i));
      if (n == 0 || at >= rpm[n - 1] + LEAST_STEP_RPM) {
        rpm[n] = at;
        kpa[n++] = recorded[i] - driven[i];
      }
    }
    return new Disturbance(
        new Curve(
            new Axis(java.util.Arrays.copyOf(rpm, n)), java.util.Arrays.copyOf(kpa, n)));
  }

  double kpaAt(double rpm) {
    return kpaOverRpm.at(rpm);
  }
}
