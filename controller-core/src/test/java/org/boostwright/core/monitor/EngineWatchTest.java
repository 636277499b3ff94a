package org.boostwright.core.monitor;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import org.boostwright.core.TestCar;
import org.boostwright.core.TestSettings;
import org.boostwright.core.settings.Settings;
import org.junit.jupiter.api.Tag;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.ValueSource;

/** When an engine counts as stopped, and what ambient pressure that shows. */
@Tag("S13")
class EngineWatchTest {
  private final Settings settings = TestSettings.car();
  private final WatchBench bench = new WatchBench(settings);
  private final EngineWatch watch = new EngineWatch(settings);
  private boolean keyOff;
  private boolean benchAsked;

  private void tick() {
    bench.tick();
    watch.update(bench.now, bench.signals, keyOff, benchAsked);
  }

  private void run(double seconds) {
    long ticks = Math.round(seconds / 0.005);
    for (long i = 0; i < ticks; i++) {
      tick();
    }
  }

  /** Runs and asserts that the engine is never said to be stopped. */
  private void runNeverStopped(double seconds) {
    long ticks = Math.round(seconds / 0.005);
    for (long i = 0; i < ticks; i++) {
      tick();
      assertThat(watch.stopped()).isFalse();
    }
  }

  private void roadPulse() {
    bench.inputs.roadSeen = true;
    bench.inputs.roadPulseNanos = bench.now + WatchBench.TICK;
    bench.inputs.roadPeriodNanos = 1e8;
  }

  @Test
  void itIsKnownToBeStoppedTwoSecondsAfterTheFirstTick() {
    tick();
    long first = bench.now;
    while (!watch.stopped()) {
      assertThat(watch.ambientMeasured()).isFalse();
      assertThat(watch.ambientKpaAbs()).isEqualTo(100.0);
      tick();
    }
    assertThat(bench.now - first).isEqualTo(2_000_000_000L);
    assertThat(watch.ambientMeasured()).isTrue();
    assertThat(watch.running()).isFalse();
  }

  @Test
  void pulsesKeepItFromBeingStoppedForTwoSecondsEach() {
    run(2.5);
    assertThat(watch.stopped()).isTrue();
    bench.rpm = 120.0;
    tick();
    assertThat(watch.stopped()).isFalse();
    assertThat(watch.running()).as("below running speed").isFalse();
    long pulse = bench.now;
    bench.rpm = 0.0;
    while (!watch.stopped()) {
      tick();
    }
    assertThat(bench.now - pulse).isEqualTo(2_000_000_000L);
  }

  @Test
  void roadSpeedKeepsItFromBeingStopped() {
    run(2.5);
    roadPulse();
    tick();
    long pulse = bench.now;
    assertThat(watch.stopped()).isFalse();
    while (!watch.stopped()) {
      tick();
    }
    assertThat(bench.now - pulse).isEqualTo(2_000_000_000L);
  }

  @Test
  void anOpenRoadInputThatIsNotWiredIsNotListenedTo() {
    TestCar car = new TestCar();
    car.roadPulsesPerKm = 0.0;
    WatchBench other = new WatchBench(car.build());
    EngineWatch engine = new EngineWatch(car.build());
    for (int i = 0; i < 500; i++) {
      other.inputs.roadSeen = true;
      other.inputs.roadPulseNanos = other.now + WatchBench.TICK;
      other.inputs.roadPeriodNanos = 1e7;
      other.tick();
      engine.update(other.now, other.signals, false, false);
    }
    assertThat(engine.stopped()).isTrue();
    assertThat(other.signals.roadKmh()).isZero();
  }

  @Test
  void pressureHasToBeSteadyForASecond() {
    run(2.5);
    bench.kpa = 103.0;
    tick();
    long moved = bench.now;
    assertThat(watch.stopped()).isFalse();
    while (!watch.stopped()) {
      tick();
    }
    assertThat(bench.now - moved).isEqualTo(1_000_000_000L);
    bench.kpa = 101.0;
    tick();
    assertThat(watch.stopped()).as("within 2.5 kPa of the mean").isTrue();
  }

