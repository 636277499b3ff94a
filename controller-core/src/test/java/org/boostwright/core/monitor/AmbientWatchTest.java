package org.boostwright.core.monitor;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import org.boostwright.core.AnalogChannel;
import org.boostwright.core.ControllerBench;
import org.boostwright.core.TestCar;
import org.boostwright.core.state.SafetyState;
import org.boostwright.core.state.Waiting;
import org.junit.jupiter.api.Tag;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;
import org.junit.jupiter.params.provider.ValueSource;

/** Where ambient pressure comes from, how it ages, and when the sensors disagree. */
@Tag("S14")
class AmbientWatchTest {
  private static final int BAROMETER = AnalogChannel.BAROMETER.ordinal();

  private static double volts(double kpaAbs) {
    return 0.5 + 4.0 * (kpaAbs - 50.0) / 60.0;
  }

  /** A car with a barometer of 50 to 110 kPa, read every 50 ms. */
  private static ControllerBench withBarometer(double kpaAbs) {
    TestCar car = new TestCar().fit(AnalogChannel.BAROMETER, 50.0, 110.0, 50.0);
    ControllerBench bench = new ControllerBench(car.build());
    bench.otherVolts[BAROMETER] = volts(kpaAbs);
    return bench;
  }

  private static boolean active(ControllerBench bench, FaultCode code) {
    return bench.controller.faults().isActive(code);
  }

  @Test
  void withoutAMeasurementTheAssumedPressureIsUsedAndAges() {
    ControllerBench bench = new ControllerBench(new TestCar().build());
    bench.engineRpm = 900.0;
    bench.run(10.0);
    assertThat(bench.controller.monitor().ambientKpaAbs()).isEqualTo(100.0);
    assertThat(bench.controller.monitor().ambientFloorKpaAbs()).isCloseTo(99.8, within(0.001));
  }

  @Test
  @Tag("S13")
  void withNothingAssumedARestartWithTheEngineRunningWaitsForAStop() {
    TestCar car = new TestCar();
    car.assumedAmbientKpaAbs = Double.NaN;
    ControllerBench bench = new ControllerBench(car.build());
    bench.engineRpm = 900.0;
    bench.mapKpaAbs = 40.0;
    bench.run(5.0);
    assertThat(bench.outputs.waiting).isEqualTo(Waiting.AMBIENT);
    bench.engineRpm = 4000.0;
    bench.throttlePct = 100.0;
    bench.mapKpaAbs = 170.0;
    for (int i = 0; i < 1_000; i++) {
      bench.tick();
      assertThat(bench.outputs.state).isEqualTo(SafetyState.RESTING);
      assertThat(bench.outputs.dutyFraction).isZero();
    }
    assertThat(bench.controller.monitor().ambientKpaAbs()).isNaN();
    assertThat(bench.controller.monitor().ambientFloorKpaAbs()).isNaN();
  }

  @Test
  void whatWasMeasuredAgesDownToTheDeclaredBound() {
    ControllerBench bench = new ControllerBench(new TestCar().build());
    bench.mapKpaAbs = 90.0;
    bench.run(3.0);
    assertThat(bench.controller.monitor().ambientFloorKpaAbs()).isCloseTo(90.0, within(0.3));
    bench.engineRpm = 900.0;
    bench.mapKpaAbs = 35.0;
    bench.run(1_000.0);
    // 0.02 kPa/s for 1000 s.
    assertThat(bench.controller.monitor().ambientFloorKpaAbs()).isCloseTo(70.0, within(0.4));
    assertThat(bench.outputs.findings & FaultCode.AMBIENT_IN_DOUBT.bit()).isZero();
    bench.run(200.0);
    assertThat(bench.controller.monitor().ambientFloorKpaAbs()).isCloseTo(68.0, within(0.4));
    assertThat(bench.outputs.findings & FaultCode.AMBIENT_IN_DOUBT.bit()).isNotZero();
    assertThat(bench.outputs.activeFaults).as("shown, and no fault").isZero();
    assertThat(bench.outputs.state).isEqualTo(SafetyState.READY);
    assertThat(bench.controller.monitor().ambientKpaAbs()).isCloseTo(90.0, within(0.4));
  }

