package org.boostwright.core.state;

import static org.assertj.core.api.Assertions.assertThat;

import java.util.ArrayList;
import java.util.EnumSet;
import java.util.List;
import org.boostwright.core.Outputs;
import org.boostwright.core.gate.OutputGate;
import org.boostwright.core.monitor.Reaction;
import org.boostwright.core.table.Curve;
import org.junit.jupiter.api.Tag;
import org.junit.jupiter.api.Test;

/**
 * Every state with every reaction, every missing thing, demand, bench request and engine state:
 * 6 x 5 x 10 x 2 x 2 x 2 = 2400 steps against the rules in words.
 */
@Tag("U3")
@Tag("U4")
class StateMachineTest {

  private record Step(
      SafetyState from,
      Reaction worst,
      Waiting missing,
      boolean demand,
      boolean bench,
      boolean stopped) {}

  private static List<Step> everyStep() {
    List<Step> steps = new ArrayList<>();
    for (SafetyState from : SafetyState.values()) {
      for (Reaction worst : Reaction.values()) {
        for (Waiting missing : Waiting.values()) {
          for (int bits = 0; bits < 8; bits++) {
            steps.add(
                new Step(
                    from, worst, missing, (bits & 1) != 0, (bits & 2) != 0, (bits & 4) != 0));
          }
        }
      }
    }
    return steps;
  }

  /** A machine that was brought into a state by its own rules. */
  private static StateMachine in(SafetyState state) {
    StateMachine machine = new StateMachine();
    switch (state) {
      case RESTING -> machine.update(Reaction.REPORT, Waiting.ENGINE, false, false, false);
      case READY -> machine.update(Reaction.REPORT, Waiting.NOTHING, false, false, false);
      case CONTROLLING -> {
        machine.update(Reaction.REPORT, Waiting.NOTHING, true, false, false);
        machine.update(Reaction.REPORT, Waiting.NOTHING, true, false, false);
      }
      case HELD_AT_SPRING -> machine.update(Reaction.REST, Waiting.NOTHING, true, false, false);
      case LOCKED_UNTIL_RESTART ->
          machine.update(Reaction.LOCK, Waiting.NOTHING, true, false, false);
      case BENCH -> machine.update(Reaction.REPORT, Waiting.KEY, false, true, true);
    }
    assertThat(machine.state()).isEqualTo(state);
    return machine;
  }

  private static SafetyState expected(Step s) {
    if (s.worst == Reaction.LOCK) {
      return SafetyState.LOCKED_UNTIL_RESTART;
    }
    if (s.worst == Reaction.REST) {
      return SafetyState.HELD_AT_SPRING;
    }
    if (s.bench && s.stopped) {
      return SafetyState.BENCH;
    }
    if (s.missing != Waiting.NOTHING) {
      return SafetyState.RESTING;
    }
    boolean wasReady = s.from == SafetyState.READY || s.from == SafetyState.CONTROLLING;
    return wasReady && s.demand ? SafetyState.CONTROLLING : SafetyState.READY;
  }

  @Test
  void everyStepGoesWhereTheRulesSay() {
    for (Step s : everyStep()) {
      StateMachine machine = in(s.from);
      machine.update(s.worst, s.missing, s.demand, s.bench, s.stopped);
      assertThat(machine.state()).as("%s", s).isEqualTo(expected(s));
    }
  }

  @Test
  void everyStateReachesRestInTheTickOfARestingReaction() {
    for (Step s : everyStep()) {
      if (s.worst.compareTo(Reaction.REST) >= 0) {
        StateMachine machine = in(s.from);
        machine.update(s.worst, s.missing, s.demand, s.bench, s.stopped);
        assertThat(machine.state().isRest()).as("%s", s).isTrue();
        assertThat(machine.waiting()).isEqualTo(Waiting.FAULT);
      }
    }
  }

  @Test
  void everyStateReachesRestInTheTickInWhichSomethingIsMissing() {
    for (Step s : everyStep()) {
      if (s.missing != Waiting.NOTHING && !(s.bench && s.stopped)) {
        StateMachine machine = in(s.from);
        machine.update(s.worst, s.missing, s.demand, s.bench, s.stopped);
        assertThat(machine.state().isRest()).as("%s", s).isTrue();
      }
    }
  }