  @Test
  void aPressureThatPulsatesIsNotSteady() {
    for (int i = 0; i < 1_000; i++) {
      bench.kpa = 90.0 + (i % 4 < 2 ? 2.0 : -2.0);
      tick();
      assertThat(watch.stopped()).isFalse();
    }
  }

  @Test
  void oneSampleThatIsNotValidStartsTheSecondAnew() {
    run(2.5);
    bench.mapSampled = false;
    run(0.02);
    assertThat(watch.stopped()).isFalse();
    bench.mapSampled = true;
    tick();
    runNeverStopped(0.99);
    run(0.05);
    assertThat(watch.stopped()).isTrue();
  }

  @ParameterizedTest
  @ValueSource(doubles = {60.2, 70.1, 84.6, 101.3, 105.8})
  @Tag("S14")
  void ambientIsMeasuredAtAnyAltitudeFromKeyOn(double kpa) {
    bench.kpa = kpa;
    run(2.1);
    assertThat(watch.stopped()).isTrue();
    assertThat(watch.ambientKpaAbs()).isCloseTo(kpa, within(0.1));
    assertThat(watch.steadyOutOfRange()).isFalse();
  }

  @ParameterizedTest
  @ValueSource(doubles = {40.0, 59.7, 106.3, 150.0})
  @Tag("S5")
  void aPressureThatNoAtmosphereHasIsNoStopAndIsReported(double kpa) {
    bench.kpa = kpa;
    runNeverStopped(3.0);
    assertThat(watch.steadyOutOfRange()).isTrue();
    assertThat(watch.ambientMeasured()).isFalse();
    assertThat(watch.ambientKpaAbs()).isEqualTo(100.0);
  }

  @Test
  void ambientIsTheMeanAndFollowsNoiseSlowly() {
    bench.kpa = 90.0;
    run(2.5);
    bench.kpa = 91.0;
    tick();
    assertThat(watch.ambientKpaAbs()).isCloseTo(90.02, within(0.005));
    run(2.0);
    assertThat(watch.ambientKpaAbs()).isCloseTo(91.0, within(0.05));
    assertThat(watch.steadyKpaAbs()).isEqualTo(watch.ambientKpaAbs());
  }

  @Test
  void aSteadyCruiseWithADeadSpeedSignalIsNoStop() {
    run(2.5);
    bench.rpm = 3_000.0;
    bench.kpa = 80.0;
    run(10.0);
    bench.rpm = 0.0;
    runNeverStopped(20.0);
    assertThat(watch.ambientKpaAbs()).isCloseTo(100.0, within(0.1));
    assertThat(watch.steadyOutOfRange()).isFalse();
  }

  @Test
  void anEngineStartedWithADeadSpeedSignalIsNeitherStoppedNorASensorFault() {
    run(2.5);
    bench.kpa = 40.0;
    run(0.01);
    for (int i = 0; i < 2_000; i++) {
      tick();
      assertThat(watch.stopped()).isFalse();
      assertThat(watch.steadyOutOfRange()).isFalse();
    }
    bench.kpa = 100.0;
    run(1.1);
    assertThat(watch.stopped()).isTrue();
  }

  @Test
  @Tag("S14")
  void aClimbWhileDrivingIsMeasuredAtTheNextStop() {
    run(2.5);
    bench.rpm = 3_000.0;
    // 1000 m in ten minutes: 12 kPa, which the road explains from (12 - 4) / 0.02 s on.
    run(398.0);
    bench.rpm = 0.0;
    bench.kpa = 88.0;
    run(2.2);
    assertThat(watch.stopped()).isTrue();
    assertThat(watch.ambientKpaAbs()).isCloseTo(88.0, within(0.1));
    assertThat(watch.ambientAgeSeconds(bench.now + 3_000_000_000L)).isCloseTo(3.0, within(0.01));
  }

  @Test
  @Tag("S14")
  void aClimbTheRoadCannotHaveBroughtIsNoStop() {
    run(2.5);
    bench.rpm = 3_000.0;
    run(380.0);
    bench.rpm = 0.0;
    bench.kpa = 88.0;
    runNeverStopped(2.2);
    assertThat(watch.ambientAgeSeconds(bench.now)).isCloseTo(382.2, within(0.1));
  }

