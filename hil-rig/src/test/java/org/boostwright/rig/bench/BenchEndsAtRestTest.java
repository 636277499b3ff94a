package org.boostwright.rig.bench;

import static org.assertj.core.api.Assertions.assertThat;

import java.util.EnumSet;
import org.boostwright.core.bench.AbortReason;
import org.boostwright.core.bench.BenchPlan;
import org.boostwright.core.bench.BenchStep;
import org.junit.jupiter.api.Tag;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.EnumSource;

/** Whatever is killed or unplugged, at every step, the coil ends off. */
@Tag("P5")
@Tag("T2")
class BenchEndsAtRestTest {
  /** Heartbeat supply opens 60 ms after the last call; the current then dies within 20 ms. */
  private static final int DEAD_AFTER_SAMPLES = 100;

  /** How a session is cut short. */
  private enum Kill {
    /** Stopped by hand. */
    ABORT,
    /** Sensor unplugged: no more samples. */
    SENSOR,
    /** Program or link dead: never called again. */
    PROGRAM,
    /** Program hangs for half a second, then goes on. */
    HANG
  }

  private static VirtualSession session(VirtualBench bench, BenchPlan plan) {
    return new VirtualSession(bench, new Person(bench), plan);
  }

  private static BenchPlan everything() {
    return BenchPlan.standard()
        .withSteps(EnumSet.allOf(BenchStep.class))
        .withFrequencyHz(30.0);
  }

  @ParameterizedTest
  @EnumSource(BenchStep.class)
  void everyKillInEveryStepLeavesTheCoilOff(BenchStep step) {
    for (Kill kill : Kill.values()) {
      VirtualBench bench = new VirtualBench(BenchSetup.standard(), 11L);
      VirtualSession session = session(bench, everything());
      boolean reached = runInto(session, bench, step);
      assertThat(reached).as("%s reached", step).isTrue();
      kill(kill, session, bench);
      for (int i = 0; i < DEAD_AFTER_SAMPLES; i++) {
        bench.sample(session.inputs());
      }
      assertThat(bench.coilAlive()).as("%s in %s", kill, step).isFalse();
    }
  }

  /** Runs into a step, and to a moment when the coil is on where the step has one. */
  private static boolean runInto(VirtualSession session, VirtualBench bench, BenchStep step) {
    while (session.step()) {
      if (session.session().step() == step) {
        boolean everDriven = drives(step);
        if (!everDriven || bench.coilAlive()) {
          return true;
        }
      }
    }
    return false;
  }

  private static boolean drives(BenchStep step) {
    return switch (step) {
      case CLICK, POLARITY, RESPONSE, EDGES, SWEEP, FREQUENCY -> true;
      case AMBIENT, REST, LEAK, ACTUATOR -> false;
    };
  }

  private static void kill(Kill kill, VirtualSession session, VirtualBench bench) {
    switch (kill) {
      case ABORT -> {
        session.inputs().abort = true;
        session.step();
        assertThat(session.outputs().atRest()).isTrue();
        assertThat(session.session().record().aborted).isEqualTo(AbortReason.ASKED);
      }
      case SENSOR -> {
        bench.sensorConnected = false;
        for (int i = 0; i < 101; i++) {
          session.step();
        }
        assertThat(session.outputs().atRest()).isTrue();
        assertThat(session.session().finished()).isTrue();
      }
      case PROGRAM -> {
        // Not called again: the heartbeat holds the coil supply no longer.
      }
      case HANG -> {
        boolean driven = !session.outputs().atRest();
        for (int i = 0; i < 500; i++) {
          bench.sample(session.inputs());
        }
        session.step();
        if (driven && session.session().finished()) {
          assertThat(session.outputs().atRest()).isTrue();
        }
        session.inputs().abort = true;
        session.step();
      }
    }
  }

  /** Stopped by hand after every single action of the steps that find mistakes. */
  @Test
  void stoppingAfterEveryActionLeavesTheCoilOff() {
    BenchPlan plan =
        everything()
            .withSteps(
                EnumSet.of(
                    BenchStep.AMBIENT,
                    BenchStep.CLICK,
                    BenchStep.REST,
                    BenchStep.POLARITY,
                    BenchStep.LEAK));
    int last = Integer.MAX_VALUE;
    int stops = 0;
    for (int action = 0; action < last; action++) {
      VirtualBench bench = new VirtualBench(BenchSetup.standard(), 12L);
      VirtualSession session = session(bench, plan);
      boolean going = true;
      while (going && session.session().actionsDone() <= action) {
        going = session.step();
      }
      if (!going) {
        last = action;
      }
      session.inputs().abort = true;
      session.step();
      assertThat(session.outputs().atRest()).as("after action %d", action).isTrue();
      assertThat(session.step()).isFalse();
      stops++;
    }
    assertThat(stops).isGreaterThanOrEqualTo(29);
  }

  @Test
  void aFinishedSessionIsAtRestAndStaysThere() {
    VirtualBench bench = new VirtualBench(BenchSetup.standard(), 13L);
    VirtualSession session =
        session(bench, everything().withSteps(EnumSet.of(BenchStep.AMBIENT, BenchStep.REST)));
    session.run();
    assertThat(session.outputs().atRest()).isTrue();
    assertThat(session.step()).isFalse();
    assertThat(session.outputs().atRest()).isTrue();
  }

  @Test
  void theCoilIsOffWhileAQuestionIsOpen() {
    VirtualBench bench = new VirtualBench(BenchSetup.standard(), 14L);
    VirtualSession session = session(bench, everything());
    int questions = 0;
    while (session.step()) {
      if (session.outputs().question != null) {
        questions++;
        assertThat(session.outputs().atRest()).as("%s", session.outputs().question).isTrue();
      }
    }
    assertThat(questions).isGreaterThan(8);
  }
}
