package org.boostwright.rig.replay;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import org.boostwright.core.settings.AnalogSensor;
import org.boostwright.core.table.Axis;
import org.boostwright.core.table.Curve;
import org.junit.jupiter.api.Test;

/** A calibration read backwards gives the value again when read forwards. */
class InverseCalibrationTest {

  private static AnalogSensor sensor(Curve curve) {
    return new AnalogSensor(curve, 0.2, 4.8, 187.5e-6, 0.0, 5.0, Double.POSITIVE_INFINITY);
  }

  @Test
  void risingAndFallingCurvesComeBackToTheValue() {
    Curve rising = new Curve(new Axis(0.5, 2.0, 4.5), 20.0, 60.0, 300.0);
    Curve falling = new Curve(new Axis(0.3, 1.0, 2.5, 4.7), 150.0, 90.0, 35.0, -40.0);
    for (Curve curve : new Curve[] {rising, falling}) {
      InverseCalibration inverse = new InverseCalibration(sensor(curve));
      for (double value = -40.0; value <= 300.0; value += 0.37) {
        if (inverse.covers(value)) {
          assertThat(curve.at(inverse.volts(value))).isCloseTo(value, within(1e-9));
        }
      }
    }
  }

  @Test
  void valuesBeyondTheCurveGiveItsEndsAndAreNotCovered() {
    InverseCalibration inverse =
        new InverseCalibration(sensor(new Curve(new Axis(0.3, 4.7), 150.0, -40.0)));
    assertThat(inverse.volts(200.0)).isEqualTo(0.3);
    assertThat(inverse.volts(-60.0)).isEqualTo(4.7);
    assertThat(inverse.covers(150.0)).isTrue();
    assertThat(inverse.covers(150.1)).isFalse();
    assertThat(inverse.covers(Double.NaN)).isFalse();
  }

  @Test
  void voltsNeverLeaveTheValidRange() {
    InverseCalibration inverse =
        new InverseCalibration(sensor(new Curve(new Axis(0.0, 5.0), 0.0, 100.0)));
    assertThat(inverse.volts(0.0)).isEqualTo(0.2);
    assertThat(inverse.volts(100.0)).isEqualTo(4.8);
  }

  @Test
  void aStepIsWorthTheVoltsOfTheSteepestPart() {
    InverseCalibration inverse =
        new InverseCalibration(sensor(new Curve(new Axis(0.5, 1.5, 4.5), 0.0, 10.0, 310.0)));
    assertThat(inverse.voltsPerStep(2.0)).isCloseTo(0.2, within(1e-12));
  }
}
