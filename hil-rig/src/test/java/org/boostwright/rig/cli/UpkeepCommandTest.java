package org.boostwright.rig.cli;

import static org.assertj.core.api.Assertions.assertThat;

import com.fasterxml.jackson.databind.JsonNode;
import com.fasterxml.jackson.databind.ObjectMapper;
import java.io.PrintWriter;
import java.io.StringWriter;
import java.nio.charset.StandardCharsets;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.List;
import org.boostwright.core.ladder.Rung;
import org.boostwright.core.settings.file.HoursFile;
import org.boostwright.core.settings.file.LadderFile;
import org.boostwright.core.settings.file.SettingsEdit;
import org.boostwright.core.settings.file.SettingsFile;
import org.boostwright.core.settings.file.SettingsHistory;
import org.boostwright.core.upkeep.OperatingHours;
import org.boostwright.rig.scenario.ProjectCarSettings;
import org.junit.jupiter.api.BeforeEach;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;

/** Hours, drift, history and record as people and programs meet them. */
class UpkeepCommandTest {
  private static final Path ROOT = Path.of(System.getProperty("boostwright.root"));

  @TempDir Path folder;
  private Path car;
  private Path data;
  private StringWriter out = new StringWriter();

  @BeforeEach
  void settings() throws Exception {
    car = Files.writeString(folder.resolve("car.toml"), ProjectCarSettings.text());
    data = folder.resolve("data");
  }

  private int run(String... args) {
    out = new StringWriter();
    PrintWriter to = new PrintWriter(out);
    return Boostwright.run(
        new Terminal(to, new PrintWriter(new StringWriter()), false, false), args);
  }

  private int upkeep(String... more) throws Exception {
    List<String> args =
        new ArrayList<>(
            List.of("upkeep", "--settings=" + car, "--data=" + data, "--practice", "--json"));
    args.addAll(List.of(more));
    int code = run(args.toArray(String[]::new));
    String docs = Files.readString(ROOT.resolve("docs/json.md"));
    for (JsonNode m : json().get("measurements")) {
      assertThat(docs).contains("`" + m.get("id").asText() + "`");
    }
    return code;
  }

  private void stage(String... more) {
    List<String> args = new ArrayList<>(List.of("stage", "--settings=" + car, "--practice"));
    args.addAll(List.of(more));
    assertThat(run(args.toArray(String[]::new))).as(out.toString()).isEqualTo(0);
  }

  private JsonNode json() throws Exception {
    return new ObjectMapper().readTree(out.toString());
  }

  private double value(String id) throws Exception {
    for (JsonNode m : json().get("measurements")) {
      if (m.get("id").asText().equals(id)) {
        return m.get("value").asDouble();
      }
    }
    throw new AssertionError("no " + id + " in " + out);
  }

  private List<String> texts(String code) throws Exception {
    List<String> texts = new ArrayList<>();
    for (JsonNode f : json().get("findings")) {
      if (f.get("code").asText().equals(code)) {
        texts.add(f.get("text").asText());
      }
    }
    return texts;
  }

  /** What 'drive' does at its start. */
  private void driven(int day) throws Exception {
    byte[] bytes = Files.readAllBytes(car);
    String date = "2026-05-%02dT10:20:30Z".formatted(day);
    SettingsHistory.keep(data, bytes, SettingsFile.load(car).orThrow(), date);
  }

  private void edit(String key, double value) throws Exception {
    SettingsEdit.open(car).set(key, value).save(car);
  }

  @Test
  void hoursAndYearlyListAreShown() throws Exception {
    assertThat(upkeep()).isEqualTo(0);
    assertThat(texts("hours_none")).hasSize(1);
    HoursFile.write(
        HoursFile.in(data), new OperatingHours("2026-01-01T00:00:00Z", 7, 9000.0, 1800.0, 54000.4));
    assertThat(upkeep()).isEqualTo(0);
    assertThat(value("upkeep.engine_h")).isEqualTo(2.5);
    assertThat(value("upkeep.driven_h")).isEqualTo(0.5);
    assertThat(value("upkeep.valve_cycles")).isEqualTo(54000.0);
    assertThat(value("upkeep.starts")).isEqualTo(7.0);
    assertThat(texts("yearly")).hasSizeGreaterThan(8);
    Files.writeString(HoursFile.in(data), "boostwright hours 1\n");
    assertThat(upkeep()).isEqualTo(0);
    assertThat(texts("hours_damaged")).hasSize(1);
  }

  @Test
  void signedBenchesAreComparedUntilTheValveIsNew() throws Exception {
    stage("--drive", "--out=" + folder.resolve("s"));
    stage("--sign=bench");
    assertThat(upkeep()).isEqualTo(0);
    assertThat(value("drift.on_delay")).isZero();
    assertThat(texts("drift_on_delay").get(0)).contains("2 benches of this part");
    assertThat(json().get("headline").asText()).isEqualTo("Nothing is due.");
    stage("--changed=valve", "--reason=new");
    stage("--drive", "--out=" + folder.resolve("s"));
    assertThat(upkeep()).isEqualTo(0);
    assertThat(texts("drift_on_delay").get(0)).contains("1 bench of this part");
  }

