package org.boostwright.core.settings.file;

import static org.assertj.core.api.Assertions.assertThat;

import java.util.List;
import java.util.stream.Stream;
import org.boostwright.core.settings.WiringSettings;
import org.junit.jupiter.api.Tag;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;
import org.junit.jupiter.params.provider.MethodSource;

/** Wrong values in {@code [wiring]}, one at a time, each with a twin that is just good enough. */
class RefusedWiringTest {
  private static final String PULL = "pull_down_ohms         = 4700";
  private static final String BOTTOM = "map_divider_bottom_ohms = 0";
  private static final String SUPPLY = "sensor_supply_volts    = 5.0";
  private static final String NANOFARAD = "map_filter_nf          = 680";
  private static final String THRESHOLD = "mosfet_threshold_max_volts = 1.5";
  private static final String CLAMP =
      "clamp                  = \"diode\" # \"diode\", \"zener\" or \"tvs\": decides how fast the coil lets go\nclamp_volts            = 0.8 ";
  private static final String BUFFERED =
      "map_buffered           = true    # a follower stands before the filter\nmap_bias_ohms          = 51000 ";
  private static final String RESERVOIR = "heartbeat_reservoir_nf = 330";

  static Stream<Refusal> refusals() {
    return Stream.of(
        // E3: at most 10 kohm.
        Refusal.of(
            "wiring_pull_down",
            PULL,
            "pull_down_ohms = 0",
            "pull_down_ohms = 10000",
            "pull_down_ohms",
            "there is none",
            "10000 ohm"),
        Refusal.of(
            "wiring_pull_down",
            PULL,
            "pull_down_ohms = 10001",
            "pull_down_ohms = 10000",
            "pull_down_ohms",
            "10001 ohm"),
        // 3.3 V * 0.91 - 1.2 V = 1.80 V.
        Refusal.of(
            "wiring_mosfet_threshold",
            THRESHOLD,
            "mosfet_threshold_max_volts = 4",
            "mosfet_threshold_max_volts = 1.8",
            "mosfet_threshold_max_volts",
            "4 V",
            "3.3 V"),
        // 33 V + 15.1 V = 48.1 V against 80 % of 60 V.
        Refusal.of(
            "wiring_clamp_high",
            CLAMP,
            "clamp = \"zener\"\nclamp_volts = 15.1 ",
            "clamp = \"zener\"\nclamp_volts = 14.9 ",
            "clamp_volts",
            "48 V",
            "33 V"),
        Refusal.of(
            "wiring_clamp_missing",
            CLAMP,
            "clamp = \"none\"\n",
            "clamp = \"diode\"\n",
            "clamp",
            "60 V"),
        // 12 V * 10/25 = 4.8 V still bears; 12 V without a divider does not.
        Refusal.of(
            "wiring_over_range",
            SUPPLY,
            "sensor_supply_volts = 12",
            "sensor_supply_volts = 5.25",
            "",
            "12 V",
            "5.3 V"),
        // 5 V * 10/20 = 2.5 V, but the calibration goes to 4.5 V.
        Refusal.of(
            "wiring_divider",
            "map_divider_top_ohms    = 0      # 0: no divider\n" + BOTTOM,
            "map_divider_top_ohms = 10000\nmap_divider_bottom_ohms = 10000",
            "map_divider_top_ohms = 10\nmap_divider_bottom_ohms = 100000",
            "sensor_supply_volts",
            "4.5 V",
            "2.5 V"),
        Refusal.of(
            "wiring_divider",
            SUPPLY,
            "sensor_supply_volts = 3.3",
            "sensor_supply_volts = 5",
            "sensor_supply_volts",
            "3.3 V"),
        Refusal.of(
            "wiring_short_unseen",
            SUPPLY,
            "sensor_supply_volts = 4.75",
            "sensor_supply_volts = 4.85",
            "sensor_supply_volts",
            "4.75 V",
            "4.8 V"),
        // 5.6 kohm * C * ln(24) = 19 ms at 1.067 uF.
        Refusal.of(
            "wiring_open_wire_slow",
            NANOFARAD,
            "map_filter_nf = 1080",
            "map_filter_nf = 1050",
            "map_filter_nf",
            "19 ms"),
        // Without a follower 1 Mohm + 5.6 kohm on 680 nF need 2.2 s.
        Refusal.of(
            "wiring_open_wire_slow",
            BUFFERED,
            "map_buffered = false\nmap_bias_ohms = 1000000 ",
            "map_buffered = false\nmap_bias_ohms = 3000 ",
            "map_bias_ohms",
            "19 ms"),
        Refusal.of(
            "wiring_open_wire_slow",
            BUFFERED,
            "map_buffered = true\nmap_bias_ohms = 0 ",
            "map_buffered = true\nmap_bias_ohms = 1 ",
            "",
            "never"),
        Refusal.of(
            "wiring_heartbeat_hold",
            RESERVOIR,
            "heartbeat_reservoir_nf = 1000",
            "heartbeat_reservoir_nf = 330",
            "heartbeat_reservoir_nf",
            "30 ms",
            "100 ms"),
        Refusal.of(
            "wiring_heartbeat_hold",
            RESERVOIR,
            "heartbeat_reservoir_nf = 100",
            "heartbeat_reservoir_nf = 330",
            "heartbeat_reservoir_nf",
            "100 ms"),
        Refusal.of(
            "wiring_drop_out",
            "drop_out_a             = 0.0933",
            "drop_out_a = 0.2",
            "drop_out_a = 0.19",
            "drop_out_a",
            "0.2 A"),
        Refusal.of(
            "key_unknown",
            PULL,
            "pull_down_ohm = 4700",
            "pull_down_ohms = 4700",
            "pull_down_ohm",
            "did you mean pull_down_ohms"),
        Refusal.of(
            "choice_unknown",
            "clamp                  = \"diode\"",
            "clamp = \"diod\"",
            "clamp = \"diode\"",
            "clamp",
            "did you mean \"diode\""));
  }

