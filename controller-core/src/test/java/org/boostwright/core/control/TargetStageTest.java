package org.boostwright.core.control;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import org.boostwright.core.TestCar;
import org.boostwright.core.settings.OptionalWires;
import org.boostwright.core.table.Axis;
import org.boostwright.core.table.Curve;
import org.junit.jupiter.api.Tag;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;

/** Everything that may lower the target of 180 kPa, one at a time and together. */
class TargetStageTest {
  private final TestCar car = new TestCar();

  private TargetStage stage() {
    return new TargetStage(car.build());
  }

  private static double target(
      TargetStage stage, int gear, double ambient, double floor, double airC, boolean high) {
    stage.update(100.0, 4_000.0, gear, ambient, floor, 1.0, airC, high);
    return stage.targetKpaAbs();
  }

  @Test
  void withNothingInTheWayItIsTheTable() {
    TargetStage stage = stage();
    assertThat(stage.targetKpaAbs()).isNaN();
    assertThat(target(stage, 0, 100.0, 100.0, 20.0, true)).isEqualTo(180.0);
    assertThat(stage.limited()).isFalse();
    assertThat(stage.outside()).isZero();
  }

  @ParameterizedTest
  @CsvSource({"20, 180", "50, 180", "55, 170", "60, 160", "74.99, 140.01", "75, 100", "90, 100"})
  void intakeAirTakesBoostAboveAmbientAwayAndThenAll(double airC, double expected) {
    // 100 % at 50, 75 % at 60, 50 % at 75 degC; spring only from 75 degC.
    car.targetFactorOverIntakeC = new Curve(new Axis(50.0, 60.0, 75.0), 1.0, 0.75, 0.5);
    assertThat(target(stage(), 0, 100.0, 100.0, airC, true)).isCloseTo(expected, within(0.01));
  }

  @Test
  @Tag("S10")
  void anIntakeAirTemperatureThatIsNoNumberIsSpringOnly() {
    assertThat(target(stage(), 0, 100.0, 100.0, Double.NaN, true)).isEqualTo(100.0);
  }

  @Test
  void everyGearHasItsLimitAndAnUnknownOneTheLowest() {
    car.gearTargetKpaAbs = new double[] {160.0, 150.0, 178.0};
    TargetStage stage = stage();
    assertThat(target(stage, 1, 100.0, 100.0, 20.0, true)).isEqualTo(160.0);
    assertThat(target(stage, 2, 100.0, 100.0, 20.0, true)).isEqualTo(150.0);
    assertThat(target(stage, 3, 100.0, 100.0, 20.0, true)).isEqualTo(178.0);
    assertThat(target(stage, 0, 100.0, 100.0, 20.0, true)).isEqualTo(150.0);
    assertThat(target(stage, 4, 100.0, 100.0, 20.0, true)).as("no such gear").isEqualTo(150.0);
    assertThat(target(stage, -1, 100.0, 100.0, 20.0, true)).isEqualTo(150.0);
  }

  @Test
  void theSelectorCapsTheTargetOnlyWhereItIsWired() {
    car.lowBoostKpaAbs = 150.0;
    assertThat(target(stage(), 0, 100.0, 100.0, 20.0, false)).isEqualTo(180.0);
    car.wires = new OptionalWires(false, false, true, false, false);
    assertThat(target(stage(), 0, 100.0, 100.0, 20.0, false)).isEqualTo(150.0);
    assertThat(target(stage(), 0, 100.0, 100.0, 20.0, true)).isEqualTo(180.0);
  }

  @Test
  void theGuestSettingCapsTheTargetWithoutASelectorToo() {
    car.lowBoostKpaAbs = 150.0;
    car.guest = true;
    assertThat(target(stage(), 0, 100.0, 100.0, 20.0, false)).isEqualTo(150.0);
    assertThat(target(stage(), 0, 100.0, 100.0, 20.0, true)).isEqualTo(180.0);
  }

  @Test
  @Tag("P7")
  void thePressureRatioOverTheLowestPossibleAmbientCapsTheTarget() {
    TargetStage stage = stage();
    assertThat(target(stage, 0, 80.0, 70.0, 20.0, true)).isCloseTo(175.0, within(1e-9));
    assertThat(stage.limited()).isTrue();
    assertThat(target(stage, 0, 72.0, 72.0, 20.0, true)).isEqualTo(180.0);
  }

  @Test
  @Tag("S5")
  void aSensorThatMayReadLowLeavesAShareOfEveryCapButThePressureRatio() {
    car.gearTargetKpaAbs = new double[] {160.0};
    TargetStage stage = stage();
    stage.update(100.0, 4_000.0, 1, 80.0, 80.0, 0.75, 20.0, true);
    assertThat(stage.targetKpaAbs()).isEqualTo(120.0);
    assertThat(stage.limited()).isTrue();
    // 2.5 times the floor is below three quarters of 160.
    stage.update(100.0, 4_000.0, 1, 80.0, 44.0, 0.75, 20.0, true);
    assertThat(stage.targetKpaAbs()).isCloseTo(110.0, within(1e-9));
  }

  @Test
  void theLowestOfAllCapsWins() {
    car.gearTargetKpaAbs = new double[] {165.0};
    car.lowBoostKpaAbs = 160.0;
    car.wires = new OptionalWires(false, false, true, false, false);
    TargetStage stage = stage();
    assertThat(target(stage, 1, 100.0, 100.0, 20.0, true)).isEqualTo(165.0);
    assertThat(target(stage, 1, 100.0, 100.0, 20.0, false)).isEqualTo(160.0);
    assertThat(target(stage, 1, 100.0, 60.0, 20.0, false)).isEqualTo(150.0);
  }

  @Test
  void loweringByMoreThanHalfAKilopascalIsShown() {
    car.gearTargetKpaAbs = new double[] {179.6, 179.4};
    TargetStage stage = stage();
    target(stage, 1, 100.0, 100.0, 20.0, true);
    assertThat(stage.limited()).isFalse();
    target(stage, 2, 100.0, 100.0, 20.0, true);
    assertThat(stage.limited()).isTrue();
  }

  @Test
  @Tag("S10")
  void anUnknownAmbientGivesNoTarget() {
    TargetStage stage = stage();
    assertThat(target(stage, 0, Double.NaN, Double.NaN, 20.0, true)).isNaN();
    assertThat(stage.limited()).isTrue();
  }
}
