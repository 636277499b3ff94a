package org.boostwright.core.settings.file;

import java.util.stream.Stream;
import org.junit.jupiter.api.Tag;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.MethodSource;

/** C2: keys that are not known, stand twice or cannot be read refuse the whole file. */
@Tag("C2")
class RefusedKeysTest {

  static Stream<Refusal> keys() {
    return Stream.of(
        Refusal.of(
            "key_unknown",
            "trim_cap_pct     = 10",
            "trim_cap_pc = 10",
            "trim_cap_pct = 10",
            "trim_cap_pc",
            "limits.trim_cap_pc is not known; did you mean trim_cap_pct?"),
        Refusal.of(
            "key_unknown",
            "trim_cap_pct     = 10",
            "redline_rpm = 7000",
            "",
            "redline_rpm = 7000",
            "it belongs in [car]"),
        Refusal.of("key_unknown", "[spool]", "[spol]", "[spool]", "[spol]", "did you mean spool?"),
        Refusal.of(
            "key_unknown",
            "[sensors.supply]",
            "[sensors.suply]",
            "[sensors.supply]",
            "[sensors.suply]",
            "did you mean supply?"),
        Refusal.of(
            "key_unknown",
            "[spool]",
            "[nitrous_oxide]\nbottle = 1\n[spool]",
            "[spool]",
            "[nitrous_oxide]",
            "known here: schema, units, car"),
        Refusal.of(
            "key_twice",
            "cutoff_kpa_abs     = 200",
            "cutoff_kpa_abs = 200\ncutoff_bar_abs = 2.0",
            "cutoff_bar_abs = 2.0",
            "cutoff_bar_abs",
            "says the same thing as cutoff_kpa_abs at line "),
        Refusal.of(
            "syntax",
            "cutoff_kpa_abs     = 200",
            "cutoff_kpa_abs = 2OO",
            "cutoff_kpa_abs = 2_00",
            "OO"),
        Refusal.of(
            "syntax",
            "cutoff_kpa_abs     = 200",
            "cutoff_kpa_abs = 200\ncutoff_kpa_abs = 200",
            "cutoff_kpa_abs = 200",
            ""));
  }

  @ParameterizedTest
  @MethodSource("keys")
  void badValueIsRefusedWithItsPlaceAndTheNearestGoodOneLoads(Refusal refusal) {
    refusal.check();
  }
}
