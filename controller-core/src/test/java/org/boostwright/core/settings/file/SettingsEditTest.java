package org.boostwright.core.settings.file;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatThrownBy;
import static org.assertj.core.api.Assertions.within;

import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.List;
import org.boostwright.core.settings.Settings;
import org.boostwright.core.table.Axis;
import org.boostwright.core.table.Table2d;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;
import org.junit.jupiter.params.provider.ValueSource;

/** Programs change settings the way a person would: in place, with every comment kept. */
class SettingsEditTest {
  private final String full = Example.full();

  private SettingsEdit edit() {
    return SettingsEdit.of("car.toml", full);
  }

  @Test
  void untouchedFileStaysToTheByte() {
    assertThat(edit().text()).isEqualTo(full);
  }

  @Test
  void oneNumberChangesAndNothingElse() {
    String text = edit().set("limits.cutoff_kpa_abs", 205).text();
    assertThat(text)
        .isEqualTo(full.replace("cutoff_kpa_abs     = 200", "cutoff_kpa_abs     = 205"));
    assertThat(SettingsFile.parse("car.toml", text).orThrow().limits().cutoffKpaAbs())
        .isEqualTo(205.0);
  }

  @Test
  void switchesAndTextChangeInPlace() {
    String text = edit().set("feedback.enabled", false).set("car.name", "My \"other\" car").text();
    assertThat(text)
        .isEqualTo(
            full.replace("enabled          = true", "enabled          = false")
                .replace("\"Project car\"", "\"My \\\"other\\\" car\""));
  }

  @Test
  void newKeyGoesIntoItsTableAndNewTableToTheEnd() {
    SettingsEdit edit =
        edit().set("pins.permit", 26).set("wires.permit", true).set("sensors.coolant.volts", 1, 4);
    edit.set("sensors.coolant.temperature_c", 110, 0);
    Settings settings = edit.load().orThrow();
    assertThat(settings.pins().permit()).isEqualTo(26);
    assertThat(edit.text()).contains("uart_in_use    = false           # GPIO 14 and 15\n");
    assertThat(edit.text().lines().toList())
        .containsAll(full.lines().filter(l -> !l.startsWith("permit")).toList());
  }

  @Test
  void tableOfTheSameShapeKeepsItsCommentsAndColumns() {
    Table2d old = edit().load().orThrow().baseDuty();
    double[] cells = old.values();
    for (int i = 0; i < cells.length; i++) {
      cells[i] = cells[i] == 0.0 ? 0.0 : cells[i] + 0.015;
    }
    SettingsEdit edit = edit().setBaseDuty(new Table2d(old.rows(), old.columns(), cells));
    assertThat(edit.load().orThrow().baseDuty().values()).containsExactly(cells, within(1e-12));
    List<String> before = lines(full, "duty_pct = [", 5);
    List<String> after = lines(edit.text(), "duty_pct = [", 5);
    for (int row = 0; row < 5; row++) {
      assertThat(after.get(row)).endsWith(before.get(row).substring(before.get(row).indexOf('#')));
      assertThat(commas(after.get(row))).isEqualTo(commas(after.get(0)));
    }
    assertThat(after.get(4)).contains("[31.5, 37.5, 39.5, 39.5, 37.5, 43.5, 47.5],   # 100 %");
  }

  @Test
  void tableOfAnotherShapeIsWrittenAlignedByEye() {
    Table2d table =
        new Table2d(
            new Axis(40, 100), new Axis(2500, 4000, 6500), new double[] {.1, .25, .3, .305, 0, .4});
    SettingsEdit edit = edit().setBaseDuty(table);
    assertThat(edit.load().orThrow().baseDuty()).isEqualTo(table);
    List<String> rows = lines(edit.text(), "duty_pct = [", 2);
    assertThat(commas(rows.get(0))).isEqualTo(commas(rows.get(1)));
    assertThat(edit.text()).contains("# ------").contains("[spool]");
  }

