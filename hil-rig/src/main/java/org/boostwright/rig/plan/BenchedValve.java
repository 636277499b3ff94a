package org.boostwright.rig.plan;

import java.util.List;
import org.boostwright.core.bench.proof.ProofMeasurement;
import org.boostwright.core.settings.ValveSettings;
import org.boostwright.rig.plant.ActuatorParams;
import org.boostwright.rig.plant.PlantParams;
import org.boostwright.rig.plant.ValveParams;

/** The virtual car with the valve, and the actuator, that were measured on the bench. */
public final class BenchedValve {
  private BenchedValve() {}

  /** The car with delays and conductances of a bench proof; what it does not hold stays. */
  public static PlantParams of(PlantParams car, List<ProofMeasurement> measured) {
    ValveParams valve = car.valve();
    double on = value(measured, "valve.t_on_ms", 1e3 * valve.onDelaySeconds());
    double off = value(measured, "valve.t_off_ms", 1e3 * valve.offDelaySeconds());
    double ventOverFill =
        value(
            measured,
            "valve.vent_over_fill",
            valve.ventConductance() / valve.supplyConductance());
    ActuatorParams actuator = car.actuator();
    double cracks = value(measured, "actuator.crack_kpa", actuator.crackKpaGauge());
    double full = value(measured, "actuator.full_kpa", cracks + actuator.spanKpa());
    return car.withValve(
            valve
                .withDelays(1e-3 * on, 1e-3 * off)
                .withConductances(
                    valve.supplyConductance(), ventOverFill * valve.supplyConductance()))
        .withActuator(actuator.withSpring(cracks, Math.max(1.0, full - cracks)));
  }

  /** The car with the delays that the settings' duty window stands for. */
  public static PlantParams of(PlantParams car, ValveSettings valve) {
    double on = valve.windowLowDuty() / valve.frequencyHz();
    double off = (1.0 - valve.windowHighDuty()) / valve.frequencyHz();
    return car.withValve(car.valve().withDelays(on, off));
  }

  private static double value(List<ProofMeasurement> measured, String id, double fallback) {
    for (ProofMeasurement m : measured) {
      if (m.id().equals(id) && Double.isFinite(m.value())) {
        return m.value();
      }
    }
    return fallback;
  }
}