  @Test
  void anAmbientThatIsOnlyAssumedIsShownWhileTheEngineRunsAndNotBefore() {
    ControllerBench bench = new ControllerBench(new TestCar().build());
    bench.run(1.0);
    assertThat(bench.outputs.findings).isZero();
    bench.engineRpm = 900.0;
    bench.run(0.2);
    assertThat(bench.outputs.findings).isEqualTo(FaultCode.AMBIENT_IN_DOUBT.bit());
    ControllerBench measured = new ControllerBench(new TestCar().build());
    measured.run(2.5);
    measured.engineRpm = 900.0;
    measured.run(1.0);
    assertThat(measured.outputs.findings).isZero();
  }

  @Test
  void theBarometerIsFollowedAndDoesNotAge() {
    ControllerBench bench = withBarometer(100.0);
    bench.run(3.0);
    bench.engineRpm = 900.0;
    bench.mapKpaAbs = 40.0;
    for (double kpa = 100.0; kpa >= 80.0; kpa -= 0.01) {
      bench.otherVolts[BAROMETER] = volts(kpa);
      bench.tick();
    }
    bench.run(20.0);
    assertThat(bench.controller.monitor().ambientKpaAbs()).isCloseTo(80.0, within(0.02));
    assertThat(bench.controller.monitor().ambientFloorKpaAbs()).isCloseTo(80.0, within(0.02));
    assertThat(bench.outputs.findings).isZero();
    assertThat(bench.outputs.activeFaults).isZero();
  }

  @Test
  void aBarometerThatFailsLeavesItsLastReadingAgeingAndIsReportedAlone() {
    ControllerBench bench = withBarometer(100.0);
    bench.run(3.0);
    bench.engineRpm = 900.0;
    bench.mapKpaAbs = 40.0;
    bench.run(300.0);
    bench.otherVolts[BAROMETER] = volts(85.0);
    bench.run(10.0);
    bench.otherVolts[BAROMETER] = 4.9;
    bench.run(0.2);
    assertThat(bench.outputs.activeFaults).isEqualTo(FaultCode.BAROMETER_SIGNAL.bit());
    assertThat(bench.outputs.ambientKpaAbs).isCloseTo(85.0, within(0.01));
    bench.run(100.0);
    assertThat(bench.outputs.ambientKpaAbs).isCloseTo(85.0, within(0.01));
    assertThat(bench.controller.monitor().ambientFloorKpaAbs()).isCloseTo(83.0, within(0.02));
    assertThat(bench.outputs.state).isEqualTo(SafetyState.READY);
    bench.otherVolts[BAROMETER] = volts(82.0);
    bench.run(2.1);
    assertThat(bench.outputs.activeFaults).isZero();
    assertThat(bench.outputs.ambientKpaAbs).isCloseTo(82.0, within(0.01));
  }

  @Test
  void oneBadSampleOfTheBarometerMovesNothing() {
    ControllerBench bench = withBarometer(95.0);
    bench.mapKpaAbs = 95.0;
    bench.run(3.0);
    bench.engineRpm = 900.0;
    bench.run(1.0);
    bench.otherVolts[BAROMETER] = 4.9;
    bench.tick();
    bench.otherVolts[BAROMETER] = Double.NaN;
    for (int i = 0; i < 25; i++) {
      bench.tick();
      assertThat(bench.outputs.ambientKpaAbs).isCloseTo(95.0, within(0.01));
      assertThat(bench.controller.faults().count(FaultCode.BAROMETER_SIGNAL)).isEqualTo(10);
    }
  }

