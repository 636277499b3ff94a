package org.boostwright.rig.bench;

import static org.assertj.core.api.Assertions.assertThat;

import java.util.EnumSet;
import java.util.Random;
import org.boostwright.core.bench.AbortReason;
import org.boostwright.core.bench.BenchPlan;
import org.boostwright.core.bench.BenchStep;
import org.junit.jupiter.api.Tag;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.TestReporter;

/**
 * Whatever is killed or unplugged, in every action of every routine, the coil ends off: seen at the
 * controller's outputs (duty, channel, coil supply) and in the coil's current.
 */
@Tag("P5")
@Tag("T2")
class KilledAtTheBenchTest {
  /** Heartbeat supply opens 60 ms after the last tick; the current then dies within 20 ms. */
  private static final int DEAD_AFTER_TICKS = 20;

  /** A line sample may be 100 ms old; then one tick. */
  private static final int STALE_TICKS = 22;

  private static final int WATCHED_TICKS = 40;
  private static final int HANG_TICKS = 100;
  private static final int LATEST_TICK = 60;

  /** What happens, and how many ticks the outputs may take to rest. */
  private enum Kill {
    STOPPED_BY_HAND(1),
    SENSOR_UNPLUGGED(1),
    SENSOR_GARBLED(1),
    CONVERTER_DEAD(STALE_TICKS),
    ENGINE_TURNS(1),
    PROGRAM_HANGS(1),
    PROGRAM_DEAD(0);

    private final int ticks;

    Kill(int ticks) {
      this.ticks = ticks;
    }
  }

  private int tried;
  private int whileDriven;

  @Test
  void everyKillInEveryActionOfEveryRoutineLeavesTheCoilOff(TestReporter reporter) {
    for (BenchStep step : BenchStep.values()) {
      int before = tried;
      int number = step.ordinal();
      boolean more = true;
      for (int action = 0; more; action++) {
        for (Kill kill : Kill.values()) {
          if (more && number++ % TrialCounts.KILL_STRIDE == 0) {
            more = tryAt(step, action, kill, new Random(number));
          }
        }
        assertThat(action).as("actions of %s", step).isLessThan(500);
      }
      assertThat(tried - before).as("%s tried", step).isPositive();
    }
    reporter.publishEntry("killed", tried + " times, " + whileDriven + " of them while driven");
    assertThat(whileDriven).isGreaterThan(tried / 4);
  }

  @Test
  void theTwinThatIsNotKilledGoesOn() {
    TickedVirtualBench car = car(BenchStep.POLARITY);
    boolean energised = false;
    while (car.tick()) {
      energised |= car.bench.coilAlive();
    }
    assertThat(energised).isTrue();
    assertThat(car.session().record().aborted).isNull();
    assertThat(car.session().record().completed).contains(BenchStep.POLARITY);
  }

  private static TickedVirtualBench car(BenchStep step) {
    VirtualBench bench = new VirtualBench(BenchSetup.standard(), 31L);
    BenchPlan plan =
        BenchPlan.standard()
            .withSteps(EnumSet.of(BenchStep.AMBIENT, BenchStep.REST, step))
            .withFrequencyHz(30.0);
    TickedVirtualBench car = new TickedVirtualBench(bench, new Person(bench), plan);
    car.thinkingTicks = 20;
    return car;
  }

  /** False when the routine has no such action. */
  private boolean tryAt(BenchStep step, int action, Kill kill, Random random) {
    TickedVirtualBench car = car(step);
    int before = -1;
    boolean reached = false;
    while (!reached && car.tick()) {
      if (before < 0 && car.session().step() == step) {
        before = car.session().actionsDone();
      }
      reached = before >= 0 && car.session().actionsDone() == before + action;
    }
    if (!reached || car.session().step() != step) {
      return false;
    }
    int later = random.nextInt(LATEST_TICK);
    for (int i = 0; i < later && car.session().actionsDone() == before + action; i++) {
      car.tick();
    }
    boolean driven = car.outputs.dutyFraction > 0.0;
    String where = kill + " in action " + action + " of " + step;
    happen(kill, car, driven, where);
    for (int i = 0; i < WATCHED_TICKS; i++) {
      if (kill == Kill.PROGRAM_DEAD) {
        car.passTick();
      } else {
        car.tick();
        assertThat(car.atRest()).as("%s stays at rest", where).isTrue();
      }
      if (i >= DEAD_AFTER_TICKS) {
        assertThat(car.bench.coilAlive()).as("%s coil", where).isFalse();
      }
    }
    tried++;
    whileDriven += driven ? 1 : 0;
    return true;
  }

  private static void happen(Kill kill, TickedVirtualBench car, boolean driven, String where) {
    switch (kill) {
      case STOPPED_BY_HAND -> car.ticked.told().abort = true;
      case SENSOR_UNPLUGGED -> car.sensorPlugged = false;
      case SENSOR_GARBLED -> car.garbled = true;
      case CONVERTER_DEAD -> car.converterAlive = false;
      case ENGINE_TURNS -> car.engineRpm = 200.0;
      case PROGRAM_HANGS -> {
        for (int i = 0; i < HANG_TICKS; i++) {
          car.passTick();
          if (i >= DEAD_AFTER_TICKS) {
            assertThat(car.bench.coilAlive()).as("%s hangs", where).isFalse();
          }
        }
        // A hang with the coil off is no reason to stop; then the person stops it.
        car.ticked.told().abort = !driven;
      }
      case PROGRAM_DEAD -> {
        // No tick any more: the heartbeat holds the coil supply no longer.
      }
    }
    for (int i = 0; i < kill.ticks; i++) {
      car.tick();
    }
    if (kill == Kill.PROGRAM_HANGS && driven) {
      assertThat(car.session().record().aborted).as(where).isEqualTo(AbortReason.LATE);
    }
  }
}