  @Test
  void withTheKeyOffTheNextStopIsMeasuredWhateverItShows() {
    run(2.5);
    bench.kpa = 80.0;
    runNeverStopped(3.0);
    keyOff = true;
    tick();
    keyOff = false;
    tick();
    assertThat(watch.stopped()).isTrue();
    assertThat(watch.ambientKpaAbs()).isCloseTo(80.0, within(0.1));
  }

  @Test
  void restartWithTheEngineRunningMeasuresNoAmbientUntilSeenStopped() {
    bench.rpm = 900.0;
    bench.kpa = 90.0;
    runNeverStopped(30.0);
    assertThat(watch.running()).isTrue();
    assertThat(watch.ambientMeasured()).isFalse();
    assertThat(watch.ambientAgeSeconds(bench.now)).isCloseTo(29.995, within(1e-6));
    bench.rpm = 0.0;
    bench.kpa = 95.0;
    run(2.1);
    assertThat(watch.ambientKpaAbs()).isCloseTo(95.0, within(0.1));
  }

  @Test
  void itRunsFromRunningSpeedUp() {
    bench.rpm = 499.0;
    run(0.1);
    assertThat(watch.running()).isFalse();
    bench.rpm = 500.1;
    run(0.1);
    assertThat(watch.running()).isTrue();
    assertThat(watch.isRunningSpeed(500.0)).isTrue();
    assertThat(watch.isRunningSpeed(499.9)).isFalse();
    assertThat(watch.isRunningSpeed(Double.NaN)).isFalse();
  }

  @Test
  void silenceIsCountedFromTheFirstTickOrTheLastPulse() {
    tick();
    long first = bench.now;
    run(1.0);
    assertThat(watch.silentNanos(bench.now, bench.signals)).isEqualTo(bench.now - first);
    bench.rpm = 900.0;
    tick();
    long pulse = bench.now;
    bench.rpm = 0.0;
    run(0.5);
    assertThat(watch.silentNanos(bench.now, bench.signals)).isEqualTo(bench.now - pulse);
  }

  @Test
  @Tag("T3")
  void theClockMayRollOver() {
    bench.now = Long.MAX_VALUE - 1_000_000_000L;
    runNeverStopped(2.0);
    tick();
    assertThat(watch.stopped()).isTrue();
  }

  @Test
  void benchAirLeavesAnEngineStoppedThatWasSeenStoppedAndMeasuresNoAmbient() {
    run(2.5);
    benchAsked = true;
    tick();
    benchAsked = false;
    bench.kpa = 183.0;
    run(5.0);
    assertThat(watch.stopped()).isTrue();
    assertThat(watch.steadyOutOfRange()).isFalse();
    bench.kpa = 103.0;
    run(5.0);
    assertThat(watch.ambientKpaAbs()).isEqualTo(100.0, within(0.1));
  }

  @Test
  void withoutABenchTheSameAirEndsTheStop() {
    run(2.5);
    bench.kpa = 183.0;
    tick();
    assertThat(watch.stopped()).isFalse();
  }

  @Test
  void aBenchAskedForUnderAirOrWithATurningEngineGetsNothing() {
    bench.kpa = 183.0;
    benchAsked = true;
    runNeverStopped(5.0);
    bench.kpa = 100.0;
    bench.rpm = 900.0;
    runNeverStopped(5.0);
  }

  @Test
  void onePulseOrVacuumEndsTheBenchForGood() {
    run(2.5);
    benchAsked = true;
    tick();
    bench.kpa = 183.0;
    run(1.0);
    assertThat(watch.onBench()).isTrue();
    bench.rpm = 120.0;
    tick();
    assertThat(watch.stopped()).isFalse();
    bench.rpm = 0.0;
    runNeverStopped(5.0);

    bench.kpa = 100.0;
    run(2.5);
    assertThat(watch.onBench()).isTrue();
    bench.kpa = 95.0;
    tick();
    assertThat(watch.onBench()).as("an engine that starts without a pulse").isFalse();
    bench.kpa = 183.0;
    runNeverStopped(5.0);
  }
}