  @Test
  void anEngineStoppedWithAFailedBarometerMeasuresAmbientItself() {
    ControllerBench bench = withBarometer(100.0);
    bench.run(3.0);
    bench.otherVolts[BAROMETER] = 4.9;
    bench.mapKpaAbs = 98.0;
    bench.run(3.0);
    assertThat(bench.outputs.ambientKpaAbs).isCloseTo(98.0, within(0.3));
  }

  @ParameterizedTest
  @ValueSource(doubles = {-4.5, 4.5, -15.0})
  @Tag("S5")
  void aPressureSensorOffFromTheBarometerAtKeyOnLocks(double offsetKpa) {
    ControllerBench bench = withBarometer(95.0);
    bench.mapKpaAbs = 95.0 + offsetKpa;
    bench.run(1.9);
    assertThat(bench.outputs.activeFaults).isZero();
    bench.run(0.3);
    assertThat(bench.outputs.activeFaults).isEqualTo(FaultCode.MAP_AMBIENT_MISMATCH.bit());
    assertThat(bench.outputs.state).isEqualTo(SafetyState.LOCKED_UNTIL_RESTART);
    bench.engineRpm = 900.0;
    bench.mapKpaAbs = 40.0;
    bench.run(5.0);
    assertThat(active(bench, FaultCode.MAP_AMBIENT_MISMATCH)).isTrue();
  }

  @ParameterizedTest
  @ValueSource(doubles = {-3.5, 0.0, 3.5})
  @Tag("S5")
  void aPressureSensorWithinToleranceOfTheBarometerRaisesNothing(double offsetKpa) {
    ControllerBench bench = withBarometer(95.0);
    bench.mapKpaAbs = 95.0 + offsetKpa;
    bench.run(60.0);
    assertThat(bench.outputs.activeFaults).isZero();
    assertThat(bench.controller.faults().count(FaultCode.MAP_AMBIENT_MISMATCH)).isZero();
    assertThat(bench.controller.faults().ran() & FaultCode.MAP_AMBIENT_MISMATCH.bit()).isNotZero();
  }

  @Test
  @Tag("S5")
  void aPressureThatNoAtmosphereHasLocksAtKeyOnEvenWithoutABarometer() {
    ControllerBench bench = new ControllerBench(new TestCar().build());
    bench.mapKpaAbs = 42.0;
    bench.run(2.5);
    assertThat(bench.outputs.activeFaults).isEqualTo(FaultCode.MAP_AMBIENT_MISMATCH.bit());
    bench.run(60.0);
    assertThat(bench.outputs.activeFaults).isEqualTo(FaultCode.MAP_AMBIENT_MISMATCH.bit());
  }

  /** Home is assumed at 100 kPa: nothing for 4 kPa, then double, from 8 kPa in proportion. */
  @ParameterizedTest
  @CsvSource({"105, 1", "96.5, 1", "94, 0.96", "92, 0.92", "91, 0.91", "71, 0.71"})
  @Tag("S5")
  void aReadingBelowTheAirAtHomeLeavesItsShareOfTargetAndLimit(double kpaAbs, double share) {
    ControllerBench bench = new ControllerBench(new TestCar().build());
    bench.mapKpaAbs = kpaAbs;
    assertThat(bench.controller.monitor().trustedShare()).isEqualTo(1.0);
    bench.run(3.0);
    assertThat(bench.controller.monitor().trustedShare()).isCloseTo(share, within(0.001));
    assertThat(bench.outputs.targetKpaAbs).isCloseTo(share * 180.0, within(0.2));
    assertThat(bench.outputs.activeFaults).isZero();
  }

  @Test
  @Tag("S5")
  void withNothingAssumedHomeIsAtSeaLevel() {
    TestCar car = new TestCar();
    car.assumedAmbientKpaAbs = Double.NaN;
    ControllerBench bench = new ControllerBench(car.build());
    bench.mapKpaAbs = 0.9 * 101.325;
    bench.run(1.0);
    assertThat(bench.controller.monitor().trustedShare()).as("nothing measured").isEqualTo(1.0);
    bench.run(2.0);
    assertThat(bench.controller.monitor().trustedShare()).isCloseTo(0.9, within(0.001));
  }

