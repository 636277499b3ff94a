package org.boostwright.core.state;

import static org.assertj.core.api.Assertions.assertThat;

import java.util.ArrayDeque;
import java.util.ArrayList;
import java.util.Deque;
import java.util.HashMap;
import java.util.HashSet;
import java.util.List;
import java.util.Map;
import java.util.Set;
import org.boostwright.core.Outputs;
import org.boostwright.core.gate.OutputGate;
import org.boostwright.core.monitor.FaultCode;
import org.boostwright.core.monitor.FaultTable;
import org.boostwright.core.monitor.Reaction;
import org.boostwright.core.table.Curve;
import org.junit.jupiter.api.Tag;
import org.junit.jupiter.api.Test;

/**
 * Fault table, state machine and gate together, over everything they can be in.
 *
 * <p>A set of faults acts on the machine only through its worst reaction. That is shown for every
 * set of up to three faults and for every set that is closed under "one fault of each reaction or
 * none"; the machine then is walked from its first state through every input class until no new
 * state appears.
 */
@Tag("D2")
@Tag("U3")
@Tag("U4")
class FaultSetStateTest {
  private static final FaultCode[] CODES = FaultCode.values();
  private static final OutputGate GATE = new OutputGate(Curve.constant(1.0), 1.0);

  /** What the machine is told in one tick. */
  private record Told(
      Reaction worst, Waiting missing, boolean demand, boolean bench, boolean stopped) {}

  private static List<Told> everything() {
    List<Told> all = new ArrayList<>();
    for (Reaction worst : Reaction.values()) {
      for (Waiting missing : Waiting.values()) {
        for (int bits = 0; bits < 8; bits++) {
          all.add(new Told(worst, missing, (bits & 1) != 0, (bits & 2) != 0, (bits & 4) != 0));
        }
      }
    }
    return all;
  }

  private static Reaction worstOf(List<FaultCode> set) {
    FaultTable table = new FaultTable();
    table.beginTick();
    for (FaultCode code : set) {
      for (int i = 0; i < FaultCode.CONFIRM_AT; i++) {
        table.sample(code, true, 1L);
      }
    }
    return table.worstReaction();
  }

  private static Reaction expectedWorst(List<FaultCode> set) {
    Reaction worst = Reaction.REPORT;
    for (FaultCode code : set) {
      worst = code.reaction().compareTo(worst) > 0 ? code.reaction() : worst;
    }
    return worst;
  }

  @Test
  void theMostSevereFaultOfEverySetUpToThreeWins() {
    int sets = 0;
    for (int a = 0; a < CODES.length; a++) {
      assertThat(worstOf(List.of(CODES[a]))).isEqualTo(CODES[a].reaction());
      for (int b = 0; b < CODES.length; b++) {
        for (int c = b; c < CODES.length; c++) {
          List<FaultCode> set = List.of(CODES[a], CODES[b], CODES[c]);
          assertThat(worstOf(set)).as("%s", set).isEqualTo(expectedWorst(set));
          sets++;
        }
      }
    }
    assertThat(sets).isGreaterThan(10_000);
  }

  @Test
  void oneFaultOfEachReactionOrNoneInEveryCombination() {
    List<FaultCode> one = new ArrayList<>();
    for (Reaction reaction : Reaction.values()) {
      for (FaultCode code : CODES) {
        if (code.reaction() == reaction) {
          one.add(code);
          break;
        }
      }
    }
    for (int bits = 0; bits < 1 << one.size(); bits++) {
      List<FaultCode> set = new ArrayList<>();
      for (int i = 0; i < one.size(); i++) {
        if ((bits & 1 << i) != 0) {
          set.add(one.get(i));
        }
      }
      assertThat(worstOf(set)).as("%s", set).isEqualTo(expectedWorst(set));
    }
  }

  /** The shortest way into each state that can be reached, from a new machine. */
  private static Map<SafetyState, List<Told>> reachable() {
    Map<SafetyState, List<Told>> ways = new HashMap<>();
    ways.put(new StateMachine().state(), List.of());
    Deque<SafetyState> open = new ArrayDeque<>(ways.keySet());
    while (!open.isEmpty()) {
      List<Told> way = ways.get(open.remove());
      for (Told told : everything()) {
        StateMachine machine = walked(way);
        tell(machine, told);
        if (!ways.containsKey(machine.state())) {
          List<Told> longer = new ArrayList<>(way);
          longer.add(told);
          ways.put(machine.state(), longer);
          open.add(machine.state());
        }
      }
    }
    return ways;
  }

  private static StateMachine walked(List<Told> way) {
    StateMachine machine = new StateMachine();
    for (Told told : way) {
      tell(machine, told);
    }
    return machine;
  }

  private static void tell(StateMachine machine, Told told) {
    machine.update(told.worst, told.missing, told.demand, told.bench, told.stopped);
  }

  @Test
  void everyReachableStateCommandsNothingAtRestAndReachesRestInOneTick() {
    Map<SafetyState, List<Told>> ways = reachable();
    assertThat(ways.keySet()).containsExactlyInAnyOrder(SafetyState.values());
    Outputs out = new Outputs();
    for (Map.Entry<SafetyState, List<Told>> from : ways.entrySet()) {
      Set<SafetyState> restsReached = new HashSet<>();
      for (Told told : everything()) {
        StateMachine machine = walked(from.getValue());
        tell(machine, told);
        for (double wanted : new double[] {0.0, 0.5, 1.0, 7.0, -1.0, Double.NaN}) {
          GATE.apply(machine.state(), wanted, 4_000.0, out);
          boolean nothing = out.dutyFraction == 0.0 && !out.pwmEnabled && !out.coilSupplyClosed;
          assertThat(nothing || !machine.state().isRest()).as("%s %s", from.getKey(), told).isTrue();
          assertThat(out.dutyFraction).isBetween(0.0, 1.0);
        }
        if (told.worst.compareTo(Reaction.REST) >= 0) {
          assertThat(machine.state().isRest()).as("%s %s", from.getKey(), told).isTrue();
          restsReached.add(machine.state());
        }
        // One more tick of anything: never from rest into driving with something missing.
        if (machine.state() == SafetyState.CONTROLLING) {
          assertThat(told.missing).isEqualTo(Waiting.NOTHING);
        }
      }
      assertThat(restsReached)
          .containsExactlyInAnyOrder(
              SafetyState.HELD_AT_SPRING, SafetyState.LOCKED_UNTIL_RESTART);
    }
  }
}
