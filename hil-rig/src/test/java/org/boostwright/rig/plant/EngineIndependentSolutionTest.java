package org.boostwright.rig.plant;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import org.hipparchus.ode.ODEState;
import org.hipparchus.ode.ODEStateAndDerivative;
import org.hipparchus.ode.nonstiff.DormandPrince853Integrator;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;

/**
 * The engine against the same equations written a second time and integrated by Hipparchus'
 * adaptive Dormand-Prince 8(5,3) method (Hairer, Norsett and Wanner, <i>Solving Ordinary
 * Differential Equations I</i>, 1993), in situations that no reference file holds.
 */
class EngineIndependentSolutionTest {
  private static final double AGREE = 3e-3;

  @ParameterizedTest
  @CsvSource({
    "published, 3500, 0.10, 20, 80",
    "project-car, 3500, 0.10, 20, 80",
    "project-car, 5500, 0.40, 30, 100",
    "project-car, 2500, 0.00, 15, 45"
  })
  void throttleStepAgreesWithTheAdaptiveSolution(
      String set, double rpm, double lift, double fromPct, double toPct) {
    TurboParams turbo = EngineReferenceTest.params(set).turbo();
    PublishedEquations equations =
        new PublishedEquations(
            rpm,
            lift,
            turbo.turbineK1(),
            turbo.turbineK2(),
            turbo.turbinePeakEfficiency(),
            turbo.inertiaKgM2());
    equations.throttlePct = toPct;

    EngineBench bench = new EngineBench(EngineReferenceTest.params(set), Atmosphere.REFERENCE);
    bench.setRpm(rpm);
    bench.setThrottlePct(fromPct);
    bench.setLift(lift);
    assertThat(bench.settle()).isTrue();
    double[] y = new double[13];
    for (int i = 0; i < 6; i++) {
      y[2 * i] = bench.engine().m[i];
      y[2 * i + 1] = bench.engine().t[i];
    }
    y[12] = bench.engine().rotor;
    equations.throttlePct = fromPct;
    for (double rate : equations.computeDerivatives(0.0, y)) {
      // Settled for one set of equations is settled for the other.
      assertThat(Math.abs(rate)).isLessThan(0.05);
    }

    equations.throttlePct = toPct;
    bench.setThrottlePct(toPct);
    // Longer trial steps on the throttle's pole would leave the realm of positive pressures.
    DormandPrince853Integrator integrator = new DormandPrince853Integrator(1e-9, 2e-4, 1e-8, 1e-8);
    double time = 0.0;
    for (int i = 1; i <= 16; i++) {
      double end = 0.05 * i;
      ODEStateAndDerivative state = integrator.integrate(equations, new ODEState(time, y), end);
      y = state.getPrimaryState();
      bench.advance(end - time);
      time = end;
      String where = set + " at " + end + " s";
      same(where, bench.intakeKpaAbs(), PublishedEquations.pressure(y, 3) * 1e-3);
      same(where, bench.boostKpaAbs(), PublishedEquations.pressure(y, 2) * 1e-3);
      same(where, bench.exhaustKpaAbs(), PublishedEquations.pressure(y, 4) * 1e-3);
      same(where, bench.turboKrpm(), y[12] * 30e-3 / Math.PI);
      same(where, bench.exhaustKelvin(), y[9]);
    }
  }

  private static void same(String where, double got, double independent) {
    assertThat(got).as(where).isCloseTo(independent, within(AGREE * independent));
  }
}
