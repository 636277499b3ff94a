package org.boostwright.rig.link;

import static org.assertj.core.api.Assertions.assertThat;

import java.util.ArrayList;
import java.util.List;
import java.util.stream.Stream;
import org.boostwright.core.AnalogChannel;
import org.boostwright.core.settings.Settings;
import org.boostwright.rig.link.CaseOutcome.Verdict;
import org.boostwright.rig.scenario.ProjectCarSettings;
import org.junit.jupiter.api.Tag;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.MethodSource;

/** The rig's fault cases against the real controller, in stepped time. */
@Tag("L1")
@Tag("S1")
class FaultRunnerTest {
  private static final Settings SETTINGS = ProjectCarSettings.load();

  private final SteppedRig rig = new SteppedRig(SETTINGS);

  static Stream<FaultCase> cases() {
    return FaultCases.all(SETTINGS, false).stream();
  }

  private static FaultCase named(String id) {
    return cases().filter(fault -> fault.id().equals(id)).findFirst().orElseThrow();
  }

  private List<CaseOutcome> run(FaultCase... faults) throws Exception {
    rig.driver.startEngine();
    List<CaseOutcome> told = new ArrayList<>();
    FaultRunner runner = new FaultRunner(rig.bench, refreshMillis());
    runner.run(List.of(faults), told::add);
    assertThat(runner.outcomes()).isEqualTo(told);
    return told;
  }

  private static double refreshMillis() {
    return SETTINGS.sensors().channel(AnalogChannel.MAP).refreshMillis();
  }

  @ParameterizedTest
  @MethodSource("cases")
  void everyFaultIsMetAsItMustBe(FaultCase fault) throws Exception {
    CaseOutcome outcome = run(fault).get(0);
    assertThat(outcome.verdict()).as(outcome.toString()).isEqualTo(Verdict.PASSED);
    if (!Double.isNaN(fault.withinMillis())) {
      assertThat(outcome.reactionMillis()).isBetween(0.0, fault.withinMillis());
    }
    assertThat(rig.loop.observer().broken()).isZero();
  }

  @Test
  void oneFaultAfterTheOtherIsMetAndTheCarComesBackToBoostInBetween() throws Exception {
    List<CaseOutcome> outcomes =
        run(named("s1_map_open"), named("l1_silent"), named("p2_actuator_hose_off"),
            named("s5_map_offset"), named("s11_hose_off"), named("s1_map_open"));
    assertThat(outcomes).extracting(CaseOutcome::verdict).containsOnly(Verdict.PASSED);
  }

  @Test
  void aReactionIsTimedByTheStampsWhateverTheCableAddsToIt() throws Exception {
    double quick = run(named("s1_map_open")).get(0).reactionMillis();
    SteppedRig slow = new SteppedRig(SETTINGS);
    slow.cableNanos = 4_000_000L;
    slow.driver.startEngine();
    FaultRunner runner = new FaultRunner(slow.bench, refreshMillis());
    runner.run(List.of(named("s1_map_open")), outcome -> {});
    assertThat(runner.outcomes().get(0).reactionMillis()).isBetween(quick - 5.0, quick + 5.0);
  }

  @Test
  void aFaultThatDoesNotTakeEffectProvesNothing() throws Exception {
    FaultCase nothing = named("s1_map_open").injected(b -> {}, b -> false);
    assertThat(run(nothing).get(0).verdict()).isEqualTo(Verdict.INVALID);
  }

  @Test
  void aFaultThatIsNeverMetFails() throws Exception {
    FaultCase unmet = named("s1_map_open").injected(b -> {}, b -> true);
    CaseOutcome outcome = run(unmet).get(0);
    assertThat(outcome.verdict()).isEqualTo(Verdict.FAILED);
    assertThat(outcome.words()).contains("no reaction");
  }

  @Test
  void aReactionAfterItsTimeFails() throws Exception {
    CaseOutcome outcome = run(named("s1_map_open").within(4.0)).get(0);
    assertThat(outcome.verdict()).isEqualTo(Verdict.FAILED);
    assertThat(outcome.words()).contains("too late");
  }

  @Test
  void anotherFaultThanTheOneInjectedFails() throws Exception {
    FaultCase asNoise = named("s1_map_open").reports().mayReport();
    CaseOutcome outcome = run(asNoise).get(0);
    assertThat(outcome.verdict()).isEqualTo(Verdict.FAILED);
    assertThat(outcome.words()).contains("unrelated").contains("map_signal_low");
  }

  @Test
  void aSubstituteThatEndsInRestFails() throws Exception {
    FaultCase reported = named("s1_map_open").must(FaultCase.Reaction.REPORTED);
    CaseOutcome outcome = run(reported).get(0);
    assertThat(outcome.verdict()).isEqualTo(Verdict.FAILED);
    assertThat(outcome.words()).contains("went to rest");
  }

  @Test
  void dutyAtRestIsCountedAsABrokenFrame() throws Exception {
    rig.obeys = false;
    rig.driver.startEngine();
    assertThat(rig.loop.observer().broken()).isPositive();
  }

  @Test
  void aControllerThatNeverComesToBoostMakesTheCaseInvalid() throws Exception {
    rig.driver.startEngine();
    rig.car.sensors().keyOn = false;
    FaultRunner runner = new FaultRunner(rig.bench, refreshMillis());
    runner.run(List.of(named("s1_map_open")), outcome -> {});
    assertThat(runner.outcomes().get(0).verdict()).isEqualTo(Verdict.INVALID);
  }
}
