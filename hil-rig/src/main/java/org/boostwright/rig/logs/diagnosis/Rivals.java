package org.boostwright.rig.logs.diagnosis;

import java.util.function.DoubleFunction;
import org.boostwright.rig.logs.identify.RecordedDrive;
import org.boostwright.rig.logs.pulls.Pull;
import org.boostwright.rig.plant.ActuatorParams;
import org.boostwright.rig.plant.PlantParams;
import org.boostwright.rig.plant.ValveParams;

/**
 * Two explanations of missing boost, each one change of the reference car, led by the recorded
 * duty. Each is made as strong as the mean of the settled pressures asks for; what is left then is
 * how badly it meets their course over engine speed. Duty at its ceiling changes nothing in that.
 *
 * @param pull the pull
 * @param car the reference
 * @param recorded recorded pressures at the points of {@link RecordedDrive}, kPa absolute
 * @param settled points with settled pressure
 */
@SuppressWarnings("ArrayRecordComponent") // stays inside the package
record Rivals(Pull pull, PlantParams car, double[] recorded, int[] settled) {
  private static final double MOST_LEVER = 1.5;
  private static final double LATEST_SECONDS = 10e-3;
  private static final int HALVINGS = 7;

  /** The exhaust pushes the gate open further, kPa root mean square. */
  double sagOffKpa() {
    ActuatorParams a = car.actuator();
    return off(more -> car.withActuator(a.withLeverRatio(a.leverRatio() + more)), MOST_LEVER);
  }

  /** The valve switches on later, so that it vents less, kPa root mean square. */
  double windowOffKpa() {
    ValveParams v = car.valve();
    return off(
        late -> car.withValve(v.withDelays(v.onDelaySeconds() + late, v.offDelaySeconds())),
        LATEST_SECONDS);
  }

  private double off(DoubleFunction<PlantParams> changed, double most) {
    double low = 0.0;
    double high = most;
    double[] excess = new double[settled.length];
    double mean = 0.0;
    for (int i = 0; i < HALVINGS; i++) {
      double middle = 0.5 * (low + high);
      double[] driven = RecordedDrive.driven(changed.apply(middle), pull);
      mean = 0.0;
      for (int p = 0; p < settled.length; p++) {
        excess[p] = driven[settled[p]] - recorded[settled[p]];
        mean += excess[p] / settled.length;
      }
      low = mean > 0.0 ? middle : low;
      high = mean > 0.0 ? high : middle;
    }
    double square = 0.0;
    for (double e : excess) {
      square += (e - mean) * (e - mean) / settled.length;
    }
    return Math.sqrt(square);
  }
}
