package org.boostwright.core.monitor;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import java.util.Random;
import org.boostwright.core.AnalogChannel;
import org.boostwright.core.ControllerBench;
import org.boostwright.core.TestCar;
import org.boostwright.core.TestSettings;
import org.boostwright.core.record.LogFormat;
import org.boostwright.core.settings.AnalogSensor;
import org.boostwright.core.settings.MapLocation;
import org.boostwright.core.state.SafetyState;
import org.boostwright.core.state.Waiting;
import org.boostwright.core.table.Axis;
import org.boostwright.core.table.Curve;
import org.junit.jupiter.api.Tag;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;
import org.junit.jupiter.params.provider.ValueSource;

/** Faults of the pressure sensor through the whole tick, each with its twin; stepped time. */
class PressureSensorTest {

  private static ControllerBench boosted() {
    ControllerBench bench = new ControllerBench(TestSettings.car());
    bench.driveTo(170.0);
    assertThat(bench.outputs.state).isEqualTo(SafetyState.CONTROLLING);
    assertThat(bench.outputs.dutyFraction).isGreaterThan(0.3);
    return bench;
  }

  private static void assertAtRest(ControllerBench bench) {
    assertThat(bench.outputs.state.isRest()).isTrue();
    assertThat(bench.outputs.dutyFraction).isZero();
    assertThat(bench.outputs.pwmEnabled).isFalse();
    assertThat(bench.outputs.coilSupplyClosed).isFalse();
    assertThat(bench.outputs.heartbeatPermitted).isFalse();
  }

  @ParameterizedTest
  @CsvSource({
    "0.0,  MAP_SIGNAL_LOW",
    "0.19, MAP_SIGNAL_LOW",
    "4.81, MAP_SIGNAL_HIGH",
    "5.0,  MAP_SIGNAL_HIGH",
    "NaN,  MAP_NOT_A_NUMBER",
    "Infinity, MAP_NOT_A_NUMBER",
  })
  @Tag("S1")
  @Tag("S2")
  @Tag("S3")
  @Tag("S10")
  void aShortedOrOpenWireRestsWithTheThirdSampleAndIsReportedAlone(double volts, FaultCode code) {
    ControllerBench bench = boosted();
    bench.overrideMapVolts = true;
    bench.mapVolts = volts;
    double before = bench.outputs.mapKpaAbs;
    bench.tick();
    bench.tick();
    assertThat(bench.outputs.state)
        .as("not before it is confirmed")
        .isEqualTo(SafetyState.CONTROLLING);
    assertThat(bench.outputs.mapKpaAbs).isEqualTo(before);
    bench.tick();
    assertAtRest(bench);
    assertThat(bench.outputs.activeFaults).isEqualTo(code.bit());
    bench.run(10.0);
    assertAtRest(bench);
    assertThat(bench.outputs.activeFaults).isEqualTo(code.bit());
    bench.overrideMapVolts = false;
    bench.run(1.9);
    assertAtRest(bench);
    bench.run(0.2);
    assertThat(bench.outputs.activeFaults).isZero();
    assertThat(bench.outputs.state).isEqualTo(SafetyState.CONTROLLING);
  }

  @Test
  @Tag("U5")
  void afterAFaultTheDutyComesBackWithoutAStep() {
    ControllerBench bench = boosted();
    bench.overrideMapVolts = true;
    bench.run(0.1);
    bench.overrideMapVolts = false;
    while (bench.outputs.state != SafetyState.CONTROLLING) {
      bench.tick();
    }
    double last = bench.outputs.dutyFraction;
    for (int i = 0; i < 100; i++) {
      bench.tick();
      assertThat(bench.outputs.dutyFraction - last).isLessThanOrEqualTo(0.0051);
      last = bench.outputs.dutyFraction;
    }
  }

  @Test
  @Tag("S7")
  void aBadSampleNowAndThenNeitherMovesTheOutputNorRaisesAnything() {
    ControllerBench bench = boosted();
    for (int i = 0; i < 4_000; i++) {
      bench.overrideMapVolts = i % 20 == 0;
      bench.mapVolts = 0.0;
      bench.tick();
      assertThat(bench.outputs.state).isEqualTo(SafetyState.CONTROLLING);
      assertThat(bench.outputs.dutyFraction).isBetween(0.3, 0.51);
    }
    assertThat(bench.outputs.activeFaults).isZero();
  }

