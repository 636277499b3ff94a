package org.boostwright.rig.scenario;

import org.boostwright.core.Controller;
import org.boostwright.rig.plant.Atmosphere;
import org.boostwright.rig.plant.PlantParams;
import org.boostwright.rig.plant.VirtualCar;

/**
 * Settled points of the virtual car on a dynamometer: what a duty gives, and which duty a pressure
 * needs.
 */
public final class SettledPoint {
  private static final int SETTLE_TICKS = 60;
  // Whole periods of 20, 25, 30, 40 and 50 Hz.
  private static final int MEAN_TICKS = 40;
  private static final int BISECTIONS = 9;

  private final PlantParams params;
  private final Atmosphere atmosphere;

  /** Points of a car in an atmosphere. */
  public SettledPoint(PlantParams params, Atmosphere atmosphere) {
    this.params = params;
    this.atmosphere = atmosphere;
  }

  /**
   * Mean true manifold pressure, kPa absolute.
   *
   * @param rpm engine speed held, 1/min
   * @param throttlePct throttle, percent
   * @param dutyFraction duty, 0 to 1; 0 is the spring alone, 1 the gate held shut
   */
  public double mapKpaAbs(double rpm, double throttlePct, double dutyFraction) {
    return mapKpaAbs(new VirtualCar(params, atmosphere, 1L), rpm, throttlePct, dutyFraction);
  }

  private static double mapKpaAbs(
      VirtualCar car, double rpm, double throttlePct, double dutyFraction) {
    car.coil(dutyFraction, dutyFraction > 0.0, dutyFraction > 0.0);
    car.settleAt(rpm, throttlePct);
    double sum = 0.0;
    for (int i = 0; i < SETTLE_TICKS + MEAN_TICKS; i++) {
      car.advance(Controller.TICK_NANOS);
      if (i >= SETTLE_TICKS) {
        sum += car.mapKpaAbs();
      }
    }
    return sum / MEAN_TICKS;
  }

  /**
   * Duty that holds a pressure, by bisection between two duties.
   *
   * @param low duty known to give less
   * @param high duty known to give more
   */
  public double dutyFor(double rpm, double throttlePct, double kpaAbs, double low, double high) {
    VirtualCar car = new VirtualCar(params, atmosphere, 1L);
    double below = low;
    double above = high;
    for (int i = 0; i < BISECTIONS; i++) {
      double middle = 0.5 * (below + above);
      if (mapKpaAbs(car, rpm, throttlePct, middle) < kpaAbs) {
        below = middle;
      } else {
        above = middle;
      }
    }
    return 0.5 * (below + above);
  }
}
