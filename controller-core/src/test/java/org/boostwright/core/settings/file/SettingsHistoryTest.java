package org.boostwright.core.settings.file;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatThrownBy;

import java.io.IOException;
import java.nio.charset.StandardCharsets;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.List;
import org.boostwright.core.ladder.SettingsPart;
import org.boostwright.core.settings.Settings;
import org.boostwright.core.table.Table2d;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;

/** Every settings file that was driven with can be had again, and what differs is named. */
class SettingsHistoryTest {
  private static final Path EXAMPLE =
      Path.of(System.getProperty("boostwright.root"), "docs", "project-car.toml");

  @TempDir Path data;

  private static String example() throws IOException {
    return Files.readString(EXAMPLE);
  }

  private static Settings parse(String text) {
    return SettingsFile.parse("car.toml", text.getBytes(StandardCharsets.UTF_8)).orThrow();
  }

  private void drive(String text, int day) throws IOException {
    byte[] bytes = text.getBytes(StandardCharsets.UTF_8);
    String date = "2026-05-%02dT10:20:30.123Z".formatted(day);
    SettingsHistory.keep(data, bytes, parse(text), date);
  }

  @Test
  void eachFileIsKeptWholeInOrderAndTheSameOneOnlyOnce() throws Exception {
    assertThat(SettingsHistory.list(data)).isEmpty();
    String first = example();
    String commented = first + "# a thought\n";
    String second = SettingsEdit.of("car.toml", first).set("limits.trim_cap_pct", 5.0).text();
    drive(first, 1);
    drive(first, 2);
    drive(commented, 3);
    drive(second, 4);
    drive(first, 5);
    List<SettingsHistory.Kept> all = SettingsHistory.list(data);
    assertThat(all).extracting(SettingsHistory.Kept::number).containsExactly(1, 2, 3, 4);
    assertThat(all.get(0).date()).isEqualTo("20260501T102030Z");
    assertThat(all.get(1).bytes()).isEqualTo(commented.getBytes(StandardCharsets.UTF_8));
    assertThat(all.get(1).same(parse(first))).isTrue();
    assertThat(all.get(2).same(parse(first))).isFalse();
    assertThat(all.get(3).bytes()).isEqualTo(all.get(0).bytes());
  }

  @Test
  void aDamagedFileShowsAndIsKeptAnew() throws Exception {
    drive(example(), 1);
    SettingsHistory.Kept kept = SettingsHistory.list(data).get(0);
    byte[] bytes = Files.readAllBytes(kept.file());
    bytes[bytes.length / 2] ^= 1;
    Files.write(kept.file(), bytes);
    assertThatThrownBy(kept::bytes).isInstanceOf(IOException.class).hasMessageContaining("changed");
    drive(example(), 2);
    assertThat(SettingsHistory.list(data)).hasSize(2);
    assertThat(SettingsHistory.list(data).get(1).bytes())
        .isEqualTo(example().getBytes(StandardCharsets.UTF_8));
  }

  @Test
  void theOldestGoWhenThereAreTooMany() throws Exception {
    String text = example();
    for (int i = 0; i < 503; i++) {
      drive(text + "# " + i + "\n", 1);
    }
    List<SettingsHistory.Kept> all = SettingsHistory.list(data);
    assertThat(all).hasSize(SettingsHistory.MOST);
    assertThat(all.get(0).number()).isEqualTo(4);
    assertThat(all.get(SettingsHistory.MOST - 1).number()).isEqualTo(503);
  }

  @Test
  void differencesAreNamedInTheNewUnitsWithWhatDependsOnThem() throws Exception {
    String first = example();
    String second =
        SettingsEdit.of("car.toml", first)
            .set("limits.trim_cap_pct", 5.0)
            .setText("units.pressure", "psi")
            .text();
    List<SettingsDiff.Line> lines = SettingsDiff.of(parse(first), parse(second));
    assertThat(lines)
        .extracting(SettingsDiff.Line::key)
        .containsExactly("units", "limits.trim_cap_pct");
    assertThat(lines.get(0).part()).isNull();
    assertThat(lines.get(1).part()).isEqualTo(SettingsPart.FEEDBACK);
    assertThat(lines.get(1).after()).isEqualTo("5 %");
    assertThat(SettingsDiff.of(parse(first), parse(first + "# no matter\n"))).isEmpty();
  }

  @Test
  void aChangedCellOfATableIsFound() throws Exception {
    String first = example();
    Settings before = parse(first);
    double[] values = before.baseDuty().values();
    int columns = before.baseDuty().columns().size();
    values[2 * columns + 3] += 0.04;
    Settings after =
        before.withBaseDuty(
            new Table2d(before.baseDuty().rows(), before.baseDuty().columns(), values));
    List<SettingsDiff.Line> lines = SettingsDiff.of(before, after);
    assertThat(lines).hasSize(1);
    assertThat(lines.get(0).part()).isEqualTo(SettingsPart.TABLES);
    String rpm = "" + (int) before.baseDuty().columns().point(3);
    assertThat(lines.get(0).after()).contains("1 of ").contains(" at " + rpm + " rpm ");
  }
}
