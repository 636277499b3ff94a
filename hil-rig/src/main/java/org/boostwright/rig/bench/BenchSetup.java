package org.boostwright.rig.bench;

import java.util.Random;
import org.boostwright.rig.plant.ActuatorParams;
import org.boostwright.rig.plant.BenchValve;
import org.boostwright.rig.plant.ChamberParams;
import org.boostwright.rig.plant.ValveParams;

/**
 * One virtual bench: valve, line, air and sensor.
 *
 * @param valve the valve
 * @param chamber hose and actuator chamber
 * @param actuator the actuator
 * @param ambientKpaAbs ambient pressure, kPa absolute
 * @param supplyKpaGauge what the regulator is set to, kPa gauge
 * @param regulatorKpaPerGramPerSecond how far it sags, kPa per g/s
 * @param leakConductance leak of the line, m3/(s Pa)
 * @param noiseKpa noise of the line sensor, standard deviation, kPa
 * @param stepKpa resolution of the line sensor, kPa
 */
public record BenchSetup(
    ValveParams valve,
    ChamberParams chamber,
    ActuatorParams actuator,
    double ambientKpaAbs,
    double supplyKpaGauge,
    double regulatorKpaPerGramPerSecond,
    double leakConductance,
    double noiseKpa,
    double stepKpa) {

  /** 12 psi of air, kPa gauge. */
  public static final double TWELVE_PSI_KPA = 82.7;

  private static final double STEP_KPA = 0.06;

  /** The default valve of assumption A-01 on 12 psi, with an ordinary sensor. */
  public static BenchSetup standard() {
    return new BenchSetup(
        ValveParams.DEFAULT,
        ChamberParams.DEFAULT,
        ActuatorParams.DEFAULT,
        BenchValve.STANDARD_AMBIENT_KPA,
        TWELVE_PSI_KPA,
        1.0,
        0.0,
        0.5,
        STEP_KPA);
  }

  /**
   * A sound bench drawn from the range of valves and lines the bench is meant for: t_on 1.5 to 6
   * ms, t_off 3 to 14 ms, C 0.3 to 2e-8 m3/(s Pa) with the vent path within 0.7 to 1.4 of the
   * supply path, b 0.2 to 0.5, 20 to 150 cm3, polytropic exponent 1 to 1.2, leak up to 1.5 % of the
   * valve, regulator sag up to 10 kPa at the valve's choked flow, 80 to 100 kPa gauge.
   */
  public static BenchSetup draw(Random random) {
    double c = 0.3e-8 * Math.pow(2.0 / 0.3, random.nextDouble());
    double ventRatio = 0.7 * Math.pow(2.0, random.nextDouble());
    double chokedGramsPerSecond = c * 185e3 * 1.185 * 1000.0;
    return new BenchSetup(
        ValveParams.DEFAULT
            .withConductances(c, Math.min(2.0e-8, c * ventRatio))
            .withCriticalRatio(between(random, 0.2, 0.5))
            .withDelays(between(random, 1.5e-3, 6e-3), between(random, 3e-3, 14e-3)),
        ChamberParams.DEFAULT
            .withVolume(20e-6 * Math.pow(7.5, random.nextDouble()))
            .withPolytropicExponent(between(random, 1.0, 1.2)),
        ActuatorParams.DEFAULT.withSpring(between(random, 50, 68), between(random, 20, 50)),
        between(random, 94.0, 103.0),
        between(random, 80.0, 100.0),
        between(random, 0.0, 10.0) / chokedGramsPerSecond,
        c * between(random, 0.0, 0.015),
        0.5,
        STEP_KPA);
  }

  private static double between(Random random, double low, double high) {
    return low + (high - low) * random.nextDouble();
  }

  /** The same bench with another regulator. */
  public BenchSetup withRegulator(double kpaPerGramPerSecond) {
    return new BenchSetup(
        valve,
        chamber,
        actuator,
        ambientKpaAbs,
        supplyKpaGauge,
        kpaPerGramPerSecond,
        leakConductance,
        noiseKpa,
        stepKpa);
  }

  /** The same bench with another valve. */
  public BenchSetup withValve(ValveParams other) {
    return new BenchSetup(
        other,
        chamber,
        actuator,
        ambientKpaAbs,
        supplyKpaGauge,
        regulatorKpaPerGramPerSecond,
        leakConductance,
        noiseKpa,
        stepKpa);
  }

  /** The same bench with another chamber. */
  public BenchSetup withChamber(ChamberParams other) {
    return new BenchSetup(
        valve,
        other,
        actuator,
        ambientKpaAbs,
        supplyKpaGauge,
        regulatorKpaPerGramPerSecond,
        leakConductance,
        noiseKpa,
        stepKpa);
  }

  /** The same bench with another actuator. */
  public BenchSetup withActuator(ActuatorParams other) {
    return new BenchSetup(
        valve,
        chamber,
        other,
        ambientKpaAbs,
        supplyKpaGauge,
        regulatorKpaPerGramPerSecond,
        leakConductance,
        noiseKpa,
        stepKpa);
  }

  /** The same bench with another supply pressure, kPa gauge. */
  public BenchSetup withSupplyKpaGauge(double kpaGauge) {
    return new BenchSetup(
        valve,
        chamber,
        actuator,
        ambientKpaAbs,
        kpaGauge,
        regulatorKpaPerGramPerSecond,
        leakConductance,
        noiseKpa,
        stepKpa);
  }
}
