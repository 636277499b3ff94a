package org.boostwright.core.settings.file;

import java.util.stream.Stream;
import org.junit.jupiter.api.Tag;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.MethodSource;

/** C2: limits that cannot be right refuse the whole file. */
@Tag("C2")
class RefusedLimitsTest {

  static Stream<Refusal> limits() {
    String cutoff = "cutoff_kpa_abs     = 200";
    return Stream.of(
        // Top of the sensor 300, span 280: 300 - 28 = 272 kPa (faults C2).
        Refusal.of(
            "cutoff_above_sensor",
            cutoff,
            "cutoff_kpa_abs = 272.1",
            "cutoff_kpa_abs = 272",
            "cutoff_kpa_abs",
            "272.1 kPa absolute is above 272 kPa absolute",
            "10 %"),
        Refusal.of(
            "target_above_cutoff",
            "[ 140,  160,  172,  180,  180,  180,  175],   # 100 %",
            "[ 140,  160,  172,  180,  310,  180,  175],",
            "[ 140,  160,  172,  180,  199,  180,  175],",
            "310",
            "target table, row 5: 310 kPa absolute is above the overboost limit 200 kPa absolute;"
                + " lower it or raise limits.cutoff_kpa_abs"),
        Refusal.of(
            "target_above_cutoff",
            cutoff,
            "cutoff_kpa_abs = 180",
            "cutoff_kpa_abs = 180.1",
            "180,  180,  180,  175],",
            "180 kPa absolute is at the overboost limit 180 kPa absolute"),
        Refusal.of(
            "level_above_cutoff",
            "low_boost_kpa_abs   = 165",
            "low_boost_kpa_abs = 200",
            "low_boost_kpa_abs = 199",
            "low_boost_kpa_abs",
            "200 kPa absolute is not below the overboost limit 200 kPa absolute"),
        Refusal.of(
            "level_above_cutoff",
            "gear_target_kpa_abs = [160,",
            "gear_target_kpa_abs = [201,",
            "gear_target_kpa_abs = [199,",
            "gear_target_kpa_abs",
            "gear 1, 201 kPa absolute"),
        Refusal.of(
            "gear_count",
            "gear_target_kpa_abs = [160, 175, 180, 180, 180]",
            "gear_target_kpa_abs = [160, 175, 180, 180]",
            "gear_target_kpa_abs = [160, 175, 180, 180, 181]",
            "gear_target_kpa_abs",
            "has 4 gears but car.gear_rpm_per_kmh has 5"),
        Refusal.of(
            "cutoff_below_spring",
            "spring_cracks_kpa_gauge    = 60",
            "spring_cracks_kpa_gauge = 98.7",
            "spring_cracks_kpa_gauge = 98",
            "cutoff_kpa_abs     =",
            "200 kPa absolute is not above 200.03 kPa absolute"),
        Refusal.of(
            "out_of_range",
            "trim_cap_pct     = 10",
            "trim_cap_pct = 30.5",
            "trim_cap_pct = 30",
            "trim_cap_pct",
            "30.5 % is above the highest accepted, 30 %"),
        Refusal.of(
            "out_of_range",
            "pressure_ratio_max = 2.5",
            "pressure_ratio_max = 4.5",
            "pressure_ratio_max = 4",
            "pressure_ratio_max"),
        Refusal.of(
            "hot_air_more_boost",
            "intake_air_boost_pct = [100,  80,  60]",
            "intake_air_boost_pct = [100, 60, 61]",
            "intake_air_boost_pct = [100, 60, 60]",
            "intake_air_boost_pct",
            "rises from 60 % to 61 % at 75 degC"),
        Refusal.of(
            "min_rpm_range",
            "min_rpm             = 1800",
            "min_rpm = 6800",
            "min_rpm = 6799",
            "min_rpm",
            "6800 1/min must lie between"),
        Refusal.of(
            "out_of_range",
            "duty_ceiling_pct = [   0,   85,",
            "duty_ceiling_pct = [   0,  101,",
            "duty_ceiling_pct = [   0,  100,",
            "101,",
            "limits.duty_ceiling_pct, entry 2: 101 % is above the highest accepted, 100 %"),
        Refusal.of(
            "length_differs",
            "duty_ceiling_pct = [   0,   85,   85,",
            "duty_ceiling_pct = [   0,   85,",
            "duty_ceiling_pct = [   0,   85,   86,",
            "0,   85,   52",
            "5 entries",
            "6"));
  }

  @ParameterizedTest
  @MethodSource("limits")
  void badValueIsRefusedWithItsPlaceAndTheNearestGoodOneLoads(Refusal refusal) {
    refusal.check();
  }
}
