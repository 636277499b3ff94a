package org.boostwright.rig.bench;

import static org.assertj.core.api.Assertions.assertThat;

import java.util.List;
import java.util.Random;
import org.boostwright.core.bench.AbortReason;
import org.boostwright.core.bench.BenchPlan;
import org.boostwright.core.bench.BenchRecord;
import org.boostwright.core.bench.BenchVerdict;
import org.boostwright.core.bench.Verdicts;
import org.boostwright.core.bench.model.ValveFitResult;
import org.boostwright.core.bench.proof.Proof;
import org.boostwright.core.state.SafetyState;
import org.boostwright.rig.plant.ValveParams;
import org.junit.jupiter.api.Tag;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.EnumSource;
import org.junit.jupiter.params.provider.EnumSource.Mode;

/** Whole bench sessions through the controller's own tick, as they run on the car. */
@Tag("P5")
class ControllerAtTheBenchTest {
  private static final double HZ = 30.0;
  private static final double DELAY_SECONDS = 0.3e-3;
  private static final double EDGE_DUTY = 0.02;
  private static final BenchPlan PLAN = BenchPlan.standard().withFrequencyHz(HZ);

  private static TickedVirtualBench at(VirtualBench bench) {
    return new TickedVirtualBench(bench, new Person(bench), PLAN);
  }

  private static List<BenchVerdict> verdicts(TickedVirtualBench car) {
    return Verdicts.of(car.session().record(), car.session().plan());
  }

  @Test
  void seededValvesAreProvenThroughTheController() {
    for (int i = 0; i < TrialCounts.VALVES_BY_TICKS; i++) {
      Random random = new Random(60_000L + i);
      BenchSetup setup = BenchSetup.draw(random);
      TickedVirtualBench car = at(new VirtualBench(setup, random.nextLong()));
      while (car.tick()) {
        assertThat(car.outputs.activeFaults).as("faults").isZero();
        assertThat(car.outputs.state).isIn(SafetyState.RESTING, SafetyState.BENCH);
      }
      assertThat(car.atRest()).isTrue();
      BenchRecord record = car.session().record();
      assertThat(verdicts(car)).as("valve %d", i).isEmpty();
      assertThat(record.completed).containsAll(Proof.REQUIRED);
      ValveFitResult fit = record.fit;
      if (fit == null) {
        throw new AssertionError("no fit for valve " + i);
      }
      ValveParams valve = setup.valve();
      double on = valve.onDelaySeconds();
      double off = valve.offDelaySeconds();
      near(fit.onDelaySeconds().value(), on, DELAY_SECONDS);
      near(fit.offDelaySeconds().value(), off, DELAY_SECONDS);
      near(fit.windowLowDuty(HZ).value(), on * HZ, EDGE_DUTY);
      near(fit.windowHighDuty(HZ).value(), 1.0 - off * HZ, EDGE_DUTY);
    }
  }

  private static void near(double found, double truth, double by) {
    assertThat(found).isBetween(truth - by, truth + by);
  }

  /** Those that let boost rise without limit; the others differ only in what the session reads. */
  @ParameterizedTest
  @EnumSource(
      mode = Mode.INCLUDE,
      names = {
        "SUPPLY_AND_VENT_SWAPPED",
        "ACTUATOR_ON_VENT_PORT",
        "SUPPLY_AND_ACTUATOR_SWAPPED",
        "DRIVER_INVERTED",
        "DRIVER_STUCK_ON",
        "STUCK_ENERGISED",
        "SUPPLY_HOSE_OFF"
      })
  void dangerousMistakesAreNamedThroughTheController(BenchMistake mistake) {
    VirtualBench bench = new VirtualBench(BenchSetup.standard(), 21L);
    Person person = new Person(bench);
    mistake.apply(bench, person, new Random(21L));
    TickedVirtualBench car = new TickedVirtualBench(bench, person, PLAN);
    car.run();
    assertThat(verdicts(car)).isNotEmpty();
    assertThat(mistake.right()).contains(verdicts(car).get(0).code());
    assertThat(car.atRest()).isTrue();
  }

  @Test
  void aBenchWithAnEngineThatTurnsIsRefusedBeforeAnythingMoves() {
    TickedVirtualBench car = at(new VirtualBench(BenchSetup.standard(), 22L));
    car.engineRpm = 850.0;
    while (car.tick()) {
      assertThat(car.atRest()).isTrue();
    }
    assertThat(car.session().record().aborted).isEqualTo(AbortReason.REFUSED);
    assertThat(Verdicts.sound(verdicts(car))).isFalse();
  }
}
