package org.boostwright.core.gate;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import org.boostwright.core.Outputs;
import org.boostwright.core.state.SafetyState;
import org.boostwright.core.table.Axis;
import org.boostwright.core.table.Curve;
import org.junit.jupiter.api.BeforeEach;
import org.junit.jupiter.api.Tag;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.EnumSource;
import org.junit.jupiter.params.provider.ValueSource;

/** The last statement before the output, from outputs that are all wrong beforehand. */
@Tag("U4")
class OutputGateTest {
  private static final Curve CEILING = new Curve(new Axis(1_000.0, 3_000.0), 0.2, 0.6);

  private final Outputs out = new Outputs();

  @BeforeEach
  void everythingIsOn() {
    out.dutyFraction = 0.99;
    out.pwmEnabled = true;
    out.coilSupplyClosed = true;
  }

  private void assertAtRest() {
    assertThat(out.dutyFraction).isEqualTo(0.0);
    assertThat(out.pwmEnabled).isFalse();
    assertThat(out.coilSupplyClosed).isFalse();
  }

  @ParameterizedTest
  @EnumSource(
      value = SafetyState.class,
      names = {"RESTING", "HELD_AT_SPRING", "LOCKED_UNTIL_RESTART"})
  void anyRestStateIsAtRestWhateverIsWanted(SafetyState state) {
    OutputGate gate = new OutputGate(CEILING, 1.0);
    for (double wanted : new double[] {0.0, 0.5, 1.0, Double.NaN, Double.POSITIVE_INFINITY}) {
      everythingIsOn();
      assertThat(gate.apply(state, wanted, 2_000.0, out)).isTrue();
      assertAtRest();
    }
  }

  @ParameterizedTest
  @EnumSource(
      value = SafetyState.class,
      names = {"READY", "CONTROLLING", "BENCH"})
  @Tag("S10")
  void aDutyThatIsNotANumberIsRestAndIsToldToTheCaller(SafetyState state) {
    OutputGate gate = new OutputGate(CEILING, 1.0);
    for (double wanted :
        new double[] {Double.NaN, Double.POSITIVE_INFINITY, Double.NEGATIVE_INFINITY}) {
      everythingIsOn();
      assertThat(gate.apply(state, wanted, 2_000.0, out)).isFalse();
      assertAtRest();
    }
  }

  @Test
  void readyHoldsTheSupplyClosedAtDutyZero() {
    OutputGate gate = new OutputGate(CEILING, 1.0);
    assertThat(gate.apply(SafetyState.READY, 0.5, 2_000.0, out)).isTrue();
    assertThat(out.dutyFraction).isEqualTo(0.0);
    assertThat(out.pwmEnabled).isTrue();
    assertThat(out.coilSupplyClosed).isTrue();
  }

  @Test
  void controllingPassesDutyUpToTheCeilingOfTheEngineSpeed() {
    OutputGate gate = new OutputGate(CEILING, 1.0);
    assertThat(gate.apply(SafetyState.CONTROLLING, 0.3, 2_000.0, out)).isTrue();
    assertThat(out.dutyFraction).isEqualTo(0.3);
    gate.apply(SafetyState.CONTROLLING, 0.39999, 2_000.0, out);
    assertThat(out.dutyFraction).isEqualTo(0.39999);
    gate.apply(SafetyState.CONTROLLING, 0.5, 2_000.0, out);
    assertThat(out.dutyFraction).isCloseTo(0.4, within(1e-12));
    gate.apply(SafetyState.CONTROLLING, 5.0, 9_000.0, out);
    assertThat(out.dutyFraction).isCloseTo(0.6, within(1e-12));
    assertThat(out.pwmEnabled).isTrue();
    assertThat(out.coilSupplyClosed).isTrue();
  }

  @Test
  void aNegativeDutyIsZeroAndNeverNegativeZero() {
    OutputGate gate = new OutputGate(CEILING, 1.0);
    for (double wanted : new double[] {-0.1, -0.0, 0.0, -1e300}) {
      gate.apply(SafetyState.CONTROLLING, wanted, 2_000.0, out);
      assertThat(Double.doubleToRawLongBits(out.dutyFraction)).isZero();
    }
  }

  @Test
  void thePermittedDutyIsACeilingToo() {
    OutputGate gate = new OutputGate(CEILING, 0.25);
    assertThat(gate.ceiling(1_000.0)).isEqualTo(0.2);
    assertThat(gate.ceiling(3_000.0)).isEqualTo(0.25);
    assertThat(new OutputGate(CEILING, 0.0).ceiling(3_000.0)).isZero();
    assertThat(new OutputGate(CEILING, Double.NaN).ceiling(3_000.0)).isZero();
  }

  @ParameterizedTest
  @ValueSource(doubles = {Double.NaN, -1.0, Double.NEGATIVE_INFINITY})
  void withoutAnEngineSpeedTheCeilingIsZero(double rpm) {
    assertThat(new OutputGate(CEILING, 1.0).ceiling(rpm)).isZero();
    assertThat(new OutputGate(CEILING, 1.0).ceiling(0.0)).isEqualTo(0.2);
  }

  @Test
  void aCurveOutsideZeroToOneNeverLeavesThatRange() {
    OutputGate wild = new OutputGate(new Curve(new Axis(0.0, 1.0, 2.0), -3.0, 7.0, 1.0), 9.0);
    assertThat(wild.ceiling(0.0)).isEqualTo(0.0);
    assertThat(wild.ceiling(1.0)).isEqualTo(1.0);
    wild.apply(SafetyState.CONTROLLING, 0.5, 0.0, out);
    assertThat(out.dutyFraction).isEqualTo(0.0);
    wild.apply(SafetyState.CONTROLLING, 3.0, 1.0, out);
    assertThat(out.dutyFraction).isEqualTo(1.0);
  }

  @Test
  void onTheBenchTheWholeRangeIsOpenWhateverTheEngineSpeed() {
    OutputGate gate = new OutputGate(CEILING, 0.0);
    gate.apply(SafetyState.BENCH, 0.9, Double.NaN, out);
    assertThat(out.dutyFraction).isEqualTo(0.9);
    gate.apply(SafetyState.BENCH, 1.1, 0.0, out);
    assertThat(out.dutyFraction).isEqualTo(1.0);
    gate.apply(SafetyState.BENCH, -0.1, 0.0, out);
    assertThat(out.dutyFraction).isEqualTo(0.0);
  }
}