  @ParameterizedTest
  @ValueSource(ints = {10, 30, 50, 70, 90})
  @Tag("S7")
  void anIntermittentContactMaturesWithoutChatter(int badPct) {
    ControllerBench bench = boosted();
    Random random = new Random(badPct);
    boolean rested = false;
    for (int i = 0; i < 6_000; i++) {
      bench.overrideMapVolts = random.nextInt(100) < badPct;
      bench.mapVolts = 5.0;
      bench.tick();
      boolean rest = bench.outputs.state.isRest();
      assertThat(rest || !rested).as("once at rest it stays there").isTrue();
      assertThat(bench.outputs.state).isIn(SafetyState.CONTROLLING, SafetyState.HELD_AT_SPRING);
      rested = rest;
    }
    assertThat(rested).isTrue();
    assertThat(bench.outputs.activeFaults).isEqualTo(FaultCode.MAP_SIGNAL_HIGH.bit());
  }

  @Test
  @Tag("S9")
  @Tag("B1")
  void samplesThatStopRestWithinThreePeriodsAndATick() {
    ControllerBench bench = boosted();
    bench.mapSampled = false;
    bench.run(0.015);
    assertThat(bench.outputs.state).isEqualTo(SafetyState.CONTROLLING);
    bench.tick();
    assertAtRest(bench);
    assertThat(bench.outputs.activeFaults).isEqualTo(FaultCode.MAP_STALE.bit());
    bench.mapSampled = true;
    bench.run(2.1);
    assertThat(bench.outputs.state).isEqualTo(SafetyState.CONTROLLING);
  }

  @Test
  @Tag("S9")
  @Tag("U5")
  void aShortThatFallsSilentIsNotForgotten() {
    ControllerBench bench = boosted();
    bench.overrideMapVolts = true;
    bench.run(0.1);
    bench.mapSampled = false;
    bench.run(10.0);
    assertThat(bench.outputs.activeFaults)
        .isEqualTo(FaultCode.MAP_SIGNAL_LOW.bit() | FaultCode.MAP_STALE.bit());
  }

  @Test
  @Tag("E2")
  void aFirstSampleThatComesTwoPeriodsLateRaisesNothing() {
    ControllerBench bench = new ControllerBench(TestSettings.car());
    bench.mapSampled = false;
    bench.throttleSampled = false;
    bench.run(0.015);
    bench.mapSampled = true;
    bench.throttleSampled = true;
    bench.run(1.0);
    assertThat(bench.outputs.activeFaults).isZero();
    assertThat(bench.outputs.state).isEqualTo(SafetyState.RESTING);
  }

  @Test
  @Tag("S4")
  void aFrozenReadingRestsWithinAHundredMillisecondsAndFortyFiveRaiseNothing() {
    ControllerBench bench = boosted();
    bench.noiseKpa = 0.0;
    bench.run(0.045);
    bench.noiseKpa = 0.3;
    bench.run(0.05);
    assertThat(bench.controller.faults().count(FaultCode.MAP_FROZEN)).isZero();
    bench.noiseKpa = 0.0;
    bench.run(0.1);
    assertAtRest(bench);
    assertThat(bench.outputs.activeFaults).isEqualTo(FaultCode.MAP_FROZEN.bit());
    bench.noiseKpa = 0.3;
    bench.run(2.1);
    assertThat(bench.outputs.activeFaults).isZero();
  }

  @Test
  @Tag("S4")
  void aWatchTheSourceIsExemptFromDoesNotCountAsHavingRun() {
    AnalogSensor coarse =
        new AnalogSensor(
            new Curve(new Axis(0.5, 4.5), 20.0, 300.0),
            0.2,
            4.8,
            0.0146,
            0.0043,
            5.0,
            Double.POSITIVE_INFINITY);
    ControllerBench bench =
        new ControllerBench(new TestCar().fit(AnalogChannel.MAP, coarse).build());
    bench.noiseKpa = 0.0;
    bench.driveTo(170.0);
    bench.run(10.0);
    assertThat(bench.outputs.activeFaults).isZero();
    long ran = bench.controller.faults().ran();
    long exempt =
        FaultCode.MAP_FROZEN.bit() | FaultCode.MAP_NOISY.bit() | FaultCode.MAP_JUMPS.bit();
    assertThat(ran & exempt).isZero();
    assertThat(ran & FaultCode.MAP_SIGNAL_LOW.bit()).isNotZero();
    ControllerBench fine = boosted();
    assertThat(fine.controller.faults().ran() & exempt).isEqualTo(exempt);
  }

