package org.boostwright.core.settings.file;

import java.util.stream.Stream;
import org.junit.jupiter.api.Tag;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.MethodSource;

/** C2: a valve, actuator or car that cannot be right refuses the whole file. */
@Tag("C2")
class RefusedHardwareTest {

  static Stream<Refusal> valveAndActuator() {
    return Stream.of(
        Refusal.of(
            "valve_sense",
            "energised       = \"vents_actuator\"",
            "energised = \"feeds_actuator\"",
            "energised = \"vents_actuator\"",
            "energised",
            "with the coil dead the actuator must see boost"),
        Refusal.of(
            "layout_refused",
            "\"single_port\"   #",
            "\"dual_port\"     #",
            "\"single_port\" #",
            "layout",
            "\"dual_port\" is not supported: with pressure on both sides"),
        Refusal.of(
            "layout_refused",
            "\"single_port\"   #",
            "\"triple\"     #",
            "\"single_port\" #",
            "layout",
            "write \"single_port\", or \"external_gate\""),
        Refusal.of(
            "spring_order",
            "spring_full_lift_kpa_gauge = 110",
            "spring_full_lift_kpa_gauge = 60",
            "spring_full_lift_kpa_gauge = 60.1",
            "spring_full_lift_kpa_gauge",
            "full lift at 60 kPa gauge is not above"),
        Refusal.of(
            "window_order",
            "window_low_pct  = 10.5           # below this duty the valve never vents  (t_on  3.5 ms)"
                + "\nwindow_high_pct = 77.5",
            "window_low_pct = 10.5\nwindow_high_pct = 15.4",
            "window_low_pct = 10.5\nwindow_high_pct = 77.5",
            "window_high_pct",
            "from 10.5 % to 15.4 %"),
        Refusal.of(
            "out_of_range",
            "frequency_hz    = 30",
            "frequency_hz = 9.9",
            "frequency_hz = 10",
            "frequency_hz",
            "9.9 Hz is below the lowest accepted, 10 Hz"),
        Refusal.of(
            "out_of_range",
            "frequency_hz    = 30",
            "frequency_hz = 101",
            "frequency_hz = 100",
            "frequency_hz",
            "101 Hz is above the highest accepted, 100 Hz"),
        Refusal.of(
            "command_range",
            "command_duty_pct = [10.5,  77.5]",
            "command_duty_pct = [10.5,  77]",
            "command_duty_pct = [10.5,  77.5]",
            "command_duty_pct",
            "the ends must be the same"),
        Refusal.of(
            "command_range",
            "command_pct      = [   0,   100]",
            "command_pct      = [   0,    99]",
            "command_pct      = [   0,   100]",
            "command_pct",
            "begin at 0 and end at 100"),
        Refusal.of(
            "axis_missing",
            "command_pct      = [   0,   100]",
            "",
            "command_pct      = [   0,   100]",
            "command_duty_pct",
            "belong together"),
        Refusal.of(
            "axis_order",
            "command_pct      = [   0,   100]     # from the bench: which duty gives an even rise in"
                + " boost\ncommand_duty_pct = [10.5,  77.5]",
            "command_pct = [0, 50, 100]\ncommand_duty_pct = [10.5, 78, 77.5]",
            "command_pct = [0, 50, 100]\ncommand_duty_pct = [10.5, 60, 77.5]",
            "77.5]",
            "does not rise"));
  }

  static Stream<Refusal> car() {
    return Stream.of(
        Refusal.of(
            "out_of_range",
            "cylinders             = 4",
            "cylinders = 0",
            "cylinders = 1",
            "cylinders",
            "0 is outside 1 to 12"),
        Refusal.of(
            "name_unusable",
            "\"Project car\"",
            "\"Project\\ncar\"",
            "\"" + "x".repeat(80) + "\"",
            "name",
            "longer than 80 characters or has a line break"),
        Refusal.of(
            "wrong_kind",
            "cylinders             = 4",
            "cylinders = 4.0",
            "cylinders = 4",
            "cylinders",
            "is 4.0; write a whole number from 1 to 12"),
        Refusal.of(
            "out_of_range",
            "pulses_per_revolution = 2",
            "pulses_per_revolution = 1.5",
            "pulses_per_revolution = 0.5",
            "pulses_per_revolution",
            "write 0.5, 1, 2, 3 or 4"),
        Refusal.of(
            "axis_order",
            "gear_rpm_per_kmh      = [113.83, 68.52,",
            "gear_rpm_per_kmh = [68.52, 113.83,",
            "gear_rpm_per_kmh = [113.83, 68.51,",
            "113.83,",
            "first gear comes first"),
        Refusal.of(
            "gears_without_road_speed",
            "road_pulses_per_km    = 4000",
            "road_pulses_per_km = 0",
            "road_pulses_per_km = 100",
            "gear_rpm_per_kmh",
            "write road_pulses_per_km as well"),
        Refusal.of(
            "out_of_range",
            "schema = 1 ",
            "schema = 2 ",
            "schema =  1 ",
            "schema",
            "2 is outside 1 to 1"),
        Refusal.of(
            "wrong_kind",
            "engine_cut          = false",
            "engine_cut = \"no\"",
            "engine_cut =  false",
            "engine_cut",
            "is the text \"no\"; write true or false"),
        Refusal.of(
            "gains_missing",
            "kp_pct_per_kpa   = [0.30, 0.30, 0.30]\nki_pct_per_kpa_s = [0.60, 0.60, 0.60]",
            "",
            "ki_pct_per_kpa_s = 0.6",
            "enabled          = true",
            "switched on but has no gains"),
        Refusal.of(
            "axis_missing",
            "rpm              = [2500, 4000, 6500]",
            "",
            "rpm = [2500, 4000, 6501]",
            "kp_pct_per_kpa",
            "has several entries but rpm is missing"));
  }

  @ParameterizedTest
  @MethodSource({"valveAndActuator", "car"})
  void badValueIsRefusedWithItsPlaceAndTheNearestGoodOneLoads(Refusal refusal) {
    refusal.check();
  }
}