  @Test
  @Tag("S5")
  void aClimbInOneDriveTakesNothingMoreThanThePressureRatio() {
    ControllerBench bench = new ControllerBench(new TestCar().build());
    bench.run(3.0);
    bench.engineRpm = 900.0;
    bench.mapKpaAbs = 40.0;
    bench.run(300.0);
    assertThat(bench.controller.monitor().ambientFloorKpaAbs()).isLessThan(94.5);
    assertThat(bench.controller.monitor().trustedShare()).isEqualTo(1.0);
  }

  @Test
  @Tag("S5")
  void anAmbientKeptFromAnEarlierRunThatIsLowIsDoubtedToo() {
    ControllerBench bench = new ControllerBench(new TestCar().build());
    bench.controller.monitor().recallAmbient(86.0);
    bench.engineRpm = 900.0;
    bench.run(1.0);
    assertThat(bench.controller.monitor().trustedShare()).isCloseTo(0.86, within(1e-12));
    assertThat(bench.controller.monitor().ambientFloorKpaAbs())
        .as("any climb since")
        .isEqualTo(64.0);
    assertThat(bench.outputs.findings).isEqualTo(FaultCode.AMBIENT_IN_DOUBT.bit());
  }

  @Test
  @Tag("S5")
  void thinAirThatABarometerReadsKeepsTargetAndLimitUntilItFails() {
    ControllerBench bench = withBarometer(80.0);
    bench.mapKpaAbs = 80.0;
    bench.run(3.0);
    assertThat(bench.controller.monitor().trustedShare()).isEqualTo(1.0);
    assertThat(bench.outputs.targetKpaAbs).isEqualTo(180.0);
    bench.otherVolts[BAROMETER] = 4.9;
    bench.run(3.0);
    assertThat(bench.controller.monitor().trustedShare())
        .as("the pressure sensor's own word again")
        .isCloseTo(0.80, within(0.001));
  }

  @Test
  @Tag("S5")
  void theOverboostLimitFallsWithAReadingThatMayBeLow() {
    ControllerBench bench = new ControllerBench(new TestCar().build());
    bench.mapKpaAbs = 81.0;
    bench.run(3.0);
    bench.engineRpm = 4000.0;
    bench.mapKpaAbs = 40.0;
    bench.run(0.5);
    // The limit of 200 kPa is one of 166.75.
    for (; bench.mapKpaAbs < 164.5; bench.mapKpaAbs += 0.5) {
      bench.tick();
    }
    bench.run(1.0);
    assertThat(active(bench, FaultCode.OVERBOOST)).isFalse();
    bench.mapKpaAbs = 169.0;
    bench.run(0.1);
    assertThat(bench.outputs.activeFaults).isEqualTo(FaultCode.OVERBOOST.bit());
    assertThat(bench.outputs.state.isRest()).isTrue();
  }

  @ParameterizedTest
  @ValueSource(doubles = {60.0, 106.0})
  void aKeptAmbientMayBeAnyThatAnAtmosphereHas(double kpaAbs) {
    Monitor monitor = new ControllerBench(new TestCar().build()).controller.monitor();
    monitor.recallAmbient(kpaAbs);
    assertThat(monitor.ambientKpaAbs()).isEqualTo(kpaAbs);
    assertThat(monitor.ambientFloorKpaAbs()).isEqualTo(kpaAbs - 22.0);
    Monitor other = new ControllerBench(new TestCar().build()).controller.monitor();
    other.recallAmbient(kpaAbs < 80.0 ? Math.nextDown(kpaAbs) : Math.nextUp(kpaAbs));
    assertThat(other.ambientKpaAbs()).isEqualTo(100.0);
  }
}