  @ParameterizedTest
  @MethodSource("refusals")
  void wrongCircuitIsRefusedAndItsTwinIsNot(Refusal refusal) {
    refusal.check();
  }

  /** Values that leave the file usable but are said; the second of each pair is not. */
  @ParameterizedTest
  @CsvSource(
      delimiter = ';',
      value = {
        "wiring_filter_slow; map_filter_nf          = 680; map_filter_nf = 1430; map_filter_nf = 1410",
        "wiring_filter_fast; map_filter_nf          = 680; map_filter_nf = 280; map_filter_nf = 290",
        "wiring_coil_weak; pick_up_a              = 0.2; pick_up_a = 0.24; pick_up_a = 0.22",
        "wiring_fuse; coil_fuse_a            = 2; coil_fuse_a = 5; coil_fuse_a = 3",
        "wiring_fuse; coil_fuse_a            = 2; coil_fuse_a = 0.7; coil_fuse_a = 0.75",
        "wiring_window_shift; spool_off_ms           = 2.8; spool_off_ms = 4.1; spool_off_ms = 3.7",
        "wiring_switch_hot; mosfet_on_ohms         = 0.15; mosfet_on_ohms = 1.8; mosfet_on_ohms = 1.7",
        "wiring_sensor_rail; sensor_supply_volts    = 5.0; sensor_supply_volts = 5.28; sensor_supply_volts = 5.24",
        "wiring_coil_hot; coil_ohms       = 30; coil_ohms = 21; coil_ohms = 22",
      })
  void doubtfulValueIsSaidAndItsTwinIsNot(String code, String find, String bad, String good) {
    assertThat(Example.full()).contains(find);
    List<Problem> said = problems(find, bad, code);
    assertThat(said).hasSize(1);
    assertThat(said.get(0).severity()).isEqualTo(Severity.WARNING);
    assertThat(said.get(0).text()).contains("; ");
    assertThat(problems(find, good, code)).isEmpty();
  }

  @Test
  void zenerMovesTheTopOfTheWindowAndIsSaid() {
    String zener =
        Example.full()
            .replace("clamp                  = \"diode\"", "clamp = \"zener\"")
            .replace("clamp_volts            = 0.8", "clamp_volts = 12.8");
    assertThat(Example.parse(zener).problems())
        .filteredOn(p -> p.code().equals("wiring_window_shift"))
        .singleElement()
        .satisfies(p -> assertThat(p.text()).contains("repeat the bench"));
  }

  @Test
  void fileWithoutACircuitHasTheProjectsOwnAndNoRemarkAboutIt() {
    LoadResult small = Example.parse(Example.SENSORS_ONLY);
    assertThat(small.orThrow().wiring()).isEqualTo(WiringSettings.DEFAULT);
    assertThat(small.problems()).noneMatch(p -> p.code().startsWith("wiring_"));
  }

  @Test
  void exampleStatesTheProjectsOwnCircuit() {
    assertThat(Example.settings().wiring()).isEqualTo(WiringSettings.DEFAULT);
  }

  @Test
  @Tag("E3")
  void audioBoardAndWatchdogBoardTakeTheirPins() {
    assertThat(codes("audio_board_in_use = false", "audio_board_in_use = true"))
        .contains("pin_taken");
    assertThat(codes("audio_board_in_use = false", "watchdog_board = 17")).contains("pin_taken");
    assertThat(codes("audio_board_in_use = false", "watchdog_board = 26")).isEmpty();
  }

  private static List<Problem> problems(String find, String replacement, String code) {
    return Example.parse(Example.full().replace(find, replacement)).problems().stream()
        .filter(p -> p.code().equals(code))
        .toList();
  }

  private static List<String> codes(String find, String replacement) {
    String full = Example.full();
    assertThat(full).contains(find);
    return Example.parse(full.replace(find, replacement)).problems().stream()
        .map(Problem::code)
        .toList();
  }
}
