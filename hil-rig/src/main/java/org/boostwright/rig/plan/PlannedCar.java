package org.boostwright.rig.plan;

import org.boostwright.core.settings.ActuatorSettings;
import org.boostwright.core.settings.ProjectSettings;
import org.boostwright.core.settings.Settings;
import org.boostwright.rig.plant.Atmosphere;
import org.boostwright.rig.plant.PlantParams;
import org.boostwright.rig.scenario.SettledPoint;

/** The virtual car with a project's own spring, volume and frequency. */
public final class PlannedCar {
  private static final double LOWEST_RPM = 3000.0;
  private static final double STEP_RPM = 500.0;
  private static final double FULL_THROTTLE_PCT = 100.0;

  private PlannedCar() {}

  /**
   * The car of a project.
   *
   * @param base virtual car to begin with
   */
  public static PlantParams of(Settings settings, ProjectSettings project, PlantParams base) {
    PlantParams car =
        base.withPwmHz(settings.valve().frequencyHz())
            .withChamber(base.chamber().withVolume(project.volumeCm3() * 1e-6));
    ActuatorSettings spring = settings.actuator();
    double cracks = spring.springCracksKpaGauge();
    if (Double.isNaN(cracks)) {
      return car;
    }
    double full = spring.springFullLiftKpaGauge();
    double span = Double.isNaN(full) ? base.actuator().spanKpa() : full - cracks;
    return car.withActuator(base.actuator().withSpring(cracks, span));
  }

  /** Highest settled pressure with the gate held shut, full throttle, kPa absolute. */
  public static double runawayKpaAbs(PlantParams car, Atmosphere air, double redlineRpm) {
    SettledPoint point = new SettledPoint(car, air);
    double highest = 0.0;
    for (double rpm = LOWEST_RPM; rpm <= redlineRpm; rpm += STEP_RPM) {
      highest = Math.max(highest, point.mapKpaAbs(rpm, FULL_THROTTLE_PCT, 1.0));
    }
    return highest;
  }
}
