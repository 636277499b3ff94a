package org.boostwright.core;

import static org.assertj.core.api.Assertions.assertThat;

import org.boostwright.core.monitor.FaultCode;
import org.boostwright.core.settings.OptionalWires;
import org.boostwright.core.state.SafetyState;
import org.junit.jupiter.api.Tag;
import org.junit.jupiter.api.Test;

/** What the runtime reads back of its own outputs reaches the state. */
@Tag("E1")
@Tag("E3")
class OutputsReadBackTest {
  private final ControllerBench bench =
      new ControllerBench(
          TestSettings.car(new OptionalWires(true, false, false, false, false), true));

  @Test
  void outputsThatReadBackWrongThreeTimesLockUntilTheKeyHasBeenOff() {
    bench.driveTo(170.0);
    assertThat(bench.outputs.state).isEqualTo(SafetyState.CONTROLLING);
    bench.inputs.outputsWrong = true;
    bench.run(0.015);
    assertThat(bench.outputs.state).isEqualTo(SafetyState.LOCKED_UNTIL_RESTART);
    assertThat(bench.outputs.activeFaults).isEqualTo(FaultCode.OUTPUTS_WRONG.bit());
    assertThat(bench.outputs.dutyFraction).isZero();
    bench.inputs.outputsWrong = false;
    bench.run(5.0);
    assertThat(bench.outputs.state).isEqualTo(SafetyState.LOCKED_UNTIL_RESTART);
    bench.inputs.keyOn = false;
    bench.run(0.1);
    assertThat(bench.outputs.activeFaults).isZero();
  }

  @Test
  void oneWrongReadingInAWhileRaisesNothing() {
    bench.driveTo(170.0);
    for (int i = 0; i < 20; i++) {
      bench.inputs.outputsWrong = true;
      bench.tick();
      bench.inputs.outputsWrong = false;
      bench.run(0.1);
    }
    assertThat(bench.outputs.state).isEqualTo(SafetyState.CONTROLLING);
  }
}
