package org.boostwright.rig.plant;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;

/** Nothing is lost or made on the way through the engine: conservation of mass and energy. */
class EngineBalanceTest {
  private static final double CLOSE = 1e-6;

  private static Engine settled(double rpm, double throttlePct, double lift) {
    EngineBench bench = new EngineBench(EngineParams.PROJECT_CAR, Atmosphere.REFERENCE);
    bench.setRpm(rpm);
    bench.setThrottlePct(throttlePct);
    bench.setLift(lift);
    assertThat(bench.settle()).isTrue();
    // The settled flows themselves, not those of the last inner stage.
    bench.engine().flows.evaluate(bench.engine().p, bench.engine().t, bench.engine().rotor);
    return bench.engine();
  }

  @ParameterizedTest
  @CsvSource({"2000, 30, 0.0", "3000, 100, 0.2", "4500, 60, 0.1", "6000, 100, 0.6"})
  void settledFlowsPassOnMassAndEnergy(double rpm, double throttlePct, double lift) {
    Engine engine = settled(rpm, throttlePct, lift);
    EngineFlows f = engine.flows;
    double air = f.flow[EngineFlows.CYLINDER_IN];
    same(f.flow[EngineFlows.FILTER], air);
    same(f.flow[EngineFlows.COMPRESSOR], air);
    same(f.flow[EngineFlows.INTERCOOLER], air);
    same(f.flow[EngineFlows.THROTTLE], air);
    double gas = air * (1.0 + 1.0 / 14.0);
    same(f.flow[EngineFlows.CYLINDER_OUT], gas);
    same(f.flow[EngineFlows.TURBINE] + f.flow[EngineFlows.WASTEGATE], gas);
    same(f.flow[EngineFlows.EXHAUST], gas);

    double turbineWatts =
        EngineFlows.CP_EXH
            * f.flow[EngineFlows.TURBINE]
            * (f.leaveK[EngineFlows.TURBINE] - f.enterK[EngineFlows.TURBINE]);
    double compressorWatts =
        EngineFlows.CP_AIR
            * air
            * (f.enterK[EngineFlows.COMPRESSOR] - f.leaveK[EngineFlows.COMPRESSOR]);
    double frictionWatts = 9.7187e-7 * engine.rotor * engine.rotor;
    same(turbineWatts, compressorWatts + frictionWatts);

    // From cylinders to tail pipe only the turbine takes energy out.
    double in = EngineFlows.CP_EXH * gas * f.enterK[EngineFlows.CYLINDER_OUT];
    double out = EngineFlows.CP_EXH * gas * engine.t[EngineFlows.TO];
    same(in - out, turbineWatts);
    // From filter to cylinders the compressor puts in what the intercooler does not take.
    double cooled =
        EngineFlows.CP_AIR
            * air
            * (f.leaveK[EngineFlows.INTERCOOLER] - f.enterK[EngineFlows.INTERCOOLER]);
    double risen =
        EngineFlows.CP_AIR * air * (engine.t[EngineFlows.IM] - Atmosphere.REFERENCE.kelvin());
    same(risen, compressorWatts - cooled);
  }

  private static void same(double got, double expected) {
    assertThat(got).isCloseTo(expected, within(CLOSE * Math.abs(expected)));
  }

