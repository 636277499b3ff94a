package org.boostwright.core.monitor;

import static org.assertj.core.api.Assertions.assertThat;

import org.boostwright.core.AnalogChannel;
import org.boostwright.core.ControllerBench;
import org.boostwright.core.TestCar;
import org.boostwright.core.TestSettings;
import org.boostwright.core.state.SafetyState;
import org.junit.jupiter.api.Tag;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.ValueSource;

/** Engine speed lost, doubled and halved, against everything an engine does by itself. */
@Tag("S13")
class SpeedLossWatchTest {
  private static final long LOST = FaultCode.ENGINE_SPEED_LOST.bit();

  private static ControllerBench boosted() {
    ControllerBench bench = new ControllerBench(TestSettings.car());
    bench.driveTo(170.0);
    assertThat(bench.outputs.state).isEqualTo(SafetyState.CONTROLLING);
    assertThat(bench.outputs.activeFaults).isZero();
    return bench;
  }

  private static void assertRaisesNothing(ControllerBench bench, double seconds) {
    long ticks = Math.round(seconds / 0.005);
    for (long i = 0; i < ticks; i++) {
      bench.tick();
      assertThat(bench.outputs.activeFaults).isZero();
    }
  }

  @Test
  void lostUnderBoostItRestsWithinAHundredMillisecondsAndIsReportedAlone() {
    ControllerBench bench = boosted();
    bench.tachConnected = false;
    bench.run(0.1);
    assertThat(bench.outputs.dutyFraction).isZero();
    assertThat(bench.outputs.state.isRest()).isTrue();
    assertThat(bench.outputs.activeFaults).isZero();
    bench.run(0.18);
    assertThat(bench.outputs.activeFaults).isEqualTo(LOST);
    bench.run(10.0);
    assertThat(bench.outputs.activeFaults).as("silence does not clear it").isEqualTo(LOST);
  }

  @Test
  void itClearsTwoSecondsAfterThePulsesAreBack() {
    ControllerBench bench = boosted();
    bench.tachConnected = false;
    bench.run(0.5);
    bench.tachConnected = true;
    bench.run(1.9);
    assertThat(bench.outputs.state).isEqualTo(SafetyState.HELD_AT_SPRING);
    bench.run(0.2);
    assertThat(bench.outputs.activeFaults).isZero();
    assertThat(bench.outputs.state).isEqualTo(SafetyState.CONTROLLING);
  }

  @Test
  void aGapOfTwoHundredMillisecondsRaisesNothing() {
    ControllerBench bench = boosted();
    bench.tachConnected = false;
    bench.run(0.2);
    bench.tachConnected = true;
    assertRaisesNothing(bench, 2.0);
    assertThat(bench.outputs.state).isEqualTo(SafetyState.CONTROLLING);
  }

  @Test
  void lostUnderVacuumItIsReportedAfterTwoAndAQuarterSeconds() {
    ControllerBench bench = boosted();
    bench.throttlePct = 0.0;
    bench.mapKpaAbs = 40.0;
    bench.run(2.0);
    bench.tachConnected = false;
    assertRaisesNothing(bench, 2.2);
    bench.run(0.2);
    assertThat(bench.outputs.activeFaults).isEqualTo(LOST);
  }

  @Test
  void anEngineSwitchedOffAtIdleWhoseManifoldFillsUpInASecondRaisesNothing() {
    ControllerBench bench = boosted();
    bench.throttlePct = 0.0;
    bench.engineRpm = 900.0;
    bench.mapKpaAbs = 40.0;
    bench.run(3.0);
    bench.engineRpm = 0.0;
    for (int i = 0; i < 1_000; i++) {
      bench.mapKpaAbs = 100.0 - 60.0 * Math.exp(-i * 0.005 / 1.0);
      bench.tick();
      assertThat(bench.outputs.activeFaults).isZero();
    }
    assertThat(bench.controller.monitor().engine().stopped()).isTrue();
  }

  @Test
  void anEngineStartedWithADeadSignalIsReportedAsThat() {
    ControllerBench bench = new ControllerBench(TestSettings.car());
    bench.tachConnected = false;
    bench.run(3.0);
    bench.throttlePct = 6.0;
    bench.tick();
    bench.mapKpaAbs = 40.0;
    bench.run(2.2);
    assertThat(bench.outputs.activeFaults).isZero();
    bench.run(0.2);
    assertThat(bench.outputs.activeFaults).isEqualTo(LOST);
  }

