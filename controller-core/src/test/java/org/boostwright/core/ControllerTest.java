package org.boostwright.core;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import org.boostwright.core.monitor.FaultCode;
import org.boostwright.core.settings.OptionalWires;
import org.boostwright.core.state.Permission;
import org.boostwright.core.state.SafetyState;
import org.boostwright.core.state.Waiting;
import org.junit.jupiter.api.Test;

/** The whole tick as a story on hand-made signals, in stepped time. */
class ControllerTest {

  private static void assertAtRest(Outputs out) {
    assertThat(out.dutyFraction).isZero();
    assertThat(out.pwmEnabled).isFalse();
    assertThat(out.coilSupplyClosed).isFalse();
  }

  @Test
  void newOutputsAndFirstTickAreAtRest() {
    ControllerBench bench = new ControllerBench(TestSettings.car());
    assertAtRest(bench.outputs);
    bench.tick();
    assertAtRest(bench.outputs);
    assertThat(bench.outputs.state).isEqualTo(SafetyState.RESTING);
    assertThat(bench.outputs.waiting).isEqualTo(Waiting.ENGINE);
  }

  @Test
  void startsRestingBecomesReadyAtIdleVacuumAndControlsUnderThrottle() {
    ControllerBench bench = new ControllerBench(TestSettings.car());
    bench.run(3.0);
    assertThat(bench.outputs.state).isEqualTo(SafetyState.RESTING);
    bench.engineRpm = 900.0;
    bench.run(0.5);
    assertThat(bench.outputs.waiting).isEqualTo(Waiting.SENSOR_LIFE);
    assertAtRest(bench.outputs);
    bench.throttlePct = 8.0;
    bench.mapKpaAbs = 40.0;
    bench.run(0.5);
    assertThat(bench.outputs.state).isEqualTo(SafetyState.READY);
    assertThat(bench.outputs.dutyFraction).isZero();
    assertThat(bench.outputs.waiting).isEqualTo(Waiting.DEMAND);
    bench.engineRpm = 4000.0;
    bench.throttlePct = 100.0;
    bench.mapKpaAbs = 170.0;
    bench.run(1.0);
    assertThat(bench.outputs.activeFaults).isZero();
    assertThat(bench.outputs.state).isEqualTo(SafetyState.CONTROLLING);
    assertThat(bench.outputs.dutyFraction).isBetween(0.4, 0.5);
    assertThat(bench.outputs.coilSupplyClosed).isTrue();
    assertThat(bench.outputs.pwmEnabled).isTrue();
    bench.throttlePct = 0.0;
    bench.mapKpaAbs = 45.0;
    bench.run(0.1);
    assertThat(bench.outputs.state).isEqualTo(SafetyState.READY);
    assertThat(bench.outputs.dutyFraction).isZero();
  }

  @Test
  void ambientIsMeasuredOnlyWithTheEngineKnownToBeStopped() {
    ControllerBench bench = new ControllerBench(TestSettings.car());
    bench.mapKpaAbs = 84.5;
    bench.run(1.9);
    assertThat(bench.outputs.ambientKpaAbs).isEqualTo(100.0);
    bench.run(0.3);
    assertThat(bench.outputs.ambientKpaAbs).isCloseTo(84.5, within(0.3));
    bench.engineRpm = 900.0;
    bench.mapKpaAbs = 70.0;
    bench.run(5.0);
    assertThat(bench.outputs.ambientKpaAbs).isCloseTo(84.5, within(0.3));
  }

  @Test
  void aSensorThatShowsNoLifeNeverBecomesReady() {
    ControllerBench bench = new ControllerBench(TestSettings.car());
    bench.run(3.0);
    bench.engineRpm = 900.0;
    bench.run(3.0);
    bench.engineRpm = 4000.0;
    bench.throttlePct = 100.0;
    for (int i = 0; i < 2000; i++) {
      bench.tick();
      assertAtRest(bench.outputs);
    }
    assertThat(bench.outputs.waiting).isEqualTo(Waiting.SENSOR_LIFE);
  }

