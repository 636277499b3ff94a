package org.boostwright.core.monitor;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import org.boostwright.core.AnalogChannel;
import org.boostwright.core.ControllerBench;
import org.boostwright.core.TestCar;
import org.boostwright.core.settings.AnalogSensor;
import org.boostwright.core.settings.OptionalWires;
import org.boostwright.core.state.SafetyState;
import org.boostwright.core.table.Axis;
import org.boostwright.core.table.Curve;
import org.junit.jupiter.api.BeforeEach;
import org.junit.jupiter.api.Tag;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;

/** Throttle, pedal, supply, intake air, permit and coil feedback through the whole tick. */
class OtherSensorsTest {
  private static final int THROTTLE = AnalogChannel.THROTTLE.ordinal();
  private static final int PEDAL = AnalogChannel.PEDAL.ordinal();
  private static final int AIR = AnalogChannel.INTAKE_AIR.ordinal();
  private static final int SUPPLY = AnalogChannel.SUPPLY.ordinal();

  private ControllerBench bench = new ControllerBench(new TestCar().build());

  /** Volts of a value on a sensor of 0.5 V = low to 4.5 V = high. */
  private static double volts(double value, double low, double high) {
    return 0.5 + 4.0 * (value - low) / (high - low);
  }

  private void pedal(double pct) {
    bench.otherVolts[PEDAL] = volts(pct, 0.0, 100.0);
  }

  private void air(double degC) {
    bench.otherVolts[AIR] = volts(degC, -20.0, 120.0);
  }

  private void supply(double supplyVolts) {
    bench.otherVolts[SUPPLY] = volts(supplyVolts, 0.0, 20.0);
  }

  @BeforeEach
  void boosted() {
    TestCar car =
        new TestCar()
            .fit(AnalogChannel.PEDAL, 0.0, 100.0, 5.0)
            .fit(AnalogChannel.INTAKE_AIR, -20.0, 120.0, 100.0)
            .fit(AnalogChannel.SUPPLY, 0.0, 20.0, 20.0);
    car.wires = new OptionalWires(true, true, true, true, true);
    car.targetFactorOverIntakeC = new Curve(new Axis(50.0, 70.0), 1.0, 0.5);
    bench = new ControllerBench(car.build());
    pedal(100.0);
    air(25.0);
    supply(14.0);
    bench.coilModelled = true;
    bench.driveTo(170.0);
    assertThat(bench.outputs.activeFaults).isZero();
    assertThat(bench.outputs.state).isEqualTo(SafetyState.CONTROLLING);
  }

  private void run(double seconds) {
    bench.run(seconds);
  }

  private long active() {
    return bench.outputs.activeFaults;
  }

  @ParameterizedTest
  @CsvSource({"0.1", "4.9"})
  @Tag("S12")
  void aLostThrottleRestsWithTheThirdSampleAndIsReportedAlone(double volts) {
    bench.throttleSampled = false;
    bench.otherVolts[THROTTLE] = volts;
    run(0.01);
    assertThat(bench.outputs.state).isEqualTo(SafetyState.CONTROLLING);
    run(0.005);
    assertThat(bench.outputs.state).isEqualTo(SafetyState.HELD_AT_SPRING);
    assertThat(active()).isEqualTo(FaultCode.THROTTLE_SIGNAL.bit());
    run(5.0);
    assertThat(active()).isEqualTo(FaultCode.THROTTLE_SIGNAL.bit());
    bench.otherVolts[THROTTLE] = Double.NaN;
    bench.throttleSampled = true;
    run(2.1);
    assertThat(active()).isZero();
  }

  @Test
  @Tag("S9")
  @Tag("S12")
  void aThrottleThatFallsSilentRestsAfterThreePeriods() {
    bench.throttleSampled = false;
    run(0.015);
    assertThat(bench.outputs.state).isEqualTo(SafetyState.CONTROLLING);
    run(0.005);
    assertThat(active()).isEqualTo(FaultCode.THROTTLE_STALE.bit());
    assertThat(bench.outputs.dutyFraction).isZero();
  }

  @Test
  @Tag("S4")
  @Tag("S12")
  void aThrottleOfCoarseResolutionMayStandStill() {
    run(20.0);
    assertThat(active()).isZero();
    assertThat(bench.outputs.state).isEqualTo(SafetyState.CONTROLLING);
  }

