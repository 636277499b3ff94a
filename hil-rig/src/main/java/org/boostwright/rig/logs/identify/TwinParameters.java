package org.boostwright.rig.logs.identify;

import org.boostwright.rig.plant.PlantParams;
import org.boostwright.rig.plant.TurboParams;

/**
 * What of the virtual car is fitted, as numbers around a starting car: one unit is one standard
 * deviation of what is believed before any log was seen (own assumptions, wider than the
 * tolerances of a series).
 */
final class TwinParameters {
  /** Turbine size, turbine and compressor efficiency, rotor, spring, span, lag, valve. */
  static final int COUNT = 9;

  private static final double TURBINE_SIZE = 0.06;
  private static final double EFFICIENCY = 0.025;
  private static final double ROTOR = 0.15;
  private static final double SPRING_KPA = 4.0;
  private static final double SPAN = 0.10;
  private static final double LAG = 0.15;
  private static final double CONDUCTANCE = 0.12;
  private static final double DELAY_SECONDS = 0.8e-3;

  private TwinParameters() {}

  /** The car at a point. */
  static PlantParams apply(PlantParams start, double[] x) {
    TurboParams turbo = start.engine().turbo();
    TurboParams fitted =
        new TurboParams(
            turbo.turbineK1() * Math.exp(TURBINE_SIZE * x[0]),
            turbo.turbineK2(),
            turbo.turbinePeakEfficiency() + EFFICIENCY * x[1],
            turbo.inertiaKgM2() * Math.exp(ROTOR * x[2]),
            turbo.compressorPeakEfficiency() + EFFICIENCY * x[3]);
    double vent = Math.exp(0.5 * CONDUCTANCE * x[7]);
    return start
        .withEngine(start.engine().withTurbo(fitted))
        .withActuator(
            start
                .actuator()
                .withSpring(
                    start.actuator().crackKpaGauge() + SPRING_KPA * x[4],
                    start.actuator().spanKpa() * Math.exp(SPAN * x[5]))
                .withLag(start.actuator().lagSeconds() * Math.exp(LAG * x[6])))
        .withValve(
            start
                .valve()
                .withConductances(
                    start.valve().supplyConductance() / vent,
                    start.valve().ventConductance() * vent)
                .withDelays(
                    start.valve().onDelaySeconds(),
                    start.valve().offDelaySeconds() + DELAY_SECONDS * x[8]));
  }
}