  @Test
  void withoutProofNothingMovesTheValve() {
    ControllerBench bench = new ControllerBench(TestSettings.car(), Permission.NONE);
    bench.driveTo(170.0);
    assertAtRest(bench.outputs);
    assertThat(bench.outputs.waiting).isEqualTo(Waiting.PROOF);
  }

  @Test
  void aPermissionCapsDutyInEveryTick() {
    ControllerBench bench =
        new ControllerBench(TestSettings.car(), new Permission(true, 0.25, false));
    bench.driveTo(150.0);
    assertThat(bench.outputs.state).isEqualTo(SafetyState.CONTROLLING);
    assertThat(bench.outputs.dutyFraction).isEqualTo(0.25);
  }

  @Test
  void benchDutyPassesOnlyWithTheEngineKnownToBeStopped() {
    ControllerBench bench = new ControllerBench(TestSettings.car(), Permission.NONE);
    bench.inputs.benchRequest = true;
    bench.inputs.benchDutyFraction = 0.6;
    bench.run(1.0);
    assertAtRest(bench.outputs);
    bench.run(2.0);
    assertThat(bench.outputs.state).isEqualTo(SafetyState.BENCH);
    assertThat(bench.outputs.dutyFraction).isEqualTo(0.6);
    bench.engineRpm = 900.0;
    bench.run(0.1);
    assertAtRest(bench.outputs);
  }

  @Test
  void benchDutyThatIsNotANumberLocksAtRest() {
    ControllerBench bench = new ControllerBench(TestSettings.car());
    bench.inputs.benchRequest = true;
    bench.run(3.0);
    bench.inputs.benchDutyFraction = Double.NaN;
    bench.tick();
    assertAtRest(bench.outputs);
    assertThat(bench.outputs.state).isEqualTo(SafetyState.LOCKED_UNTIL_RESTART);
    assertThat(bench.outputs.activeFaults & FaultCode.INTERNAL.bit()).isNotZero();
  }

  @Test
  void permitOpenRestsInTheSameTickAndClearsOnlyAfterTheThrottleIsReleased() {
    ControllerBench bench =
        new ControllerBench(
            TestSettings.car(new OptionalWires(false, true, false, false, false), true));
    bench.driveTo(170.0);
    assertThat(bench.outputs.state).isEqualTo(SafetyState.CONTROLLING);
    bench.inputs.permit = false;
    bench.tick();
    assertAtRest(bench.outputs);
    assertThat(bench.outputs.state).isEqualTo(SafetyState.HELD_AT_SPRING);
    bench.inputs.permit = true;
    bench.run(5.0);
    assertThat(bench.outputs.state).isEqualTo(SafetyState.HELD_AT_SPRING);
    bench.throttlePct = 5.0;
    bench.mapKpaAbs = 40.0;
    bench.run(1.9);
    assertThat(bench.outputs.state).isEqualTo(SafetyState.HELD_AT_SPRING);
    bench.run(0.3);
    assertThat(bench.outputs.state).isEqualTo(SafetyState.READY);
  }

  @Test
  void springOnlySwitchAndKeyRest() {
    ControllerBench bench =
        new ControllerBench(
            TestSettings.car(new OptionalWires(true, false, false, false, true), true));
    bench.driveTo(170.0);
    assertThat(bench.outputs.state).isEqualTo(SafetyState.CONTROLLING);
    bench.inputs.coilFeed = false;
    bench.tick();
    assertAtRest(bench.outputs);
    assertThat(bench.outputs.waiting).isEqualTo(Waiting.SPRING_ONLY_SWITCH);
    bench.inputs.coilFeed = true;
    bench.run(0.1);
    assertThat(bench.outputs.state).isEqualTo(SafetyState.CONTROLLING);
    bench.inputs.keyOn = false;
    bench.tick();
    assertAtRest(bench.outputs);
    assertThat(bench.outputs.waiting).isEqualTo(Waiting.KEY);
  }