  @Test
  @Tag("S8")
  void oneImpossibleSampleMovesNoOutput() {
    ControllerBench bench = boosted();
    bench.run(2.0);
    ControllerBench twin = boosted();
    twin.run(2.0);
    bench.mapKpaAbs = 230.0;
    bench.tick();
    twin.tick();
    assertThat(bench.outputs.dutyFraction).isCloseTo(twin.outputs.dutyFraction, within(0.005));
    bench.mapKpaAbs = 170.0;
    for (int i = 0; i < 200; i++) {
      bench.tick();
      twin.tick();
      assertThat(bench.outputs.activeFaults).isZero();
      assertThat(bench.outputs.dutyFraction).isCloseTo(twin.outputs.dutyFraction, within(0.005));
    }
  }

  @Test
  @Tag("S8")
  void repeatedImpossibleSamplesAreAFault() {
    ControllerBench bench = boosted();
    bench.run(1.0);
    for (int i = 0; i < 4; i++) {
      assertThat(bench.outputs.activeFaults).isZero();
      bench.mapKpaAbs = 250.0;
      bench.tick();
      bench.mapKpaAbs = 170.0;
      bench.tick();
    }
    assertThat(bench.outputs.activeFaults).isEqualTo(FaultCode.MAP_JUMPS.bit());
    assertAtRest(bench);
  }

  @Test
  @Tag("S6")
  void fiveTimesRatedNoiseIsAFaultAndRatedNoiseIsNot() {
    ControllerBench bench = boosted();
    bench.run(30.0);
    assertThat(bench.outputs.activeFaults).isZero();
    bench.noiseKpa = 1.5;
    bench.run(3.0);
    assertThat(bench.outputs.activeFaults).isEqualTo(FaultCode.MAP_NOISY.bit());
    bench.noiseKpa = 0.3;
    bench.run(3.5);
    assertThat(bench.outputs.activeFaults).isZero();
  }

  @Test
  @Tag("S6")
  void noiseIsNotJudgedWhileTheThrottleMoves() {
    ControllerBench bench = boosted();
    bench.noiseKpa = 4.0;
    for (int i = 0; i < 400; i++) {
      bench.throttlePct = i % 40 < 20 ? 80.0 : 100.0;
      bench.tick();
      assertThat(bench.controller.faults().isActive(FaultCode.MAP_NOISY)).isFalse();
    }
  }

  @Test
  @Tag("S11")
  void aHoseThatComesOffUnderBoostNeverRaisesDutyAndRestsWithinAHundredMilliseconds() {
    ControllerBench bench = boosted();
    bench.run(2.0);
    double duty = bench.outputs.dutyFraction;
    for (int i = 1; i <= 20; i++) {
      bench.mapKpaAbs = 100.0 + 70.0 * Math.exp(-i * 0.005 / 0.030);
      bench.tick();
      assertThat(bench.outputs.dutyFraction).isLessThanOrEqualTo(duty + 0.02);
    }
    assertAtRest(bench);
    assertThat(bench.outputs.activeFaults).isEqualTo(FaultCode.MAP_FALL_UNEXPLAINED.bit());
    bench.run(20.0);
    assertThat(bench.outputs.activeFaults).isEqualTo(FaultCode.MAP_FALL_UNEXPLAINED.bit());
    bench.throttlePct = 10.0;
    bench.mapKpaAbs = 40.0;
    bench.run(2.1);
    assertThat(bench.outputs.activeFaults).isZero();
  }

  @Test
  @Tag("S11")
  void aClosingThrottleExplainsTheSameFall() {
    ControllerBench bench = boosted();
    bench.run(2.0);
    bench.throttlePct = 0.0;
    for (int i = 1; i <= 200; i++) {
      bench.mapKpaAbs = 40.0 + 130.0 * Math.exp(-i * 0.005 / 0.030);
      bench.tick();
      assertThat(bench.outputs.activeFaults).isZero();
    }
  }