  @Test
  void targetIsWrittenInTheUnitsOfItsKey() {
    String psi =
        full.replace("boost_kpa_abs = [", "boost_psi_gauge = [")
            .replaceAll("(?m)^( +\\[) 1[0-9]{2},  1.*(\\],   #.*)$", "$1 5, 6, 7, 8, 8, 8, 8$2");
    SettingsEdit edit = SettingsEdit.of("car.toml", psi);
    Table2d old = edit.load().orThrow().target();
    double[] cells = old.values();
    cells[3] = 170.0;
    edit.setTarget(new Table2d(old.rows(), old.columns(), cells));
    // (170 - 101.325) / 6.894757 = 9.9604 psi, to the hundredth.
    assertThat(lines(edit.text(), "boost_psi_gauge", 1).get(0)).contains("9.96");
    assertThat(edit.load().orThrow().target().cell(0, 3)).isCloseTo(170.0, within(0.035));
  }

  @Test
  void baseDutyIntoAFileThatHasNone() {
    Table2d table =
        new Table2d(new Axis(30, 100), new Axis(2500, 6500), new double[] {0, 0, 0.3, 0.4});
    SettingsEdit edit = SettingsEdit.of("car.toml", Example.SENSORS_ONLY).setBaseDuty(table);
    assertThat(edit.load().orThrow().baseDuty()).isEqualTo(table);
    assertThat(edit.text()).startsWith(Example.SENSORS_ONLY);
  }

  @ParameterizedTest
  @CsvSource({
    "limits.cutoff_kpa_abs, 205, cutoff_psi_gauge = 15, 205",
    "limits.cutoff_bar_abs, 2.05, cutoff_psi_gauge = 15, 205",
    "limits.cutoff, 205, cutoff_kpa_gauge = 99, 205",
    "limits.cutoff_psi_gauge, 15, cutoff_kpa_abs = 200, 204.746355",
  })
  void pressureKeepsTheSpellingItHasInTheFile(
      String key, double value, String standing, double kpaAbs) {
    String text = full.replace("cutoff_kpa_abs     = 200", standing);
    SettingsEdit edit = SettingsEdit.of("car.toml", text).set(key, value);
    assertThat(edit.load().orThrow().limits().cutoffKpaAbs()).isCloseTo(kpaAbs, within(1e-5));
    assertThat(edit.text()).contains(standing.substring(0, standing.indexOf(" =")));
  }

  @ParameterizedTest
  @CsvSource(
      delimiter = '|',
      value = {
        "limits.cutoff_kpa_abs | 205",
        "feedback.enabled | false",
        "limits.duty_ceiling_pct | [0, 85, 85, 50, 50, 50]",
        "car.name | Old faithful",
        "valve.energised | vents_actuator",
      })
  void valueFromTheCommandLineIsTakenAsWritten(String key, String value) {
    SettingsEdit edit = edit().setText(key, value);
    assertThat(edit.load().ok()).isTrue();
    assertThat(edit.text()).contains(value);
  }

  @Test
  void misspeltKeyFromTheCommandLineIsRefusedWithASuggestion() {
    LoadResult result = edit().setText("limits.cutof_kpa_abs", "205").load();
    assertThat(result.ok()).isFalse();
    assertThat(result.problems()).anyMatch(p -> p.text().contains("did you mean"));
    assertThatThrownBy(() -> edit().setText("limits.cutoff_kpa_abs.x", "1"))
        .isInstanceOf(IllegalArgumentException.class)
        .hasMessageContaining("limits.cutoff_kpa_abs.x cannot be set");
    assertThatThrownBy(() -> edit().set("limits.cutoff_kpa_abs", Double.NaN))
        .isInstanceOf(IllegalArgumentException.class);
  }