  @Test
  void massInTheVolumesIsWhatCameInLessWhatWentOut() {
    Engine engine = settled(4000.0, 20.0, 0.0);
    engine.flows.leakM2 = 2e-5;
    double before = mass(engine);
    double[] start = engine.totalKg.clone();
    for (int i = 0; i < 3000; i++) {
      engine.flows.throttleM2 = EngineFlows.throttleArea(i % 1000 < 500 ? 100.0 : 10.0);
      engine.flows.flow[EngineFlows.DRAW] = 1e-3;
      double open = i % 300 < 100 ? 3e-4 : 0.0;
      engine.step(1e-3, engine.flows.engineRadPerSecond, (i % 700) / 700.0, open, 6e-5);
    }
    double in = engine.totalKg[EngineFlows.FILTER] - start[EngineFlows.FILTER];
    double fuel =
        engine.totalKg[EngineFlows.CYLINDER_OUT]
            - start[EngineFlows.CYLINDER_OUT]
            - engine.totalKg[EngineFlows.CYLINDER_IN]
            + start[EngineFlows.CYLINDER_IN];
    double out = 0.0;
    for (int i : new int[] {EngineFlows.EXHAUST, EngineFlows.LEAK, EngineFlows.DRAW}) {
      out += engine.totalKg[i] - start[i];
    }
    assertThat(in).isGreaterThan(0.1);
    assertThat(fuel).isGreaterThan(0.01);
    assertThat(mass(engine) - before).isCloseTo(in + fuel - out, within(CLOSE * in));
    assertThat(engine.totalKg[EngineFlows.DRAW] - start[EngineFlows.DRAW])
        .isCloseTo(3e-3, within(1e-12));
  }

  private static double mass(Engine engine) {
    double sum = 0.0;
    for (double kg : engine.m) {
      sum += kg;
    }
    return sum;
  }

  /**
   * Internal energy of every volume against the integral of the flows of enthalpy, by trapezoids.
   */
  @Test
  void energyInTheVolumesFollowsTheFlowsOfEnthalpy() {
    Engine engine = settled(4000.0, 20.0, 0.0);
    engine.flows.throttleM2 = EngineFlows.throttleArea(60.0);
    double h = 2e-5;
    for (int i = 0; i < 5000; i++) {
      engine.step(h, engine.flows.engineRadPerSecond, 0.1, 0.0, 6e-5);
    }
    double[] before = engine.mt.clone();
    double[] integral = new double[EngineFlows.NODES];
    double[] throughput = new double[EngineFlows.NODES];
    int steps = 25_000;
    for (int i = 0; i <= steps; i++) {
      engine.flows.evaluate(engine.p, engine.t, engine.rotor);
      double weight = i == 0 || i == steps ? 0.5 * h : h;
      addHeat(engine.flows, weight, integral, throughput);
      if (i < steps) {
        engine.step(h, engine.flows.engineRadPerSecond, 0.1, 0.0, 6e-5);
      }
    }
    for (int i = 0; i < EngineFlows.NODES; i++) {
      assertThat(throughput[i]).isGreaterThan(1.0);
      assertThat(engine.mt[i] - before[i])
          .as("volume %d", i)
          .isCloseTo(integral[i], within(CLOSE * throughput[i]));
    }
  }

  private static void addHeat(
      EngineFlows f, double weight, double[] integral, double[] throughput) {
    int[][] path = {
      {EngineFlows.FILTER, -1, EngineFlows.AF},
      {EngineFlows.COMPRESSOR, EngineFlows.AF, EngineFlows.C},
      {EngineFlows.INTERCOOLER, EngineFlows.C, EngineFlows.IC},
      {EngineFlows.THROTTLE, EngineFlows.IC, EngineFlows.IM},
      {EngineFlows.CYLINDER_IN, EngineFlows.IM, -1},
      {EngineFlows.CYLINDER_OUT, -1, EngineFlows.EM},
      {EngineFlows.TURBINE, EngineFlows.EM, EngineFlows.TO},
      {EngineFlows.WASTEGATE, EngineFlows.EM, EngineFlows.TO},
      {EngineFlows.EXHAUST, EngineFlows.TO, -1},
    };
    for (int[] flow : path) {
      double w = f.flow[flow[0]] * weight;
      if (flow[1] >= 0) {
        double gamma = flow[1] < EngineFlows.EM ? 1.4 : 1.3;
        integral[flow[1]] -= gamma * w * f.leaveK[flow[0]];
      }
      if (flow[2] >= 0) {
        double gamma = flow[2] < EngineFlows.EM ? 1.4 : 1.3;
        integral[flow[2]] += gamma * w * f.enterK[flow[0]];
        throughput[flow[2]] += gamma * w * f.enterK[flow[0]];
      }
    }
  }
}
