package org.boostwright.core.settings.file;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import java.io.IOException;
import java.nio.charset.StandardCharsets;
import java.nio.file.Files;
import java.nio.file.Path;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;

/** The check shows every effective value and works out what it means at the bench. */
class SettingsCheckTest {
  private final CheckReport report =
      SettingsCheck.report("car.toml", Example.parse(Example.full()));

  /**
   * Independent figures: TI SBAS444 gives 187.5 uV a code at +-6.144 V, over 280 kPa on 4 V that is
   * 0.013125 kPa; Ohm's law at 14 V on 30 ohm; window edges times the period; 2 pulses a revolution
   * at 6800/min.
   */
  @ParameterizedTest
  @CsvSource({
    "map.step_kpa, 0.013125, kPa",
    "map.noise_steps, 22.857142857, steps",
    "limits.cutoff_highest_kpa_abs, 272, kPa absolute",
    "coil.current_a, 0.466666667, A",
    "coil.power_w, 6.533333333, W",
    "valve.period_ms, 33.333333333, ms",
    "valve.period_ticks, 6.666666667, ticks",
    "valve.t_on_ms, 3.5, ms",
    "valve.t_off_ms, 7.5, ms",
    "valve.window_width_pct, 67, %",
    "valve.highest_hz, 90.909090909, Hz",
    "tach.redline_hz, 226.666666667, Hz",
    "road.hz_at_200_kmh, 222.222222222, Hz",
  })
  void figureIsWorkedOut(String id, double value, String unit) {
    CheckReport.Figure figure =
        report.figures().stream().filter(f -> f.id().equals(id)).findFirst().orElseThrow();
    assertThat(figure.value()).isCloseTo(value, within(1e-8));
    assertThat(figure.unit()).isEqualTo(unit);
  }

  @Test
  void everyValueOfTheFileIsListed() {
    LoadResult result = Example.parse(Example.full());
    for (String key : result.stated().keySet()) {
      if (key.equals("schema") || key.endsWith("_pct") && key.contains(".throttle_pct")) {
        continue;
      }
      boolean axis = key.equals("target.rpm") || key.equals("base_duty.rpm");
      assertThat(report.values())
          .as(key)
          .anyMatch(v -> axis || v.key().equals(key) || v.key().startsWith(key + " ("));
    }
  }

  @Test
  void defaultsAreMarked() {
    CheckReport small = SettingsCheck.report("car.toml", Example.parse(Example.SENSORS_ONLY));
    assertThat(small.text()).containsPattern("limits.cutoff +180 kPa absolute  \\(default\\)");
    assertThat(small.text()).containsPattern("sensors.map.pressure +20, 300 kPa absolute\n");
    assertThat(small.text()).containsPattern("base_duty.duty_pct +0 everywhere %  \\(default\\)");
  }

  @Test
  void tablesAreListedWithTheirAxes() {
    assertThat(report.text())
        .contains("throttle % \\ 1/min  2000  2500  3000  3500  4500  5500  6500")
        .containsPattern("100   140   160   172   180   180   180   175");
  }

  @Test
  void refusedFileShowsItsProblemsAndNoValues(@TempDir Path folder) throws IOException {
    Path file = folder.resolve("my-car.toml");
    Files.writeString(file, Example.full().replace("cylinders             = 4", "cylinders = 44"));
    CheckReport refused = SettingsCheck.run(file);
    assertThat(refused.ok()).isFalse();
    assertThat(refused.values()).isEmpty();
    assertThat(refused.figures()).isEmpty();
    assertThat(refused.settingsDigest()).isEmpty();
    assertThat(refused.text())
        .startsWith("my-car.toml:")
        .contains("car.cylinders: 44 is outside 1 to 12")
        .endsWith("my-car.toml: refused; nothing of it is used\n");
  }

