package org.boostwright.core.monitor;

import static org.assertj.core.api.Assertions.assertThat;

import org.boostwright.core.ControllerBench;
import org.boostwright.core.TestCar;
import org.boostwright.core.settings.OptionalWires;
import org.boostwright.core.state.SafetyState;
import org.junit.jupiter.api.Tag;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;
import org.junit.jupiter.params.provider.ValueSource;

/**
 * Coil feedback against a coil that is driven by a PWM of its own phase, whose current dies away in
 * 4.7 ms behind a plain diode (30 ohm, 100 mH, down to a fifth).
 */
@Tag("E1")
class CoilWatchTest {
  private static final long TICK = 5_000_000L;
  private static final double DECAY_NANOS = 4.7e6;

  private final FaultTable faults = new FaultTable();
  private long now = 1_000 * TICK;
  private double hz = 30.0;
  private double phaseNanos;
  private boolean open;
  private boolean stuckOn;

  /** Current at this moment with a duty that has been made for at least one period. */
  private boolean current(double duty) {
    if (open) {
      return false;
    }
    if (stuckOn) {
      return true;
    }
    double period = 1e9 / hz;
    double place = (now + phaseNanos) % period;
    return duty > 0.0 && place < duty * period + DECAY_NANOS;
  }

  private void tick(CoilWatch watch, double duty, boolean energised) {
    now += TICK;
    watch.update(now, duty, energised, faults);
  }

  private boolean active() {
    return faults.isActive(FaultCode.COIL_FEEDBACK);
  }

  @ParameterizedTest
  @ValueSource(doubles = {10.0, 20.0, 30.0, 33.3, 39.0, 60.0, 100.0})
  void aHealthyCoilRaisesNothingAtAnyDutyAndPhase(double frequencyHz) {
    hz = frequencyHz;
    for (double duty = 0.0; duty <= 1.0; duty += 0.02) {
      for (double phase = 0.0; phase < 1.0; phase += 0.13) {
        phaseNanos = phase * 1e9 / hz;
        CoilWatch watch = new CoilWatch(hz);
        for (int i = 0; i < 120; i++) {
          tick(watch, duty, current(duty));
        }
        assertThat(faults.count(FaultCode.COIL_FEEDBACK))
            .as("duty %.2f phase %.2f", duty, phase)
            .isZero();
      }
    }
    assertThat(faults.ran()).isEqualTo(FaultCode.COIL_FEEDBACK.bit());
  }

  @Test
  void thePeriodThatIsStillRunningWhenOffIsCommandedRaisesNothing() {
    CoilWatch watch = new CoilWatch(hz);
    for (int round = 0; round < 20; round++) {
      for (int i = 0; i < 40; i++) {
        tick(watch, 0.5, current(0.5));
      }
      // The channel finishes an on time of 80 % that began just before, and the current decays.
      for (int i = 0; i < 6; i++) {
        tick(watch, 0.0, true);
      }
      for (int i = 0; i < 40; i++) {
        tick(watch, 0.0, false);
      }
      assertThat(faults.count(FaultCode.COIL_FEEDBACK)).isZero();
    }
  }

  @Test
  void aDriverThatIsStuckOnAtRestIsFoundInThreeSamples() {
    CoilWatch watch = new CoilWatch(hz);
    for (int i = 0; i < 100; i++) {
      tick(watch, 0.0, false);
    }
    tick(watch, 0.0, true);
    tick(watch, 0.0, true);
    assertThat(active()).isFalse();
    tick(watch, 0.0, true);
    assertThat(active()).isTrue();
  }

  @ParameterizedTest
  @CsvSource({"0.38", "0.5", "0.62"})
  void aDriverThatSticksOnWhileDrivenIsFoundWithinAHundredMilliseconds(double duty) {
    CoilWatch watch = new CoilWatch(hz);
    for (int i = 0; i < 200; i++) {
      tick(watch, duty, current(duty));
    }
    stuckOn = true;
    long since = now;
    while (!active()) {
      tick(watch, duty, current(duty));
      assertThat(now - since).isLessThanOrEqualTo(100_000_000L);
    }
  }

  @ParameterizedTest
  @CsvSource({"0.38", "0.5", "0.8", "1.0"})
  void aCoilThatOpensWhileDrivenIsFoundWithinAHundredMilliseconds(double duty) {
    CoilWatch watch = new CoilWatch(hz);
    for (int i = 0; i < 200; i++) {
      tick(watch, duty, current(duty));
    }
    open = true;
    long since = now;
    while (!active()) {
      tick(watch, duty, current(duty));
      assertThat(now - since).isLessThanOrEqualTo(100_000_000L);
    }
  }