  @Test
  void whatWasDrivenWithIsListedComparedAndBroughtBackWithItsComments() throws Exception {
    driven(1);
    String first = Files.readString(car);
    edit("limits.trim_cap_pct", 5.0);
    driven(2);
    edit("limits.trim_cap_pct", 7.0);
    assertThat(upkeep("history")).isEqualTo(0);
    assertThat(value("upkeep.settings_kept")).isEqualTo(2.0);
    assertThat(texts("history").get(1))
        .contains("2026-05-02 10:20 UTC")
        .contains("1 value changed");
    assertThat(upkeep("diff", "1", "2")).isEqualTo(0);
    assertThat(texts("setting_changed")).containsExactly("limits.trim_cap_pct: 10 % -> 5 %");
    assertThat(upkeep("diff", "1")).isEqualTo(0);
    assertThat(texts("setting_changed")).containsExactly("limits.trim_cap_pct: 10 % -> 7 %");

    assertThat(upkeep("restore", "1")).isEqualTo(0);
    assertThat(Files.readString(car)).isEqualTo(first).contains("# CAUTION");
    // What it replaced was never driven with and can be had again all the same.
    assertThat(upkeep("restore", "3")).isEqualTo(0);
    assertThat(SettingsFile.load(car).orThrow().limits().trimCapDuty()).isEqualTo(0.07);
  }

  @Test
  void restoringBringsDownWhatWasNotProvenLastWithIt() throws Exception {
    driven(1);
    edit("limits.cutoff_kpa_abs", 195.0);
    stage("--drive", "--out=" + folder.resolve("s"));
    stage("--drive", "--out=" + folder.resolve("s"));
    driven(2);
    assertThat(LadderFile.standing(car, SettingsFile.load(car).orThrow(), true).next())
        .isEqualTo(Rung.FIRST_START);
    assertThat(upkeep("restore", "1")).isEqualTo(0);
    assertThat(value("upkeep.rungs_fallen")).isEqualTo(1.0);
    assertThat(texts("rung_fallen").get(0)).contains(Rung.CUT_PROVEN.words());
    assertThat(LadderFile.standing(car, SettingsFile.load(car).orThrow(), true).next())
        .isEqualTo(Rung.CUT_PROVEN);
    // The twin: back to what was proven last, everything stands again.
    assertThat(upkeep("restore", "2")).isEqualTo(0);
    assertThat(value("upkeep.rungs_fallen")).isZero();
    assertThat(LadderFile.standing(car, SettingsFile.load(car).orThrow(), true).next())
        .isEqualTo(Rung.FIRST_START);
  }

  @Test
  void aRestoreDoesNotUndoReportedWork() throws Exception {
    stage("--drive", "--out=" + folder.resolve("s"));
    driven(1);
    stage("--changed=valve", "--reason=new");
    edit("limits.trim_cap_pct", 5.0);
    assertThat(upkeep("restore", "1")).isEqualTo(0);
    assertThat(LadderFile.standing(car, SettingsFile.load(car).orThrow(), true).next())
        .isEqualTo(Rung.BENCH);
  }

  @Test
  void aDamagedOneIsRefusedAndNothingIsWritten() throws Exception {
    driven(1);
    edit("limits.trim_cap_pct", 5.0);
    String before = Files.readString(car);
    Path kept = SettingsHistory.list(data).get(0).file();
    byte[] bytes = Files.readAllBytes(kept);
    bytes[100] ^= 1;
    Files.write(kept, bytes);
    assertThat(upkeep("restore", "1")).isEqualTo(1);
    assertThat(json().get("verdict").asText()).isEqualTo("refused");
    assertThat(Files.readString(car)).isEqualTo(before);
    assertThat(upkeep("restore", "9")).isEqualTo(2);
    assertThat(upkeep("restore")).isEqualTo(2);
    assertThat(upkeep("drive")).isEqualTo(2);
    assertThat(upkeep("--campaign=x")).isEqualTo(2);
  }

  @Test
  void aFileThatNoLongerLoadsIsKeptBesideTheRestoredOne() throws Exception {
    driven(1);
    Files.writeString(car, "schema = 1\nnonsense = 4\n");
    assertThat(upkeep("restore", "1")).isEqualTo(0);
    assertThat(Files.readString(car)).isEqualTo(ProjectCarSettings.text());
    assertThat(Files.readString(folder.resolve("car.toml.replaced"))).contains("nonsense");
  }

  @Test
  void theRecordHoldsPartsLimitsProofsStandingHoursAndTheWayBack() throws Exception {
    stage("--drive", "--out=" + folder.resolve("s"));
    stage("--drive", "--out=" + folder.resolve("s"));
    stage("--skip=first_start", "--reason=runs for years, A. Owner answers for it");
    HoursFile.write(
        HoursFile.in(data), new OperatingHours("2026-01-01T00:00:00Z", 7, 9000.0, 1800.0, 54000.0));
    assertThat(run("faults", "--runs=4", "--settings=" + car, "--out=" + folder.resolve("faults")))
        .as(out.toString())
        .isEqualTo(0);
    Path record = folder.resolve("record");
    assertThat(upkeep("record", "--campaign=" + folder.resolve("faults"), "--out=" + record))
        .isEqualTo(0);
    assertThat(value("faults.runs")).isEqualTo(4.0);
    assertThat(value("valve.t_on_ms")).isPositive();
    assertThat(value("upkeep.valve_cycles")).isEqualTo(54000.0);
    assertThat(texts("limits").get(0)).contains("overboost 200 kPa absolute");
    assertThat(texts("rung_first_start_skipped").get(0)).contains("A. Owner answers for it");
    assertThat(texts("campaign")).hasSize(1);
    String page = Files.readString(record.resolve("report.html"), StandardCharsets.UTF_8);
    assertThat(page).contains("Back to the plain spring").contains("A. Owner answers for it");
    assertThat(record.resolve("car.toml")).hasSameTextualContentAs(car);
    assertThat(record.resolve("car.practice.ladder.txt")).exists();
    assertThat(record.resolve("car.practice.bench-proof.txt")).exists();

    edit("limits.trim_cap_pct", 5.0);
    assertThat(upkeep("record", "--campaign=" + folder.resolve("faults"), "--out=" + record))
        .isEqualTo(0);
    assertThat(texts("campaign_other_settings").get(0)).contains("other settings");
  }
}
