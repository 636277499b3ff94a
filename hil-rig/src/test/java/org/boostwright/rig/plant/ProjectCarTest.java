package org.boostwright.rig.plant;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import org.boostwright.core.table.Curve;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;

/**
 * Transfer functions of the project car's sensors; numbers worked out by hand from their
 * definition.
 */
class ProjectCarTest {
  @ParameterizedTest
  @CsvSource({"20, 0.5", "300, 4.5", "160, 2.5", "101.325, 1.66178571"})
  void pressureSensorIsLinear(double kpaAbs, double volts) {
    assertThat(ProjectCar.mapVolts(kpaAbs)).isCloseTo(volts, within(1e-6));
    assertThat(ProjectCar.mapCurve().at(volts)).isCloseTo(kpaAbs, within(1e-6));
  }

  @ParameterizedTest
  @CsvSource({"0, 0.5", "100, 4.5", "15, 1.1"})
  void throttleSensorIsLinear(double pct, double volts) {
    assertThat(ProjectCar.throttleVolts(pct)).isCloseTo(volts, within(1e-9));
    assertThat(ProjectCar.throttleCurve().at(volts)).isCloseTo(pct, within(1e-9));
  }

  /** 2057 ohm at 25 degC: 5 V*2057/(2057 + 2200) = 2.41602 V. */
  @Test
  void thermistorUnderItsPullUp() {
    assertThat(ProjectCar.thermistorOhms(25.0)).isCloseTo(2057.0, within(1e-9));
    assertThat(ProjectCar.temperatureVolts(25.0)).isCloseTo(2.41602, within(1e-5));
    // exp(3500*(1/373.15 - 1/298.15)) = 0.094472
    assertThat(ProjectCar.thermistorOhms(100.0)).isCloseTo(2057.0 * 0.094472, within(0.05));
  }

  @Test
  void temperatureCurveGoesThroughItsPointsAndIsCloseBetweenThem() {
    Curve curve = ProjectCar.temperatureCurve();
    assertThat(curve.axis().size()).isEqualTo(8);
    for (double c = -20.0; c <= 120.0; c += 20.0) {
      assertThat(curve.at(ProjectCar.temperatureVolts(c))).isCloseTo(c, within(1e-9));
    }
    for (double c = -15.0; c <= 115.0; c += 5.0) {
      assertThat(curve.at(ProjectCar.temperatureVolts(c))).isCloseTo(c, within(1.6));
    }
  }

  @Test
  void supplyDividerByFive() {
    assertThat(ProjectCar.supplyVolts(14.0)).isCloseTo(2.8, within(1e-12));
    assertThat(ProjectCar.supplyCurve().at(2.8)).isCloseTo(14.0, within(1e-9));
  }
}
