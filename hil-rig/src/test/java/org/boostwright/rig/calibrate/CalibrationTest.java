package org.boostwright.rig.calibrate;

import static org.assertj.core.api.Assertions.assertThat;

import java.util.List;
import org.boostwright.core.settings.Settings;
import org.boostwright.core.settings.file.SettingsEdit;
import org.boostwright.core.state.Permission;
import org.boostwright.rig.calibrate.Calibrated.Outcome;
import org.boostwright.rig.plant.Atmosphere;
import org.boostwright.rig.plant.PlantParams;
import org.boostwright.rig.plant.VirtualCar;
import org.boostwright.rig.scenario.CarRun;
import org.boostwright.rig.scenario.ProjectCarSettings;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;
import org.junit.jupiter.params.provider.ValueSource;

/**
 * Calibration of wrong settings against the virtual car, whose sensors are those of the project
 * car's file: what is found must be that file's values, and slips of the finger are caught.
 */
class CalibrationTest {
  private static final double AMBIENT_KPA = 101.325;

  private static Settings with(String key, String value) {
    return SettingsEdit.of("car.toml", ProjectCarSettings.text())
        .setText(key, value)
        .load()
        .orThrow();
  }

  private static CarRun run(Settings settings) {
    VirtualCar car = new VirtualCar(PlantParams.PROJECT_CAR, Atmosphere.at(0.0, 20.0), 1L);
    return new CarRun(settings, Permission.NONE, car);
  }

  private static List<double[]> pedalPushed(Settings settings, double fullPct, int times) {
    CarRun run = run(settings);
    run.run(1.0);
    for (int i = 0; i < times; i++) {
      run.car().setThrottlePct(fullPct);
      run.run(1.0);
      run.car().setThrottlePct(0.0);
      run.run(1.0);
    }
    return run.log().recordRows();
  }

  private static List<double[]> idling(Settings settings) {
    CarRun run = run(settings);
    run.startEngine();
    run.run(3.0);
    return run.log().recordRows();
  }

  @Test
  void closedAndFullThrottleAreFound() {
    Settings wrong = with("sensors.throttle.volts", "[0.58, 4.46]");
    Calibrated found = new Calibration(wrong, pedalPushed(wrong, 100.0, 2)).throttle();
    assertThat(found.outcome()).isEqualTo(Outcome.CHANGED);
    assertThat(found.key()).isEqualTo("sensors.throttle.volts");
    assertThat(found.values().get(0)).isBetween(0.49, 0.51);
    assertThat(found.values().get(1)).isBetween(4.49, 4.51);
    Settings right = ProjectCarSettings.load();
    assertThat(new Calibration(right, pedalPushed(right, 100.0, 2)).throttle().outcome())
        .isEqualTo(Outcome.RIGHT);
  }

  @Test
  void aPedalPushedOnceHalfwayOrNotAtAllIsRefused() {
    Settings right = ProjectCarSettings.load();
    assertThat(new Calibration(right, pedalPushed(right, 100.0, 1)).throttle().text())
        .contains("must agree twice");
    assertThat(new Calibration(right, pedalPushed(right, 15.0, 2)).throttle().text())
        .contains("moved only");
    assertThat(new Calibration(right, idling(right).subList(700, 900)).throttle().outcome())
        .isEqualTo(Outcome.REFUSED);
  }

  @ParameterizedTest
  @ValueSource(strings = {"0.5", "1", "3", "4"})
  void pulsesPerRevolutionAreFoundByTheTachometer(String declared) {
    Settings wrong = with("car.pulses_per_revolution", declared);
    Calibrated found = new Calibration(wrong, idling(wrong)).pulses(870.0);
    assertThat(found.outcome()).isEqualTo(Outcome.CHANGED);
    assertThat(found.values()).containsExactly(2.0);
  }

  @ParameterizedTest
  @CsvSource({"1700, 1.0", "3400, 0.5", "425, 4.0"})
  void everyNumberOfPulsesCanBeFound(double shownRpm, double pulses) {
    Settings right = ProjectCarSettings.load();
    assertThat(new Calibration(right, idling(right)).pulses(shownRpm).values())
        .containsExactly(pulses);
  }

  @Test
  void aTachometerReadWronglyIsRefused() {
    Settings right = ProjectCarSettings.load();
    List<double[]> idle = idling(right);
    assertThat(new Calibration(right, idle).pulses(850.0).outcome()).isEqualTo(Outcome.RIGHT);
    assertThat(new Calibration(right, idle).pulses(1150.0).outcome()).isEqualTo(Outcome.REFUSED);
    assertThat(new Calibration(right, pedalPushed(right, 100.0, 1)).pulses(850.0).text())
        .contains("no pulses");
  }

  @Test
  void aPressureSensorThatIsALittleOffIsMoved() {
    Settings wrong = with("sensors.map.pressure_kpa_abs", "[23.5, 303.5]");
    Calibrated found = new Calibration(wrong, pedalPushed(wrong, 100.0, 1)).ambient(AMBIENT_KPA);
    assertThat(found.outcome()).isEqualTo(Outcome.CHANGED);
    assertThat(found.values().get(0)).isBetween(19.7, 20.3);
    assertThat(found.values().get(1)).isBetween(299.7, 300.3);
    assertThat(new Calibration(wrong, pedalPushed(wrong, 100.0, 1)).gauge(0.0, AMBIENT_KPA))
        .extracting(Calibrated::outcome)
        .isEqualTo(Outcome.CHANGED);
  }

  @ParameterizedTest
  @CsvSource(
      delimiter = '|',
      value = {
        "0.0 | gauge and absolute",
        "1013 | millibar",
        "14.7 | psi",
        "29.9 | inches of mercury",
        "90.0 | reduced to sea level"
      })
  void slipsOfTheFingerAreCaught(double typed, String named) {
    Settings right = ProjectCarSettings.load();
    Calibrated found = new Calibration(right, pedalPushed(right, 100.0, 1)).ambient(typed);
    assertThat(found.outcome()).isEqualTo(Outcome.REFUSED);
    assertThat(found.text()).contains(named);
  }

  @Test
  void thermistorAndSupplyAreMovedALittleAndRefusedFarOff() {
    Settings right = ProjectCarSettings.load();
    Calibration calibration = new Calibration(right, pedalPushed(right, 100.0, 1));
    assertThat(calibration.air(20.0).outcome()).isEqualTo(Outcome.RIGHT);
    assertThat(calibration.air(25.0).outcome()).isEqualTo(Outcome.CHANGED);
    assertThat(calibration.air(68.0).text()).contains("Fahrenheit");
    assertThat(calibration.air(40.0).outcome()).isEqualTo(Outcome.REFUSED);
    double volts =
        Double.parseDouble(
            calibration.supply(30.0).text().replaceAll(".*reads ([0-9.]+) V.*", "$1"));
    assertThat(calibration.supply(volts).outcome()).isEqualTo(Outcome.RIGHT);
    assertThat(calibration.supply(volts + 0.5).outcome()).isEqualTo(Outcome.CHANGED);
    assertThat(calibration.supply(30.0).outcome()).isEqualTo(Outcome.REFUSED);
  }
}