  @Test
  void fileThatCannotBeReadIsAProblemAndNoException(@TempDir Path folder) throws IOException {
    assertThat(SettingsCheck.run(folder.resolve("nothing.toml")).text()).contains("no such file");
    assertThat(SettingsCheck.run(folder).ok()).isFalse();
    Path huge = folder.resolve("huge.toml");
    Files.write(huge, new byte[SettingsFile.LARGEST_BYTES + 1]);
    assertThat(SettingsCheck.run(huge).text()).contains("larger than 1 MiB");
    Path empty = folder.resolve("empty.toml");
    Files.write(empty, new byte[0]);
    assertThat(SettingsCheck.run(empty).text()).contains("[sensors.map] is missing");
  }

  @Test
  void byteThatIsNotUtf8IsShownWithItsPlace() {
    byte[] bytes = "a = 1\nb = \"x?y\"\n".getBytes(StandardCharsets.UTF_8);
    bytes[12] = (byte) 0xE4;
    LoadResult result = SettingsFile.parse("car.toml", bytes);
    assertThat(result.problems().get(0).toString())
        .startsWith("car.toml:2:7: the byte 0xE4 here is not UTF-8");
  }

  @Test
  void deepNestingIsRefusedAndNothingEscapes() {
    String deep = "a = " + "[".repeat(100_000);
    assertThat(SettingsFile.parse("car.toml", deep).ok()).isFalse();
    String tables = "[" + "a.".repeat(50_000) + "a]";
    assertThat(SettingsFile.parse("car.toml", tables).ok()).isFalse();
  }

  @ParameterizedTest
  @CsvSource(
      delimiter = '|',
      value = {
        "cutoff_close | cutoff_kpa_abs     = 200 | cutoff_kpa_abs = 194 | cutoff_kpa_abs = 195",
        "cutoff_far | cutoff_kpa_abs     = 200 | cutoff_kpa_abs = 206 | cutoff_kpa_abs = 205",
        "target_far_above_spring | spring_cracks_kpa_gauge    = 60"
            + " | spring_cracks_kpa_gauge = 39 | spring_cracks_kpa_gauge = 40",
        "target_above_ratio | pressure_ratio_max = 2.5"
            + " | pressure_ratio_max = 1.77 | pressure_ratio_max = 1.78",
        "duty_above_ceiling | 85,   52,   55 | 85, 35, 55 | 85, 36, 55",
        "duty_below_window | [  20,   24, | [ 10, 24, | [ 10.5, 24,",
        "duty_above_window | [  26,   32, | [ 78, 32, | [ 77, 32,",
        "intake_air_missing | [sensors.intake_air] | [sensors.coolant] | [sensors.intake_air]",
        "map_frozen_not_watched | noise_kpa        = 0.3 | noise_kpa = 0.013 | noise_kpa = 0.0132",
        "schema_missing | schema = 1 | # none | schema = 1",
        "spool_without_duty | 0,   85,   85,   52,   55,   58 | 0, 0, 0, 0, 0, 0"
            + " | 0, 85, 85, 52, 55, 58",
        "feedback_without_duty | 0,   85,   85,   52,   55,   58 | 0, 0, 0, 0, 0, 0"
            + " | 0, 85, 85, 52, 55, 58",
        "low_boost_is_spring | low_boost_kpa_abs   = 165 | # | low_boost_kpa_abs = 102",
      })
  void doubtfulValueLoadsWithACautionAndItsTwinWithout(
      String code, String find, String doubtful, String good) {
    String full = Example.full();
    assertThat(full).contains(find);
    LoadResult result = Example.parse(full.replace(find, doubtful));
    assertThat(result.ok()).as("%s", result.problems()).isTrue();
    assertThat(result.problems()).anyMatch(p -> p.code().equals(code));
    LoadResult twin = Example.parse(full.replace(find, good));
    assertThat(twin.ok()).as("%s", twin.problems()).isTrue();
    assertThat(twin.problems()).noneMatch(p -> p.code().equals(code));
  }
}