  @Test
  @Tag("S4")
  @Tag("S12")
  void aThrottleWhoseDeclaredNoiseExceedsOneStepMayNot() {
    AnalogSensor noisy =
        new AnalogSensor(
            new Curve(new Axis(0.5, 4.5), 0.0, 100.0),
            0.2,
            4.8,
            187.5e-6,
            0.002,
            5.0,
            Double.POSITIVE_INFINITY);
    ControllerBench still =
        new ControllerBench(new TestCar().fit(AnalogChannel.THROTTLE, noisy).build());
    still.run(0.1);
    assertThat(still.outputs.activeFaults).isEqualTo(FaultCode.THROTTLE_SIGNAL.bit());
  }

  @Test
  @Tag("S12")
  void aThrottleStuckOpenAgainstAClosedPedalRests() {
    pedal(0.0);
    run(0.01);
    assertThat(bench.outputs.state).isEqualTo(SafetyState.CONTROLLING);
    run(0.005);
    assertThat(active()).isEqualTo(FaultCode.THROTTLE_AGAINST_PEDAL.bit());
    assertThat(bench.outputs.dutyFraction).isZero();
    run(5.0);
    assertThat(active()).isEqualTo(FaultCode.THROTTLE_AGAINST_PEDAL.bit());
    pedal(100.0);
    run(2.1);
    assertThat(active()).isZero();
  }

  @ParameterizedTest
  @CsvSource({"100.0, 8.1", "39.0, 0.0"})
  @Tag("S12")
  void aPedalJustOpenOrAThrottleJustBelowFortyPercentRaisesNothing(double throttle, double pedal) {
    bench.throttlePct = throttle;
    run(1.0);
    pedal(pedal);
    run(2.0);
    assertThat(active()).isZero();
    assertThat(bench.controller.faults().count(FaultCode.THROTTLE_AGAINST_PEDAL)).isZero();
  }

  @Test
  @Tag("S12")
  void aThrottleThatClosesBehindThePedalRaisesNothing() {
    pedal(0.0);
    bench.throttlePct = 90.0;
    for (int i = 0; i < 70; i++) {
      bench.throttlePct -= 1.4;
      run(0.005);
      assertThat(active()).isZero();
    }
  }

  @Test
  @Tag("S12")
  void aLostPedalIsReportedAndLeavesTheThrottleInCharge() {
    bench.otherVolts[PEDAL] = 0.0;
    run(0.05);
    assertThat(active()).isEqualTo(FaultCode.PEDAL_SIGNAL.bit());
    assertThat(bench.outputs.state).isEqualTo(SafetyState.CONTROLLING);
  }

  @Test
  @Tag("S12")
  @Tag("U5")
  void aPedalThatFallsSilentDoesNotClearTheStuckThrottle() {
    pedal(0.0);
    run(0.05);
    bench.otherVolts[PEDAL] = Double.NaN;
    run(10.0);
    assertThat(active())
        .isEqualTo(FaultCode.THROTTLE_AGAINST_PEDAL.bit() | FaultCode.PEDAL_SIGNAL.bit());
  }

  @Test
  @Tag("S12")
  void aLostIntakeAirSensorIsReplacedByAStatedHotOne() {
    bench.otherVolts[AIR] = 4.9;
    run(0.01);
    assertThat(bench.outputs.intakeAirC).isCloseTo(25.0, within(1e-6));
    run(0.01);
    assertThat(active()).isEqualTo(FaultCode.INTAKE_AIR_SIGNAL.bit());
    assertThat(bench.outputs.intakeAirC).isEqualTo(60.0);
    // Half way of the curve: three quarters of the boost above ambient are left.
    double ambient = bench.outputs.ambientKpaAbs;
    assertThat(bench.outputs.targetKpaAbs)
        .isCloseTo(ambient + 0.75 * (180.0 - ambient), within(1e-6));
    assertThat(bench.outputs.state).isEqualTo(SafetyState.CONTROLLING);
    air(30.0);
    run(1.0);
    assertThat(bench.outputs.intakeAirC).as("until it has cleared").isEqualTo(60.0);
    run(1.1);
    assertThat(active()).isZero();
    assertThat(bench.outputs.intakeAirC).isCloseTo(30.0, within(1e-6));
  }

