package org.boostwright.pi.loop;

import static org.assertj.core.api.Assertions.assertThat;

import java.lang.management.ManagementFactory;
import org.boostwright.core.Controller;
import org.boostwright.core.Outputs;
import org.boostwright.core.monitor.FaultCode;
import org.boostwright.core.monitor.Roadside;
import org.boostwright.core.state.SafetyState;
import org.boostwright.pi.io.PiBench;
import org.boostwright.pi.io.SteppedClock;
import org.boostwright.pi.record.RowQueue;
import org.junit.jupiter.api.Tag;
import org.junit.jupiter.api.Test;

/** Grid, deadline, end and failure of the loop, and the lamp. */
class TickLoopTest {
  private static final long MILLI = 1_000_000L;

  private final SteppedClock clock = new SteppedClock(12_345_678L);
  private final FakeIo io = new FakeIo();
  private final RowQueue rows = new RowQueue(1024);
  private final TickLoop loop =
      new TickLoop(new Controller(PiBench.example()), io, rows, clock, null);

  @Test
  void ticksBeginOnAGridAndNotAfterTheLastOne() {
    int[] count = {0};
    io.onRead =
        () -> {
          assertThat(clock.nanoTime() % (5 * MILLI)).isZero();
          clock.advance(count[0] % 3 * MILLI);
          if (++count[0] == 100) {
            loop.stop();
          }
        };
    loop.run();
    assertThat(loop.stats().ticks()).isEqualTo(100);
    assertThat(loop.stats().leftOut()).isZero();
    assertThat(loop.stats().lateness().getMaxValue()).isZero();
    assertThat(loop.stats().duration().getMaxValue()).isEqualTo(2000);
  }

  @Test
  @Tag("T1")
  void startsThatPassedAreLeftOutAndCountedAndTheNextIsNotCrowded() {
    int[] count = {0};
    io.onRead =
        () -> {
          count[0]++;
          if (count[0] == 10) {
            clock.advance(33 * MILLI);
          }
          if (count[0] == 20) {
            loop.stop();
          }
        };
    loop.run();
    // 33 ms into a tick: the starts at 5 to 25 ms have passed, the one at 30 is 3 ms late.
    assertThat(loop.stats().leftOut()).isEqualTo(5);
    assertThat(loop.stats().lateness().getMaxValue()).isBetween(2999L, 3002L);
    assertThat(loop.stats().ticks()).isEqualTo(20);
  }

  @Test
  void aClockThatRollsOverGoesOnTicking() {
    SteppedClock late = new SteppedClock(Long.MAX_VALUE - 20 * MILLI);
    TickLoop rolling = new TickLoop(new Controller(PiBench.example()), io, rows, late, null);
    int[] count = {0};
    io.onRead =
        () -> {
          if (++count[0] == 50) {
            rolling.stop();
          }
        };
    rolling.run();
    assertThat(late.nanoTime()).isNegative();
    assertThat(rolling.stats().ticks()).isEqualTo(50);
    assertThat(rolling.failure()).isNull();
  }

  @Test
  void somethingThrownOutOfATickIsRestFirstAndTheEnd() {
    int[] count = {0};
    io.onRead =
        () -> {
          if (++count[0] == 7) {
            throw new IllegalStateException("a driver broke");
          }
        };
    loop.run();
    assertThat(io.rests).isGreaterThanOrEqualTo(1);
    assertThat(loop.failure()).hasMessage("a driver broke");
    assertThat(loop.stats().ticks()).isEqualTo(7);
    assertThat(io.last.pwmEnabled).isFalse();
    assertThat(io.last.coilSupplyClosed).isFalse();
    assertThat(io.beats).isZero();
  }

  @Test
  void stoppingEndsAtRest() {
    io.onRead = loop::stop;
    loop.run();
    assertThat(io.rests).isPositive();
    assertThat(io.last.dutyFraction).isZero();
    assertThat(loop.failure()).isNull();
  }

  /** Warm once a whole stretch allocated nothing; the compiler itself allocates before that. */
  @Test
  void aWarmTickAllocatesNothing() {
    int stretch = 200_000;
    var threads = (com.sun.management.ThreadMXBean) ManagementFactory.getThreadMXBean();
    long[] bytes = {0L, Long.MAX_VALUE};
    int[] count = {0};
    io.onRead =
        () -> {
          for (double[] row = rows.peek(); row != null; row = rows.peek()) {
            rows.remove();
          }
          if (count[0]++ % stretch == 0) {
            long now = threads.getCurrentThreadAllocatedBytes();
            bytes[1] = now - bytes[0];
            bytes[0] = threads.getCurrentThreadAllocatedBytes();
            if (bytes[1] == 0L || count[0] > 10 * stretch) {
              loop.stop();
            }
          }
        };
    loop.run();
    assertThat(bytes[1]).isZero();
  }

  private static Outputs outputs(SafetyState state, FaultCode... faults) {
    Outputs out = new Outputs();
    out.state = state;
    for (FaultCode fault : faults) {
      out.activeFaults |= fault.bit();
    }
    return out;
  }

  private static String pattern(Outputs out, int quarters) {
    LampPattern lamp = new LampPattern();
    StringBuilder seen = new StringBuilder();
    for (int i = 0; i < quarters; i++) {
      seen.append(lamp.update(7L + i * 250 * MILLI, out) ? '*' : '.');
    }
    return seen.toString();
  }

  @Test
  void theLampIsSteadyOnTheSpringOffWhileControllingAndBlinksTheFault() {
    assertThat(pattern(outputs(SafetyState.RESTING), 8)).isEqualTo("********");
    assertThat(pattern(outputs(SafetyState.READY), 4)).isEqualTo("....");
    assertThat(pattern(outputs(SafetyState.CONTROLLING), 4)).isEqualTo("....");
    assertThat(pattern(outputs(SafetyState.BENCH), 4)).isEqualTo("....");
    assertThat(pattern(outputs(SafetyState.HELD_AT_SPRING, FaultCode.MAP_STALE), 18))
        .isEqualTo("*.*......*.*......");
    assertThat(pattern(outputs(SafetyState.HELD_AT_SPRING, FaultCode.OVERBOOST), 14))
        .isEqualTo("*......*......");
    assertThat(pattern(outputs(SafetyState.LOCKED_UNTIL_RESTART, FaultCode.COIL_FEEDBACK), 20))
        .isEqualTo("****.*.*.*.*.*......");
  }

  @Test
  void theLampShowsTheMostSevereFaultAndNoFindingWhileControlling() {
    assertThat(
            pattern(
                outputs(
                    SafetyState.LOCKED_UNTIL_RESTART,
                    FaultCode.MAP_STALE,
                    FaultCode.OVERBOOST_REPEATED),
                7))
        .isEqualTo("****.*.");
    assertThat(pattern(outputs(SafetyState.CONTROLLING, FaultCode.INTAKE_AIR_SIGNAL), 4))
        .isEqualTo("....");
    for (FaultCode code : FaultCode.values()) {
      assertThat(Roadside.blinks(code)).isBetween(1, 8);
    }
  }
}