  @ParameterizedTest
  @ValueSource(doubles = {70.0, 84.0, 92.0, 98.0})
  void aSteadyCruiseWithALostSignalNeverCountsAsAStop(double cruiseKpa) {
    ControllerBench bench = boosted();
    long ambientBefore = Math.round(bench.outputs.ambientKpaAbs);
    bench.throttlePct = 20.0;
    bench.mapKpaAbs = cruiseKpa;
    bench.run(2.0);
    bench.tachConnected = false;
    bench.inputs.benchRequest = true;
    bench.inputs.benchDutyFraction = 0.5;
    boolean tooNearToTell = cruiseKpa > 96.0;
    for (int i = 0; i < 4_000; i++) {
      bench.tick();
      if (!tooNearToTell) {
        assertThat(bench.outputs.state).isNotEqualTo(SafetyState.BENCH);
        assertThat(bench.outputs.dutyFraction).isZero();
      }
    }
    assertThat(Math.round(bench.outputs.ambientKpaAbs)).isBetween(ambientBefore - 3, ambientBefore);
    if (cruiseKpa < 85.0) {
      assertThat(bench.outputs.activeFaults).isEqualTo(LOST);
    }
  }

  @Test
  void roadSpeedTellsACruiseAtAmbientPressureFromAStop() {
    ControllerBench bench = boosted();
    bench.throttlePct = 20.0;
    bench.mapKpaAbs = 99.0;
    bench.roadKmh = 60.0;
    bench.run(2.0);
    bench.tachConnected = false;
    bench.inputs.benchRequest = true;
    bench.inputs.benchDutyFraction = 0.5;
    for (int i = 0; i < 4_000; i++) {
      bench.tick();
      assertThat(bench.outputs.dutyFraction).isZero();
    }
  }

  @Test
  @Tag("E2")
  void aRestartWithTheEngineRunningAndAHealthySignalRaisesNothing() {
    ControllerBench bench = new ControllerBench(TestSettings.car());
    bench.engineRpm = 3_000.0;
    bench.mapKpaAbs = 35.0;
    assertRaisesNothing(bench, 5.0);
    ControllerBench underBoost = new ControllerBench(TestSettings.car());
    underBoost.engineRpm = 3_000.0;
    underBoost.mapKpaAbs = 160.0;
    assertRaisesNothing(underBoost, 5.0);
  }

  @Test
  @Tag("S14")
  void aStopAtAnAltitudeTheSettingsDidNotAssumeRaisesNothing() {
    ControllerBench bench = new ControllerBench(TestSettings.car());
    bench.engineRpm = 900.0;
    bench.mapKpaAbs = 35.0;
    bench.run(5.0);
    bench.engineRpm = 0.0;
    bench.mapKpaAbs = 78.0;
    assertRaisesNothing(bench, 5.0);
    assertThat(bench.controller.monitor().engine().stopped()).isTrue();
  }

  @Test
  void airFromACompressorOnTheSensorOfAStoppedEngineIsNoLostSignal() {
    ControllerBench bench = new ControllerBench(TestSettings.car());
    bench.run(3.0);
    for (double kpa = 100.0; kpa < 190.0; kpa += 0.2) {
      bench.mapKpaAbs = kpa;
      bench.tick();
    }
    assertRaisesNothing(bench, 10.0);
  }

  @ParameterizedTest
  @ValueSource(doubles = {2.0, 0.5})
  void doubledOrHalvedItRestsWithinAHundredMillisecondsForAsLongAsItLasts(double factor) {
    ControllerBench bench = boosted();
    bench.engineRpm = 3_300.0;
    bench.run(1.0);
    bench.tachFactor = factor;
    bench.run(0.1);
    assertThat(bench.outputs.activeFaults).isEqualTo(FaultCode.ENGINE_SPEED_JUMPS.bit());
    for (int i = 0; i < 2_000; i++) {
      bench.tick();
      assertThat(bench.outputs.state).isEqualTo(SafetyState.HELD_AT_SPRING);
      assertThat(bench.outputs.dutyFraction).isZero();
    }
    bench.tachFactor = 1.0;
    bench.run(2.3);
    assertThat(bench.outputs.activeFaults).isZero();
    assertThat(bench.outputs.state).isEqualTo(SafetyState.CONTROLLING);
  }

  @Test
  void theFastestRevvingAnEngineDoesRaisesNothing() {
    ControllerBench bench = boosted();
    for (int round = 0; round < 10; round++) {
      bench.engineRpm = round % 2 == 0 ? 1_500.0 : 6_500.0;
      assertRaisesNothing(bench, 0.6);
    }
  }

  @Test
  void aBarometerMakesAmbientKnownWithoutAStop() {
    TestCar car = new TestCar().fit(AnalogChannel.BAROMETER, 50.0, 110.0, 50.0);
    ControllerBench bench = new ControllerBench(car.build());
    bench.otherVolts[AnalogChannel.BAROMETER.ordinal()] = 0.5 + 4.0 * 50.0 / 60.0;
    bench.mapKpaAbs = 70.0;
    bench.engineRpm = 2_000.0;
    bench.run(3.0);
    bench.tachConnected = false;
    for (int i = 0; i < 600; i++) {
      // The engine's own pulsation: never steady.
      bench.mapKpaAbs = 70.0 + (i % 4 < 2 ? 3.0 : -3.0);
      bench.tick();
    }
    assertThat(bench.outputs.activeFaults & LOST).isNotZero();
  }
}
