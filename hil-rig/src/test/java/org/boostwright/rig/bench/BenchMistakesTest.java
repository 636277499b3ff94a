package org.boostwright.rig.bench;

import static org.assertj.core.api.Assertions.assertThat;

import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import java.util.Random;
import org.boostwright.core.bench.BenchPlan;
import org.boostwright.core.bench.BenchStep;
import org.boostwright.core.bench.BenchVerdict;
import org.boostwright.core.bench.VerdictCode;
import org.boostwright.core.bench.VerdictCode.Grade;
import org.boostwright.core.bench.Verdicts;
import org.boostwright.core.bench.proof.Proof;
import org.boostwright.core.bench.proof.ProofSource;
import org.boostwright.core.bench.proof.ProofState;
import org.junit.jupiter.api.BeforeAll;
import org.junit.jupiter.api.Tag;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.TestReporter;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.EnumSource;

/** Every mistake of plumbing and wiring on seeded benches, and what the bench says about it. */
@Tag("P5")
class BenchMistakesTest {
  private static final String HARDWARE = "c3".repeat(32);

  private static int trials;
  private static final List<String> WRONG = new ArrayList<>();
  private static final List<String> LET_THROUGH = new ArrayList<>();

  @BeforeAll
  static void makeEveryMistake() {
    for (BenchMistake mistake : BenchMistake.values()) {
      for (int i = 0; i < TrialCounts.DRAWS_PER_MISTAKE; i++) {
        VirtualTrial trial =
            VirtualTrial.drawn(Optional.of(mistake), 7_000L + 31L * i + mistake.ordinal());
        trials++;
        String what = mistake + " draw " + i + ": " + trial.verdicts();
        if (!trial.names(mistake)) {
          WRONG.add(what);
        }
        if (trial.passed() || proofOf(trial).allowsControl()) {
          LET_THROUGH.add(what);
        }
      }
    }
  }

  /** The same session as if it had run on the Pi. */
  private static ProofState proofOf(VirtualTrial trial) {
    Proof proof =
        BenchProofs.of(
            ProofSource.PI,
            HARDWARE,
            "2026-01-01T00:00:00Z",
            trial.record(),
            trial.plan(),
            trial.verdicts());
    return ProofState.of(proof, HARDWARE);
  }

  @Test
  void thereAreAtLeastFourteen() {
    assertThat(BenchMistake.values()).hasSizeGreaterThanOrEqualTo(14);
  }

  @Test
  void theRightVerdictComesFirst(TestReporter reporter) {
    reporter.publishEntry("named rightly", trials - WRONG.size() + " of " + trials);
    reporter.publishEntry("wrong", WRONG.toString());
    assertThat(WRONG).hasSizeLessThanOrEqualTo(trials * 2 / 100);
  }

  @Test
  void noMistakeIsEverPassedOrProven() {
    assertThat(LET_THROUGH).isEmpty();
  }

  @Test
  void theTwinWithoutAMistakeIsProven() {
    VirtualTrial sound = VirtualTrial.drawn(Optional.empty(), 7_000L);
    assertThat(proofOf(sound).allowsControl()).as("%s", sound.verdicts()).isTrue();
  }

  /** A person who hears and measures nothing gets the test that would tell the causes apart. */
  @ParameterizedTest
  @EnumSource(
      value = BenchMistake.class,
      names = {
        "SUPPLY_AND_ACTUATOR_SWAPPED",
        "VENT_BLOCKED",
        "SENSOR_ON_SUPPLY",
        "ACTUATOR_ON_VENT_PORT",
        "SUPPLY_HOSE_OFF",
        "SENSOR_IN_OPEN_AIR",
        "STUCK_ENERGISED"
      })
  void whatCannotBeToldApartNamesTheTestThatWould(BenchMistake mistake) {
    VirtualBench bench = new VirtualBench(BenchSetup.standard(), 5L);
    Person person = new Person(bench);
    person.silent = true;
    mistake.apply(bench, person, new Random(5L));
    VirtualSession session =
        new VirtualSession(bench, person, BenchPlan.standard().withFrequencyHz(30.0));
    List<BenchVerdict> verdicts = Verdicts.of(session.run().record(), session.session().plan());
    assertThat(verdicts).isNotEmpty();
    assertThat(verdicts.get(0).code())
        .isIn(VerdictCode.REST_SEES_NOTHING, VerdictCode.LINE_DOES_NOT_EMPTY);
    assertThat(verdicts.get(0).code().next()).contains("isten");
  }

  @Test
  void airIsNeverAskedForWhileTheSensorCannotBeBelieved() {
    VirtualBench bench = new VirtualBench(BenchSetup.standard(), 5L);
    bench.sensorFactor = 1.0 / 6.9;
    VirtualSession session = new VirtualSession(bench, new Person(bench), BenchPlan.standard());
    session.run();
    assertThat(session.session().record().completed).containsExactly(BenchStep.AMBIENT);
    assertThat(bench.valve().supplyKpaGauge()).isLessThan(0.1);
  }

  @Test
  void everyDangerousVerdictSaysWhatBoostWouldDo() {
    for (VerdictCode code : VerdictCode.values()) {
      assertThat(code.next()).as(code.id()).isNotBlank();
      if (code.grade() == Grade.DANGEROUS && code != VerdictCode.REST_SEES_NOTHING) {
        assertThat(code.meaning()).as(code.id()).containsAnyOf("boost", "actuator", "coil is on");
      }
    }
  }
}
