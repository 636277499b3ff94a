package org.boostwright.core.settings.file;

import java.util.stream.Stream;
import org.junit.jupiter.api.Tag;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.MethodSource;

/** C2: tables and axes that cannot be right refuse the whole file. */
@Tag("C2")
class RefusedTablesTest {

  static Stream<Refusal> tables() {
    return Stream.of(
        Refusal.of(
            "axis_order",
            "rpm   = [2000, 2500, 3000,",
            "rpm   = [2000, 2500, 2500,",
            "rpm   = [2000, 2500, 2501,",
            "2500, 3500",
            "target.rpm, entry 3: 2500 1/min does not rise above the 2500 1/min before it"),
        Refusal.of(
            "axis_order",
            "[base_duty]                      # valve duty before the feedback's trim\n"
                + "throttle_pct = [30, 50,",
            "[base_duty]\nthrottle_pct = [50, 30,",
            "[base_duty]\nthrottle_pct = [30, 51,",
            "30, 70",
            "base_duty.throttle_pct, entry 2"),
        Refusal.of(
            "table_shape",
            "        [   0,    0,    0,    0,    0,    0,    0],   #  30 % throttle\n",
            "",
            "        [   0,    0,    0,    0,    0,    0,   11],\n",
            "duty_pct = [",
            "base duty table has 4 rows but its throttle axis has 5 entries"),
        Refusal.of(
            "table_shape",
            "[ 120,  130,  140,  145,  145,  145,  140]",
            "[ 120,  130,  140,  145,  145,  145]",
            "[ 120,  130,  140,  145,  145,  145,  141]",
            "120,  130",
            "target table, row 2 has 6 entries but rpm has 7"),
        Refusal.of(
            "wrong_kind",
            "[ 120,  130,  140,  145,  145,  145,  140]",
            "[ 120,  130,  140,  145,  true,  145,  140]",
            "[ 120,  130,  140,  145,  146.5,  145,  140]",
            "true",
            "target table, row 2, entry 5: is true; write a number"),
        Refusal.of(
            "wrong_kind",
            "[ 120,  130,  140,  145,  145,  145,  140]",
            "145",
            "[ 120,  130,  140,  145,  145,  145,  139]",
            "145,   #  50 %",
            "target table, row 2: is 145; write a row of numbers in brackets"),
        Refusal.of(
            "table_incomplete",
            "duty_pct = [\n",
            "duty_pc = [\n",
            "duty_pct   = [\n",
            "[base_duty]",
            "base duty table: needs throttle_pct (or pedal_pct), rpm and duty_pct"),
        Refusal.of(
            "out_of_range",
            "[  20,   24,   26,",
            "[ 100.1,   24,   26,",
            "[ 100,   24,   26,",
            "100.1",
            "base duty table, row 3, entry 1: 100.1 % is above the highest accepted, 100 %"),
        Refusal.of(
            "out_of_range",
            "[  20,   24,   26,",
            "[  -1,   24,   26,",
            "[   0,   24,   26,",
            "-1",
            "-1 % is below the lowest accepted, 0 %"),
        Refusal.of(
            "out_of_range",
            "[  20,   24,   26,",
            "[ nan,   24,   26,",
            "[ 20.5,   24,   26,",
            "nan",
            "not a number"),
        Refusal.of(
            "rows_differ",
            "[base_duty]                      # valve duty before the feedback's trim\nthrottle_pct",
            "[sensors.pedal]\nvolts = [0.5, 4.5]\npedal_pct = [0, 100]\n[base_duty]\npedal_pct",
            "[base_duty]\nthrottle_pct",
            "0,    0,    0,    0,    0,    0,    0],   #  30 %",
            "its rows are pedal but the target table's are throttle"),
        Refusal.of(
            "key_twice",
            "[target]",
            "[target]\npedal_pct = [30, 50, 70, 85, 100]",
            "[target]\n",
            "pedal_pct",
            "keep one"));
  }

  @ParameterizedTest
  @MethodSource("tables")
  void badValueIsRefusedWithItsPlaceAndTheNearestGoodOneLoads(Refusal refusal) {
    refusal.check();
  }
}