  private static long faultsAfterAFallWithTheThrottleAt(double pct) {
    ControllerBench bench = boosted();
    bench.run(2.0);
    bench.throttlePct = pct;
    bench.run(0.010);
    for (int i = 1; i <= 20; i++) {
      bench.mapKpaAbs = 140.0 + 30.0 * Math.exp(-i * 0.005 / 0.020);
      bench.tick();
    }
    return bench.outputs.activeFaults;
  }

  @Test
  @Tag("S11")
  void aThrottleThatClosesByAFewPercentExplainsAFall() {
    assertThat(faultsAfterAFallWithTheThrottleAt(96.0)).isZero();
    assertThat(faultsAfterAFallWithTheThrottleAt(98.2)).isZero();
    assertThat(faultsAfterAFallWithTheThrottleAt(98.8))
        .isEqualTo(FaultCode.MAP_FALL_UNEXPLAINED.bit());
  }

  @Test
  @Tag("S11")
  void anOpeningThrottleExplainsNoFall() {
    ControllerBench bench = boosted();
    bench.throttlePct = 60.0;
    bench.run(2.0);
    bench.throttlePct = 100.0;
    bench.run(0.05);
    for (int i = 1; i <= 20; i++) {
      bench.mapKpaAbs = 100.0 + 70.0 * Math.exp(-i * 0.005 / 0.030);
      bench.tick();
    }
    assertAtRest(bench);
    assertThat(bench.outputs.activeFaults).isEqualTo(FaultCode.MAP_FALL_UNEXPLAINED.bit());
  }

  @Test
  @Tag("S11")
  void aFallAsFastAsTheWastegateMakesItRaisesNothing() {
    ControllerBench bench = boosted();
    bench.run(2.0);
    for (int i = 0; i < 50; i++) {
      bench.mapKpaAbs -= 270.0 * 0.005;
      bench.tick();
      assertThat(bench.outputs.activeFaults).isZero();
    }
  }

  @Test
  @Tag("S11")
  void anEngineThatPullsVacuumFastFromBelowBoostRaisesNothing() {
    ControllerBench bench = boosted();
    bench.mapKpaAbs = 108.0;
    bench.throttlePct = 25.0;
    bench.run(2.0);
    for (int i = 1; i <= 40; i++) {
      bench.mapKpaAbs = 40.0 + 68.0 * Math.exp(-i * 0.005 / 0.030);
      bench.tick();
      assertThat(bench.outputs.activeFaults).isZero();
    }
  }

  @Test
  @Tag("S11")
  void beforeTheThrottleLifeIsARise() {
    TestCar car = new TestCar();
    car.mapLocation = MapLocation.BEFORE_THROTTLE;
    ControllerBench bench = new ControllerBench(car.build());
    bench.run(3.0);
    bench.engineRpm = 4_000.0;
    bench.throttlePct = 100.0;
    bench.run(2.0);
    assertThat(bench.outputs.waiting).isEqualTo(Waiting.SENSOR_LIFE);
    bench.mapKpaAbs = 125.0;
    bench.run(0.1);
    assertThat(bench.outputs.state).isEqualTo(SafetyState.CONTROLLING);
  }

  @Test
  @Tag("P1")
  void overboostRestsInTheTickOfTheThirdSampleAndIsReportedAlone() {
    ControllerBench bench = new ControllerBench(TestSettings.car());
    bench.driveTo(195.0);
    bench.mapKpaAbs = 202.0;
    bench.run(0.01);
    assertThat(bench.outputs.state).isEqualTo(SafetyState.CONTROLLING);
    bench.run(0.01);
    assertAtRest(bench);
    assertThat(bench.outputs.activeFaults).isEqualTo(FaultCode.OVERBOOST.bit());
    double[] frame = bench.controller.faults().frame(FaultCode.OVERBOOST);
    assertThat(frame[LogFormat.MAP]).isGreaterThan(200.0);
    assertThat(frame[LogFormat.DUTY]).isZero();
  }