  @Test
  void aCoilThatWasNeverThereIsFoundOnceDriven() {
    open = true;
    CoilWatch watch = new CoilWatch(hz);
    for (int i = 0; i < 100; i++) {
      tick(watch, 0.0, false);
    }
    assertThat(active()).isFalse();
    int ticks = 0;
    while (!active()) {
      tick(watch, 0.5, false);
      ticks++;
    }
    // Two windows of one period and 10 ms, then three samples.
    assertThat(ticks * 5.0).isBetween(2.0 * 43.3, 2.0 * 43.3 + 20.0);
  }

  @Test
  void onTimesTooShortForTheTicksAreNotJudged() {
    open = true;
    CoilWatch watch = new CoilWatch(hz);
    for (int i = 0; i < 400; i++) {
      tick(watch, 0.37, false);
    }
    assertThat(faults.count(FaultCode.COIL_FEEDBACK)).isZero();
  }

  @Test
  void offTimesTooShortForTheTicksAreNotJudged() {
    stuckOn = true;
    CoilWatch watch = new CoilWatch(hz);
    for (int i = 0; i < 400; i++) {
      tick(watch, 0.63, true);
    }
    assertThat(faults.count(FaultCode.COIL_FEEDBACK)).isZero();
  }

  @Test
  @Tag("T3")
  void theClockMayRollOver() {
    now = Long.MAX_VALUE - 50 * TICK;
    CoilWatch watch = new CoilWatch(hz);
    for (int i = 0; i < 100; i++) {
      tick(watch, 0.0, false);
    }
    assertThat(now).isNegative();
    assertThat(active()).isFalse();
    for (int i = 0; i < 3; i++) {
      tick(watch, 0.0, true);
    }
    assertThat(active()).isTrue();
  }

  /** At 40 Hz a period is five ticks, and a phase of half of it is certain to be met. */
  private long ticksUntilJudged(double duty, boolean energised) {
    CoilWatch watch = new CoilWatch(40.0);
    long ticks = 0;
    tick(watch, duty, energised);
    while (faults.ran() == 0L) {
      tick(watch, duty, energised);
      ticks++;
    }
    return ticks;
  }

  @Test
  void restIsJudgedOnePeriodAndTenMillisecondsAfterItWasCommanded() {
    assertThat(ticksUntilJudged(0.0, true)).isEqualTo(7);
  }

  @ParameterizedTest
  @CsvSource({"0.2, false", "0.8, true", "0.5, true", "0.5, false"})
  void drivingIsJudgedAfterTwiceThat(double duty, boolean energised) {
    assertThat(ticksUntilJudged(duty, energised)).isEqualTo(14);
  }

  @ParameterizedTest
  @ValueSource(booleans = {true, false})
  void aPhaseOfJustTheCertainLengthIsWatched(boolean stuck) {
    CoilWatch watch = new CoilWatch(40.0);
    for (int i = 0; i < 40; i++) {
      tick(watch, 0.5, stuck);
    }
    assertThat(active()).isTrue();
  }

  @ParameterizedTest
  @ValueSource(booleans = {true, false})
  void whatWasSeenOneWindowAgoIsStillSeen(boolean stuck) {
    CoilWatch watch = new CoilWatch(40.0);
    for (int i = 0; i < 200; i++) {
      tick(watch, 0.5, i % 7 == 0 ? !stuck : stuck); // 35 ms apart
      assertThat(faults.count(FaultCode.COIL_FEEDBACK)).isZero();
    }
  }

  @Test
  void onTheBenchTheCoilIsNotJudgedAndAfterItAnew() {
    TestCar car = new TestCar();
    car.wires = new OptionalWires(false, false, false, true, false);
    ControllerBench bench = new ControllerBench(car.build());
    bench.run(3.0);
    bench.inputs.benchRequest = true;
    bench.inputs.benchDutyFraction = 0.0;
    bench.inputs.coilEnergised = true;
    bench.run(3.0);
    assertThat(bench.outputs.state).isEqualTo(SafetyState.BENCH);
    assertThat(bench.controller.faults().count(FaultCode.COIL_FEEDBACK)).isZero();
    bench.inputs.benchRequest = false;
    bench.engineRpm = 900.0; // the first pulse ends it
    while (bench.controller.monitor().engine().onBench()) {
      assertThat(bench.controller.faults().count(FaultCode.COIL_FEEDBACK)).isZero();
      bench.tick();
    }
    // One period of 30 Hz and 10 ms until what is commanded has reached the coil.
    bench.run(0.040);
    assertThat(bench.controller.faults().count(FaultCode.COIL_FEEDBACK)).isZero();
    bench.run(0.040);
    assertThat(bench.outputs.activeFaults).isEqualTo(FaultCode.COIL_FEEDBACK.bit());
  }
}
