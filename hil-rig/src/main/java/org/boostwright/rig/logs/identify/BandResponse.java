package org.boostwright.rig.logs.identify;

import org.boostwright.core.Controller;
import org.boostwright.core.settings.Settings;
import org.boostwright.rig.plant.Atmosphere;
import org.boostwright.rig.plant.PlantParams;
import org.boostwright.rig.plant.VirtualCar;
import org.boostwright.rig.scenario.SettledPoint;

/**
 * How boost answers duty at one engine speed, full throttle, near the target: a clean step of duty
 * on a virtual car held as on a dynamometer.
 *
 * @param rpm engine speed, 1/min
 * @param dutyFraction duty the step started from, fraction
 * @param estimate identified first-order answer, kPa per unit of duty
 * @param second identified second-order answer, kPa per unit of duty
 */
public record BandResponse(
    double rpm, double dutyFraction, FopdtEstimate estimate, Sopdt second) {
  private static final double STEP = 0.05;
  private static final double FULL_THROTTLE_PCT = 100.0;
  private static final double SECONDS = 5.0;
  private static final int REST_TICKS = 60;

  /** Measures a car with the settings' valve frequency at an engine speed. */
  public static BandResponse of(PlantParams params, Atmosphere air, Settings settings, double rpm) {
    PlantParams driven = params.withPwmHz(settings.valve().frequencyHz());
    double low = settings.valve().windowLowDuty();
    double high = settings.valve().windowHighDuty();
    double duty =
        new SettledPoint(driven, air)
            .dutyFor(rpm, FULL_THROTTLE_PCT, settings.target().at(FULL_THROTTLE_PCT, rpm), low, high);
    duty = Math.max(low + 0.01, Math.min(high - STEP, duty - 0.5 * STEP));
    int n = (int) Math.round(SECONDS / (Controller.TICK_NANOS * 1e-9));
    VirtualCar car = new VirtualCar(driven, air, 1L);
    car.coil(duty, true, true);
    car.settleAt(rpm, FULL_THROTTLE_PCT);
    for (int i = 0; i < REST_TICKS; i++) {
      car.advance(Controller.TICK_NANOS);
    }
    double[] seconds = new double[n];
    double[] input = new double[n];
    double[] output = new double[n];
    output[0] = car.mapKpaAbs();
    input[0] = STEP;
    car.coil(duty + STEP, true, true);
    for (int i = 1; i < n; i++) {
      car.advance(Controller.TICK_NANOS);
      seconds[i] = i * Controller.TICK_NANOS * 1e-9;
      input[i] = STEP;
      output[i] = car.mapKpaAbs();
    }
    double end = output[n - 1] - output[0];
    double[] deviation = new double[n];
    for (int i = 0; i < n; i++) {
      deviation[i] = output[i] - output[0];
    }
    Fopdt start = FopdtFit.twoPoint(seconds, deviation, STEP, end);
    FopdtEstimate estimate = FopdtFit.leastSquares(seconds, input, output, start);
    return new BandResponse(
        rpm,
        duty + 0.5 * STEP,
        estimate,
        FopdtFit.secondOrder(seconds, input, output, estimate.model()));
  }

  /** The identified first-order answer. */
  public Fopdt model() {
    return estimate.model();
  }
}