  @Test
  @Tag("P1")
  void withoutAKeyWireARepeatedOverboostClearsOnceTheEngineIsKnownToBeStopped() {
    ControllerBench bench = new ControllerBench(TestSettings.car());
    bench.driveTo(190.0);
    for (int i = 0; i < 3; i++) {
      bench.throttlePct = 100.0;
      bench.run(0.5);
      bench.mapKpaAbs = 205.0;
      bench.run(0.1);
      assertThat(bench.controller.faults().isActive(FaultCode.OVERBOOST)).isTrue();
      bench.throttlePct = 5.0;
      bench.mapKpaAbs = 40.0;
      bench.run(2.6);
      assertThat(bench.controller.faults().isActive(FaultCode.OVERBOOST)).isFalse();
      bench.throttlePct = 100.0;
      bench.run(0.2);
      bench.mapKpaAbs = 190.0;
    }
    assertThat(bench.outputs.activeFaults).isEqualTo(FaultCode.OVERBOOST_REPEATED.bit());
    bench.throttlePct = 0.0;
    bench.mapKpaAbs = 40.0;
    bench.run(60.0);
    assertThat(bench.outputs.state).isEqualTo(SafetyState.LOCKED_UNTIL_RESTART);
    bench.engineRpm = 0.0;
    bench.throttlePct = 8.0;
    bench.tick();
    bench.throttlePct = 0.0;
    bench.mapKpaAbs = 100.0;
    bench.run(2.6);
    assertThat(bench.outputs.activeFaults).isZero();
    assertThat(bench.outputs.state).isEqualTo(SafetyState.RESTING);
  }

  /** Little boost, so that the fall to ambient is slow enough to be a wastegate's. */
  private static ControllerBench hoseComesOff(ControllerBench bench) {
    bench.driveTo(112.0);
    bench.throttlePct = 50.0;
    bench.run(1.0);
    assertThat(bench.controller.faults().ran() & FaultCode.MAP_FLAT_AT_AMBIENT.bit()).isNotZero();
    assertThat(bench.outputs.activeFaults).isZero();
    bench.mapKpaAbs = 100.0;
    bench.run(0.1);
    return bench;
  }

  @Test
  @Tag("S11")
  void aHoseThatComesOffWithLittleBoostIsFoundAndLifeHasToBeShownAnew() {
    ControllerBench bench = hoseComesOff(new ControllerBench(TestSettings.car()));
    assertThat(bench.outputs.activeFaults).isEqualTo(FaultCode.MAP_FLAT_AT_AMBIENT.bit());
    assertAtRest(bench);
    bench.throttlePct = 0.0;
    bench.run(5.0);
    assertThat(bench.outputs.activeFaults).isZero();
    assertThat(bench.controller.monitor().lifeShown()).isFalse();
    assertThat(bench.outputs.waiting).isEqualTo(Waiting.SENSOR_LIFE);
  }

  @Test
  @Tag("S11")
  void aFallThatNothingExplainsIsKnownInItsFirstTicks() {
    ControllerBench bench = boosted();
    assertThat(bench.controller.monitor().fallUnexplained()).isFalse();
    for (int i = 0; i < 5; i++) {
      bench.mapKpaAbs -= 10.0;
      bench.tick();
    }
    assertThat(bench.controller.monitor().fallUnexplained()).isTrue();
  }

  @Test
  @Tag("S6")
  void withoutADeclaredNoiseNoneIsJudged() {
    TestCar car = new TestCar();
    car.mapNoiseKpa = 0.0;
    ControllerBench bench = new ControllerBench(car.build());
    bench.noiseKpa = 5.0;
    bench.driveTo(170.0);
    bench.run(2.0);
    assertThat(bench.controller.faults().ran() & FaultCode.MAP_NOISY.bit()).isZero();
  }

  @Test
  @Tag("P1")
  void theThrottleIsReleasedTwoSecondsAfterItWasFirstSeenLow() {
    ControllerBench bench = new ControllerBench(TestSettings.car());
    bench.tick();
    long low = bench.nowNanos;
    Monitor monitor = bench.controller.monitor();
    assertThat(monitor.throttleReleased(low + Monitor.RELEASED_NANOS - 1)).isFalse();
    assertThat(monitor.throttleReleased(low + Monitor.RELEASED_NANOS)).isTrue();
  }
}