  @Test
  void coilSeenEnergisedWhileCommandedOffLocks() {
    ControllerBench bench =
        new ControllerBench(
            TestSettings.car(new OptionalWires(true, false, false, true, false), true));
    bench.run(1.0);
    bench.inputs.coilEnergised = true;
    bench.run(0.015);
    assertThat(bench.outputs.state).isEqualTo(SafetyState.LOCKED_UNTIL_RESTART);
    bench.inputs.coilEnergised = false;
    bench.run(3.0);
    assertThat(bench.outputs.state).isEqualTo(SafetyState.LOCKED_UNTIL_RESTART);
    bench.inputs.keyOn = false;
    bench.run(0.1);
    bench.inputs.keyOn = true;
    bench.run(0.1);
    assertThat(bench.outputs.state).isEqualTo(SafetyState.RESTING);
  }

  @Test
  void threeLateTicksInARowRestAndTwoDoNot() {
    ControllerBench bench = new ControllerBench(TestSettings.car());
    bench.driveTo(170.0);
    for (int i = 0; i < 2; i++) {
      bench.nowNanos += 5_000_000L;
      bench.tick();
    }
    assertThat(bench.outputs.state).isEqualTo(SafetyState.CONTROLLING);
    bench.tick();
    for (int i = 0; i < 3; i++) {
      bench.nowNanos += 5_000_000L;
      bench.tick();
    }
    assertAtRest(bench.outputs);
    assertThat(bench.outputs.activeFaults & FaultCode.TICK_LATE.bit()).isNotZero();
    assertThat(bench.outputs.lateTicks).isEqualTo(5);
  }

  @Test
  void aClockThatRollsOverChangesNothing() {
    ControllerBench plain = new ControllerBench(TestSettings.car());
    ControllerBench rolling = new ControllerBench(TestSettings.car());
    rolling.nowNanos = Long.MAX_VALUE - 4_500_000_000L;
    plain.driveTo(170.0);
    rolling.driveTo(170.0);
    assertThat(rolling.nowNanos).isNegative();
    assertThat(rolling.outputs.state).isEqualTo(SafetyState.CONTROLLING);
    assertThat(rolling.outputs.dutyFraction).isEqualTo(plain.outputs.dutyFraction);
  }

  @Test
  void anExceptionInsideATickRestsFirstAndLocks() {
    ControllerBench bench = new ControllerBench(TestSettings.car());
    bench.driveTo(170.0);
    assertThat(bench.outputs.dutyFraction).isPositive();
    bench.controller.step(bench.nowNanos + 5_000_000L, null, bench.outputs);
    assertAtRest(bench.outputs);
    assertThat(bench.outputs.state).isEqualTo(SafetyState.LOCKED_UNTIL_RESTART);
    assertThat(bench.outputs.heartbeatPermitted).isFalse();
    assertThat(bench.controller.crash()).contains("NullPointerException");
    bench.nowNanos += 5_000_000L;
    bench.tick();
    assertAtRest(bench.outputs);
    assertThat(bench.outputs.activeFaults & FaultCode.INTERNAL.bit()).isNotZero();
  }

  @Test
  void highIntakeAirAndPressureRatioLowerTheTarget() {
    TestCar car = new TestCar();
    car.assumedAmbientKpaAbs = 70.0; // home is up there
    ControllerBench bench = new ControllerBench(car.build());
    bench.mapKpaAbs = 70.0;
    bench.run(3.0);
    bench.engineRpm = 900.0;
    bench.mapKpaAbs = 40.0;
    bench.run(1.0);
    bench.engineRpm = 4000.0;
    bench.throttlePct = 100.0;
    bench.mapKpaAbs = 150.0;
    bench.run(1.0);
    // 2.5 times 70 kPa ambient, less the climb allowed for since the engine was seen stopped.
    assertThat(bench.outputs.targetKpaAbs).isBetween(174.5, 175.0);
    assertThat(bench.outputs.findings & FaultCode.TARGET_LIMITED.bit()).isNotZero();
  }
}