  @ParameterizedTest
  @CsvSource({"2, INTAKE_AIR_SIGNAL", "3, SUPPLY_SIGNAL"})
  @Tag("S7")
  void oneBadSampleOfASlowChannelCountsOnce(int which, FaultCode code) {
    int channel = which == 2 ? AIR : SUPPLY;
    double good = bench.otherVolts[channel];
    bench.otherVolts[channel] = 4.9;
    run(0.005);
    bench.otherVolts[channel] = Double.NaN;
    run(0.05);
    assertThat(bench.controller.faults().count(code)).isEqualTo(10);
    bench.otherVolts[channel] = good;
    run(0.1);
    assertThat(active()).isZero();
    assertThat(bench.controller.faults().count(code)).isZero();
  }

  @Test
  @Tag("S9")
  void aSlowChannelThatFallsSilentIsReportedAfterThreePeriods() {
    bench.otherVolts[AIR] = Double.NaN;
    run(0.3);
    assertThat(active()).isZero();
    run(0.015);
    assertThat(active()).isEqualTo(FaultCode.INTAKE_AIR_SIGNAL.bit());
  }

  @Test
  @Tag("E2")
  void aSupplyBelowNineVoltsRests() {
    supply(9.0);
    run(1.0);
    assertThat(active()).isZero();
    supply(8.99);
    run(0.015);
    assertThat(active()).isEqualTo(FaultCode.SUPPLY_LOW.bit());
    assertThat(bench.outputs.dutyFraction).isZero();
    supply(13.0);
    run(0.9);
    assertThat(bench.outputs.state).isEqualTo(SafetyState.HELD_AT_SPRING);
    run(0.2);
    assertThat(active()).isZero();
  }

  @Test
  @Tag("E2")
  void theDipOfAStartRaisesNothing() {
    bench.throttlePct = 0.0;
    bench.mapKpaAbs = 40.0;
    run(1.0);
    bench.engineRpm = 0.0;
    bench.throttlePct = 8.0;
    run(0.005);
    bench.throttlePct = 0.0;
    bench.mapKpaAbs = 100.0;
    run(3.0);
    supply(7.0);
    run(0.3);
    bench.engineRpm = 250.0;
    run(1.0);
    assertThat(active()).isZero();
    bench.engineRpm = 900.0;
    supply(14.0);
    run(1.0);
    assertThat(active()).isZero();
  }

  @Test
  @Tag("S12")
  void aLostSupplySensorIsReportedOnly() {
    bench.otherVolts[SUPPLY] = 0.0;
    run(0.1);
    assertThat(active()).isEqualTo(FaultCode.SUPPLY_SIGNAL.bit());
    assertThat(bench.outputs.state).isEqualTo(SafetyState.CONTROLLING);
  }

  @Test
  @Tag("P1")
  void anOpenPermitRestsInOneTick() {
    bench.inputs.permit = false;
    run(0.005);
    assertThat(active()).isEqualTo(FaultCode.PERMIT_OPEN.bit());
    assertThat(bench.outputs.dutyFraction).isZero();
    assertThat(bench.outputs.coilSupplyClosed).isFalse();
  }

  @Test
  @Tag("E1")
  void aHealthyCoilRaisesNothingAndAnOpenOneIsFoundWithinAHundredMilliseconds() {
    run(5.0);
    assertThat(active()).isZero();
    assertThat(bench.outputs.state).isEqualTo(SafetyState.CONTROLLING);
    bench.coilModelled = false;
    bench.inputs.coilEnergised = false;
    run(0.1);
    assertThat(active()).isEqualTo(FaultCode.COIL_FEEDBACK.bit());
    assertThat(bench.outputs.coilSupplyClosed).isFalse();
  }

  @Test
  @Tag("E1")
  void aDriverThatSticksOnWhileDrivenOpensTheCoilSupplyWithinAHundredMilliseconds() {
    run(5.0);
    bench.coilModelled = false;
    bench.inputs.coilEnergised = true;
    run(0.1);
    assertThat(active()).isEqualTo(FaultCode.COIL_FEEDBACK.bit());
    assertThat(bench.outputs.coilSupplyClosed).isFalse();
  }
}
