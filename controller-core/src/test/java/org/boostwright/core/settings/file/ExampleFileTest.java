package org.boostwright.core.settings.file;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import org.boostwright.core.AnalogChannel;
import org.boostwright.core.settings.AnalogSensor;
import org.boostwright.core.settings.Settings;
import org.boostwright.core.table.Curve;
import org.junit.jupiter.api.Test;

/** The documented project car, and a file that names only the sensors. */
class ExampleFileTest {
  private final Settings car = Example.settings();
  private final Settings small = Example.parse(Example.SENSORS_ONLY).orThrow();

  @Test
  void exampleLoadsWithoutARemark() {
    assertThat(SettingsFile.load(Example.path()).problems()).isEmpty();
  }

  @Test
  void gearsFollowFromRatiosFinalDriveAndWheel() {
    double[] ratios = {3.14, 1.89, 1.33, 1.00, 0.81};
    assertThat(car.car().gears()).isEqualTo(ratios.length);
    for (int i = 0; i < ratios.length; i++) {
      // Wheel turns per km over 60 minutes an hour; final drive 4.1, wheel radius 0.30 m.
      double expected = ratios[i] * 4.1 * 1000.0 / (2.0 * Math.PI * 0.30) / 60.0;
      assertThat(car.car().gearRpmPerKmh(i)).isCloseTo(expected, within(0.005));
    }
  }

  /** B equation 1/T = 1/T25 + ln(R/R25)/B; 2.2 kohm to 5 V, R25 2.057 kohm, B 3500 K. */
  @Test
  void intakeAirCurveIsThatOfItsThermistor() {
    AnalogSensor sensor = car.sensors().channel(AnalogChannel.INTAKE_AIR);
    assertThat(sensor).isNotNull();
    Curve curve = sensor.calibration();
    for (int i = 0; i < curve.axis().size(); i++) {
      double volts = curve.axis().point(i);
      double ohms = 2200.0 * volts / (5.0 - volts);
      double kelvin = 1.0 / (1.0 / 298.15 + Math.log(ohms / 2057.0) / 3500.0);
      assertThat(curve.value(i)).isCloseTo(kelvin - 273.15, within(0.1));
    }
  }

  @Test
  void windowFollowsFromSpoolDelaysAndFrequency() {
    assertThat(car.valve().windowLowDuty()).isCloseTo(3.5e-3 * 30.0, within(1e-12));
    assertThat(car.valve().windowHighDuty()).isCloseTo(1.0 - 7.5e-3 * 30.0, within(1e-12));
  }

  @Test
  void sensorNoiseInVoltsFollowsFromItsSlope() {
    AnalogSensor map = car.sensors().channel(AnalogChannel.MAP);
    assertThat(map).isNotNull();
    assertThat(map.noiseVolts()).isCloseTo(0.3 * 4.0 / 280.0, within(1e-12));
    assertThat(map.frozenIsWatched()).isTrue();
  }

  @Test
  void fileThatNamesOnlyTheSensorsRunsAtSpringPressure() {
    assertThat(small.baseDuty().values()).containsOnly(0.0);
    assertThat(small.limits().dutyCeiling().values()).containsOnly(0.0);
    assertThat(small.feedback().enabled()).isFalse();
    assertThat(small.spool().enabled()).isFalse();
    assertThat(small.limits().engineCut()).isFalse();
    assertThat(small.limits().trimCapDuty()).isEqualTo(0.10);
    assertThat(small.limits().pressureRatioMax()).isEqualTo(2.5);
    assertThat(small.limits().cutoffKpaAbs()).isEqualTo(180.0);
    assertThat(small.limits().gearTargets()).isZero();
    assertThat(small.optional().keyInput()).isFalse();
    assertThat(small.pins()).isNull();
    assertThat(small.demand()).isEqualTo(AnalogChannel.THROTTLE);
  }

  @Test
  void defaultLimitStaysBelowWhatTheSensorCanSee() {
    String text = Example.SENSORS_ONLY.replace("[20, 300]", "[15, 115]");
    // Top 115, span 100: 115 - 10 = 105 kPa.
    assertThat(Example.parse(text).orThrow().limits().cutoffKpaAbs()).isEqualTo(105.0);
  }

  @Test
  void defaultValidRangeLeavesRoomForShortsAndKeepsTheCalibration() {
    AnalogSensor map = small.sensors().channel(AnalogChannel.MAP);
    assertThat(map).isNotNull();
    assertThat(map.validLowVolts()).isCloseTo(0.2, within(1e-12));
    assertThat(map.validHighVolts()).isCloseTo(4.8, within(1e-12));
    AnalogSensor wide =
        Example.parse(Example.SENSORS_ONLY.replaceFirst("\\[0.5, 4.5\\]", "[0.1, 4.9]"))
            .orThrow()
            .sensors()
            .channel(AnalogChannel.MAP);
    assertThat(wide).isNotNull();
    assertThat(wide.validLowVolts()).isEqualTo(0.05);
    assertThat(wide.validHighVolts()).isEqualTo(4.95);
  }

  @Test
  void pedalRowsAreReadWithThePedal() {
    String text =
        Example.full()
                .replace(
                    "throttle_pct = [30, 50, 70, 85, 100]", "pedal_pct = [30, 50, 70, 85, 100]")
            + "\n[sensors.pedal]\nvolts = [0.5, 4.5]\npedal_pct = [0, 100]\n";
    assertThat(Example.parse(text).orThrow().demand()).isEqualTo(AnalogChannel.PEDAL);
    String without = text.substring(0, text.indexOf("\n[sensors.pedal]"));
    assertThat(Example.parse(without).problems())
        .anyMatch(p -> p.code().equals("pedal_missing") && p.severity() == Severity.ERROR);
  }
}
