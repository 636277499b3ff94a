package org.boostwright.core.settings.file;

import static org.assertj.core.api.Assertions.assertThat;

import java.util.List;
import org.junit.jupiter.api.Tag;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;

/** Slips of unit are refused, and the message says which slip it looks like. */
@Tag("C2")
class SlipsTest {

  @ParameterizedTest
  @CsvSource(
      delimiter = '|',
      textBlock =
          """
          cutoff_kpa_abs     = 200             | cutoff_kpa_abs = 99            | gauge pressure written as absolute: write 200.32 kPa absolute
          cutoff_kpa_abs     = 200             | cutoff_psi_abs = 14.5          | gauge pressure written as absolute: write 29.196 psi absolute, or say the unit in the key (cutoff_psi_gauge)
          cutoff_kpa_abs     = 200             | cutoff_kpa_gauge = 590         | absolute pressure written as gauge
          cutoff_kpa_abs     = 200             | cutoff_kpa_abs = 102           | gauge pressure written as absolute
          low_boost_kpa_abs   = 165            | low_boost_kpa_abs = 64         | gauge pressure written as absolute: write 165.32 kPa absolute
          pressure_kpa_abs = [ 20, 300]        | pressure_kpa_abs = [-81, 199]  | gauge pressure written as absolute: write 20.325 kPa absolute
          window_low_pct  = 10.5               | window_low_pct  = 0.105        | looks like a fraction; duty is written in percent: 10.5
          trim_cap_pct     = 10                | trim_cap_pct = 0.1             | looks like a fraction; duty is written in percent: 10
          duty_ceiling_pct = [   0,   85,   85,   52,   55,   58] | duty_ceiling_pct = [0, 0.85, 0.85, 0.52, 0.55, 0.58] | limits.duty_ceiling_pct: 0.85 % is less than one percent
          min_throttle_pct    = 30             | min_throttle_pct = 0.3         | looks like 0 to 1, and this is percent: 30
          throttle_pct = [  0, 100]            | throttle_pct = [0, 1]          | looks like 0 to 1; it is written in percent
          throttle_pct = [30, 50, 70, 85, 100] | throttle_pct = [0.3, 0.5, 0.7, 0.85, 1] | looks like 0 to 1; it is written in percent
          spring_only_above_c  = 75            | spring_only_above_c  = 348.15  | looks like kelvin, and this is degC: 75
          spring_only_above_c  = 75            | spring_only_above_c  = 167     | looks like Fahrenheit, and this is degC: 75
          redline_rpm           = 6800         | redline_rpm = 6.8              | looks like thousands, and this is 1/min: 6800
          rpm   = [2000, 2500, 3000, 3500, 4500, 5500, 6500] | rpm = [2, 2.5, 3, 3.5, 4.5, 5.5, 6.5] | looks like thousands; it is written in 1/min: 6500
          step_volts       = 0.0001875         | step_volts       = 187.5       | looks like millivolts, and this is volts: 0.1875
          """)
  void slipIsNamed(String good, String slip, String words) {
    String full = Example.full();
    assertThat(full).contains(good);
    LoadResult refused = Example.parse(full.replace(good, slip));
    assertThat(refused.ok()).isFalse();
    List<String> texts = refused.problems().stream().map(Problem::text).toList();
    assertThat(texts).anyMatch(text -> text.contains(words));
    assertThat(Example.parse(full).problems()).isEmpty();
  }

  @ParameterizedTest
  @CsvSource({"kPa, 80, kpa", "psi, 11.6, psi", "bar, 0.8, bar"})
  void gaugeTargetsInAnAbsoluteTableAreRefused(String unit, String value, String suffix) {
    String text = table(unit, "absolute", value) + "[limits]\ncutoff_kpa_abs = 200\n";
    LoadResult refused = Example.parse(text);
    assertThat(refused.ok()).isFalse();
    assertThat(refused.problems().get(0).text())
        .contains("it is about 101 kPa off and looks like gauge pressure written as absolute")
        .contains("boost_" + suffix + "_gauge");

    String twin = table(unit, "gauge", value) + "[limits]\ncutoff_kpa_abs = 200\n";
    assertThat(Example.parse(twin).ok()).isTrue();
  }

  @ParameterizedTest
  @CsvSource({"kPa, 180", "psi, 26.1", "bar, 1.8"})
  void absoluteTargetsInAGaugeTableAreRefused(String unit, String value) {
    String text = table(unit, "gauge", value) + "[limits]\ncutoff_kpa_abs = 200\n";
    LoadResult refused = Example.parse(text);
    assertThat(refused.ok()).isFalse();
    assertThat(refused.problems().get(0).text())
        .contains("it looks like absolute pressure in a gauge table");

    String twin = table(unit, "absolute", value) + "[limits]\ncutoff_kpa_abs = 200\n";
    assertThat(Example.parse(twin).ok()).isTrue();
  }

  private static String table(String unit, String reference, String value) {
    return "[units]\npressure = \""
        + unit
        + "\"\nreference = \""
        + reference
        + "\"\n[target]\nthrottle_pct = [100]\nrpm = [3000]\nboost = [["
        + value
        + "]]\n"
        + Example.SENSORS_ONLY;
  }

  @ParameterizedTest
  @CsvSource({"130", "150"})
  void gaugeLimitBelowAbsoluteTargetsIsNamed(String cutoff) {
    String text = table("kPa", "absolute", "180") + "[limits]\ncutoff = " + cutoff + "\n";
    assertThat(Example.parse(text).problems().get(0).text())
        .contains("the limit looks like gauge pressure written as absolute");
  }
}