  @ParameterizedTest
  @ValueSource(
      strings = {
        "limits = { duty_ceiling_rpm = [1000, 2000], duty_ceiling_pct = [10, 20] } # note",
        "limits.duty_ceiling_rpm = [1000, 2000]\nlimits.duty_ceiling_pct = [10, 20] # note",
        "limits . \"duty_ceiling_rpm\" = [1000, 2000]\n"
            + "limits.'duty_ceiling_pct' = [\n10, # [x] '\n20, # d = [\n] # note",
      })
  void everyWayToWriteAKeyIsFound(String written) {
    SettingsEdit edit = SettingsEdit.of("car.toml", written + "\n" + Example.SENSORS_ONLY);
    edit.set("limits.duty_ceiling_pct", 12.5, 80).set("limits.trim_cap_pct", 7);
    assertThat(edit.load().orThrow().limits().dutyCeiling().values()).containsExactly(0.125, 0.8);
    assertThat(edit.load().orThrow().limits().trimCapDuty()).isEqualTo(0.07);
    edit.set("limits.duty_ceiling_rpm", 1, 2, 3000).set("limits.duty_ceiling_pct", 1, 2, 3);
    assertThat(edit.load().orThrow().limits().dutyCeiling().at(3000)).isEqualTo(0.03);
    assertThat(edit.text()).contains("# note").endsWith(Example.SENSORS_ONLY);
  }

  @Test
  void windowsLineEndingsAndByteOrderMarkStay() {
    String windows = "\uFEFF" + full.replace("\n", "\r\n");
    SettingsEdit edit = SettingsEdit.of("car.toml", windows);
    edit.set("limits.cutoff_kpa_abs", 205).set("limits.duty_ceiling_pct", 0, 85, 84, 52, 55, 58);
    assertThat(edit.text())
        .isEqualTo(
            windows
                .replace("cutoff_kpa_abs     = 200", "cutoff_kpa_abs     = 205")
                .replace("[   0,   85,   85,", "[   0,   85,   84,"));
    assertThat(edit.load().ok()).isTrue();
  }

  @Test
  void goodSettingsAreSavedAndBadOnesAreNot(@TempDir Path folder) throws IOException {
    Path file = folder.resolve("car.toml");
    Files.writeString(file, full);
    SettingsEdit good = SettingsEdit.open(file).set("limits.cutoff_kpa_abs", 195);
    assertThat(good.save(file).ok()).isTrue();
    assertThat(SettingsFile.load(file).orThrow().limits().cutoffKpaAbs()).isEqualTo(195.0);

    String before = Files.readString(file);
    SettingsEdit bad = SettingsEdit.open(file).set("limits.cutoff_kpa_abs", 170);
    assertThat(bad.save(file).ok()).isFalse();
    assertThat(file).hasContent(before);
  }

  @Test
  void changeBySomebodyElseMeanwhileIsNotOverwritten(@TempDir Path folder) throws IOException {
    Path file = folder.resolve("car.toml");
    Files.writeString(file, full);
    SettingsEdit edit = SettingsEdit.open(file).set("limits.cutoff_kpa_abs", 195);
    String theirs = full.replace("Project car", "Their car");
    Files.writeString(file, theirs);
    assertThatThrownBy(() -> edit.save(file))
        .isInstanceOf(IOException.class)
        .hasMessageContaining("changed by somebody else");
    assertThat(file).hasContent(theirs);
  }

  @Test
  void twoChangesOneAfterTheOtherCanBothBeSaved(@TempDir Path folder) throws IOException {
    Path file = folder.resolve("car.toml");
    Files.writeString(file, full);
    SettingsEdit edit = SettingsEdit.open(file).set("limits.cutoff_kpa_abs", 195);
    edit.save(file);
    edit.set("limits.cutoff_kpa_abs", 196).save(file);
    assertThat(SettingsFile.load(file).orThrow().limits().cutoffKpaAbs()).isEqualTo(196.0);
  }

  private static List<String> lines(String text, String after, int count) {
    List<String> all = text.lines().toList();
    for (int i = 0; i < all.size(); i++) {
      if (all.get(i).startsWith(after)) {
        return all.subList(i + 1, i + 1 + count);
      }
    }
    return List.of();
  }

  private static List<Integer> commas(String line) {
    List<Integer> places = new ArrayList<>();
    for (int i = 0; i < line.length() && line.charAt(i) != '#'; i++) {
      if (line.charAt(i) == ',') {
        places.add(i);
      }
    }
    return places;
  }
}
