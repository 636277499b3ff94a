package org.boostwright.core.settings.file;

import java.util.stream.Stream;
import org.junit.jupiter.api.Tag;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.MethodSource;

/** C2: sensors that cannot be right refuse the whole file. */
@Tag("C2")
class RefusedSensorsTest {

  static Stream<Refusal> sensors() {
    return Stream.of(
        Refusal.of(
            "calibration_not_monotone",
            "volts            = [0.5, 4.5]\npressure_kpa_abs = [ 20, 300]",
            "volts = [0.5, 2.5, 2.5, 4.5]\npressure_kpa_abs = [ 20, 150, 160, 300]",
            "volts = [0.5, 2.5, 2.6, 4.5]\npressure_kpa_abs = [ 20, 150, 160, 300]",
            "2.5, 4.5",
            "sensors.map.volts, entry 3: 2.5 V after 2.5 V turns back"),
        Refusal.of(
            "calibration_not_monotone",
            "volts            = [0.5, 4.5]\npressure_kpa_abs = [ 20, 300]",
            "volts = [0.5, 2.5, 2.6, 4.5]\npressure_kpa_abs = [ 20, 170, 160, 300]",
            "volts = [0.5, 2.5, 2.6, 4.5]\npressure_kpa_abs = [ 20, 150, 160, 300]",
            "160, 300",
            "160 kPa absolute after 170 kPa absolute"),
        Refusal.of(
            "length_differs",
            "pressure_kpa_abs = [ 20, 300]",
            "pressure_kpa_abs = [ 20, 100, 300]",
            "pressure_kpa_abs = [ 21, 300]",
            "20, 100, 300",
            "has 3 entries and sensors.map.volts has 2"),
        Refusal.of(
            "calibration_short",
            "volts            = [0.5, 4.5]\npressure_kpa_abs = [ 20, 300]",
            "volts = [0.5]\npressure_kpa_abs = [20]",
            "volts = [0.5, 4.5]\npressure_kpa_abs = [20, 299]",
            "volts",
            "has 1 entries; a calibration needs two points or more"),
        Refusal.of(
            "calibration_missing",
            "pressure_kpa_abs = [ 20, 300]",
            "",
            "pressure_kpa_abs = [ 20, 299]",
            "[sensors.map]",
            "sensors.map.pressure: missing"),
        Refusal.of(
            "sensor_missing",
            "[sensors.throttle]\nvolts        = [0.5, 4.5]\nthrottle_pct",
            "[sensors.pedal]\nvolts = [0.5, 4.5]\npedal_pct",
            "[sensors.throttle]\nvolts = [0.5, 4.5]\nthrottle_pct",
            "",
            "[sensors.throttle] is missing"),
        Refusal.of(
            "sensor_span",
            "pressure_kpa_abs = [ 20, 300]",
            "pressure_kpa_abs = [ 61, 300]",
            "pressure_kpa_abs = [ 60, 300]",
            "pressure_kpa_abs",
            "cannot see ambient pressure"),
        Refusal.of(
            "sensor_span",
            "throttle_pct = [  0, 100]",
            "throttle_pct = [  0, 89]",
            "throttle_pct = [  0, 90]",
            "throttle_pct",
            "runs from 0 % to 89 %"),
        Refusal.of(
            "valid_range",
            "valid_volts      = [0.2, 4.8]",
            "valid_volts = [0.6, 4.8]",
            "valid_volts = [0.5, 4.8]",
            "valid_volts",
            "the valid range 0.6 to 4.8 V cuts off part of the calibration, 0.5 to 4.5 V"),
        Refusal.of(
            "valid_range",
            "valid_volts      = [0.2, 4.8]",
            "valid_volts = [0.05, 4.8]",
            "valid_volts = [0.1, 4.9]",
            "valid_volts",
            "more than a tenth of the span outside the calibration"),
        Refusal.of(
            "valid_range",
            "volts        = [0.2, 4.8]\nsupply_volts = [  1,  24]\nvalid_volts  = [0.1, 4.9]",
            "volts = [0.2, 4.8]\nsupply_volts = [1, 24]\nvalid_volts  = [0.04, 4.9]",
            "volts = [0.2, 4.8]\nsupply_volts = [1, 24]\nvalid_volts  = [0.05, 4.95]",
            "valid_volts  =",
            "leaves no room to see a short"),
        Refusal.of(
            "valid_range",
            "valid_volts      = [0.2, 4.8]",
            "valid_volts = [4.8, 0.2]",
            "valid_volts = [0.3, 4.7]",
            "valid_volts",
            "write the lowest and the highest good voltage"),
        Refusal.of(
            "life_in_noise",
            "noise_kpa        = 0.3",
            "noise_kpa = 3",
            "noise_kpa = 2.9",
            "life_change_kpa",
            "15 kPa is not above five times the declared noise, 3 kPa"),
        Refusal.of(
            "choice_unknown",
            "location         = \"intake_manifold\"",
            "location = \"intake_manifolt\"",
            "location = \"before_throttle\"",
            "location",
            "did you mean \"intake_manifold\"?"));
  }

  @ParameterizedTest
  @MethodSource("sensors")
  void badValueIsRefusedWithItsPlaceAndTheNearestGoodOneLoads(Refusal refusal) {
    refusal.check();
  }
}