  @Test
  void controllingIsEnteredOnlyFromReadyAndOnlyWithNothingMissing() {
    for (Step s : everyStep()) {
      StateMachine machine = in(s.from);
      machine.update(s.worst, s.missing, s.demand, s.bench, s.stopped);
      if (machine.state() == SafetyState.CONTROLLING) {
        assertThat(s.from).isIn(SafetyState.READY, SafetyState.CONTROLLING);
        assertThat(s.missing).isEqualTo(Waiting.NOTHING);
        assertThat(s.demand).isTrue();
        assertThat(s.worst).isLessThan(Reaction.REST);
      }
    }
  }

  @Test
  void benchIsEnteredOnlyOnRequestWithTheEngineKnownToBeStopped() {
    for (Step s : everyStep()) {
      StateMachine machine = in(s.from);
      machine.update(s.worst, s.missing, s.demand, s.bench, s.stopped);
      if (machine.state() == SafetyState.BENCH) {
        assertThat(s.bench && s.stopped).isTrue();
      }
    }
  }

  @Test
  void whatIsWaitedForFitsTheState() {
    for (Step s : everyStep()) {
      StateMachine machine = in(s.from);
      machine.update(s.worst, s.missing, s.demand, s.bench, s.stopped);
      Waiting expected =
          switch (machine.state()) {
            case RESTING -> s.missing;
            case READY -> Waiting.DEMAND;
            case CONTROLLING, BENCH -> Waiting.NOTHING;
            case HELD_AT_SPRING, LOCKED_UNTIL_RESTART -> Waiting.FAULT;
          };
      assertThat(machine.waiting()).as("%s", s).isEqualTo(expected);
    }
  }

  @Test
  void throughTheGateARestStateCommandsNothingWhateverIsWanted() {
    OutputGate gate = new OutputGate(Curve.constant(1.0), 1.0);
    Outputs out = new Outputs();
    for (Step s : everyStep()) {
      StateMachine machine = in(s.from);
      machine.update(s.worst, s.missing, s.demand, s.bench, s.stopped);
      out.dutyFraction = 0.9;
      out.pwmEnabled = true;
      out.coilSupplyClosed = true;
      gate.apply(machine.state(), 0.7, 3_000.0, out);
      boolean rest = machine.state().isRest();
      assertThat(out.coilSupplyClosed).isEqualTo(!rest);
      assertThat(out.pwmEnabled).isEqualTo(!rest);
      boolean driven =
          machine.state() == SafetyState.CONTROLLING || machine.state() == SafetyState.BENCH;
      assertThat(out.dutyFraction).isEqualTo(driven ? 0.7 : 0.0);
    }
  }

  @Test
  void aNewMachineRests() {
    StateMachine machine = new StateMachine();
    assertThat(machine.state()).isEqualTo(SafetyState.RESTING);
    assertThat(machine.waiting()).isNotEqualTo(Waiting.NOTHING);
  }

  @Test
  void lockWorksFromEveryStateAtOnce() {
    for (SafetyState from : SafetyState.values()) {
      StateMachine machine = in(from);
      machine.lock();
      assertThat(machine.state()).isEqualTo(SafetyState.LOCKED_UNTIL_RESTART);
      assertThat(machine.waiting()).isEqualTo(Waiting.FAULT);
    }
  }

  @Test
  void theRestStatesAreTheThreeThatCommandNothing() {
    EnumSet<SafetyState> rest = EnumSet.noneOf(SafetyState.class);
    for (SafetyState state : SafetyState.values()) {
      assertThat(state.words()).isNotEmpty();
      if (state.isRest()) {
        rest.add(state);
      }
    }
    assertThat(rest)
        .containsExactlyInAnyOrder(
            SafetyState.RESTING, SafetyState.HELD_AT_SPRING, SafetyState.LOCKED_UNTIL_RESTART);
    for (Waiting waiting : Waiting.values()) {
      assertThat(waiting.words()).isNotEmpty();
    }
  }

  @Test
  void thePermissionsAreAllOrNothing() {
    assertThat(Permission.NONE.controlAllowed()).isFalse();
    assertThat(Permission.NONE.dutyCeilingFraction()).isZero();
    assertThat(Permission.NONE.feedbackAllowed()).isFalse();
    assertThat(Permission.FULL).isEqualTo(new Permission(true, 1.0, true));
  }
}
