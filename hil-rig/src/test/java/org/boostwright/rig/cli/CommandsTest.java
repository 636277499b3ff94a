package org.boostwright.rig.cli;

import static org.assertj.core.api.Assertions.assertThat;

import com.fasterxml.jackson.databind.JsonNode;
import com.fasterxml.jackson.databind.ObjectMapper;
import java.io.PrintWriter;
import java.io.StringWriter;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.List;
import java.util.Locale;
import org.boostwright.rig.scenario.ProjectCarSettings;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;

/** The commands as people and programs meet them: options in, text, JSON and exit code out. */
class CommandsTest {
  private static final Path ROOT = Path.of(System.getProperty("boostwright.root"));

  private final StringWriter out = new StringWriter();
  private final StringWriter err = new StringWriter();

  @TempDir Path folder;

  private int run(String... args) {
    return Boostwright.run(
        new Terminal(new PrintWriter(out), new PrintWriter(err), false, false), args);
  }

  private JsonNode json() throws Exception {
    return new ObjectMapper().readTree(out.toString());
  }

  private static double value(JsonNode json, String id) {
    for (JsonNode m : json.get("measurements")) {
      if (m.get("id").asText().equals(id)) {
        return m.get("value").asDouble();
      }
    }
    throw new AssertionError(id + " is not in " + json);
  }

  private static void assertDocumented(JsonNode json) throws Exception {
    String docs = Files.readString(ROOT.resolve("docs/json.md"));
    for (JsonNode m : json.get("measurements")) {
      assertThat(docs.contains("`" + m.get("id").asText() + "`"))
          .as("%s is in docs/json.md", m.get("id").asText())
          .isTrue();
    }
  }

  private Path settings(String text) throws Exception {
    return Files.writeString(folder.resolve("car.toml"), text);
  }

  private static String projectCar() {
    return ProjectCarSettings.text();
  }

  @Test
  void checkPassesTheBuiltInCarAndSaysThatItTookIt() throws Exception {
    assertThat(run("check", "--json")).isEqualTo(0);
    JsonNode json = json();
    assertThat(json.get("verdict").asText()).isEqualTo("passed");
    assertThat(json.get("settings_digest").asText()).hasSize(64);
    assertThat(json.get("provenance").get("settings").asText()).contains("built-in");
    // 14 V over the 30 ohm of docs/project-car.toml.
    assertThat(value(json, "coil.current_a")).isEqualTo(14.0 / 30.0);
    assertDocumented(json);
  }

  @Test
  void checkFailsWithPlaceAndAdviceForATargetAboveTheLimit() throws Exception {
    Path file =
        settings(projectCar().replace("[ 140,  160,  172,  180,", "[ 140,  160,  172,  310,"));
    assertThat(run("check", file.toString(), "--json")).isEqualTo(1);
    JsonNode finding = json().get("findings").get(0);
    assertThat(finding.get("severity").asText()).isEqualTo("problem");
    assertThat(finding.get("text").asText())
        .matches(".*car\\.toml:\\d+:\\d+: .*310 kPa absolute.*200 kPa absolute.*");
    assertThat(finding.get("next").asText()).isNotBlank();
  }

  @Test
  void checkOfAMissingFileIsWrongUse() {
    assertThat(run("check", folder.resolve("none.toml").toString())).isEqualTo(2);
    assertThat(err.toString()).contains("none.toml does not exist");
  }

  @Test
  void settingsGivenTwiceAreWrongUse() {
    assertThat(run("check", "a.toml", "--settings", "b.toml")).isEqualTo(2);
  }

  @Test
  void carTraceFollowsTheIndependentSolution() throws Exception {
    // Reference: the independent stiff solution of the same equations, 2 % of reading.
    assertThat(run("car", "--engine", "published", "--rpm", "3000", "--step-from", "15", "--csv"))
        .isEqualTo(0);
    List<String> lines = out.toString().lines().toList();
    List<String> reference =
        Files.readAllLines(
            Path.of(
                getClass()
                    .getResource("/engine-reference/tip-in-published-3000rpm-lift0.0.csv")
                    .toURI()));
    assertThat(lines.get(0)).isEqualTo(reference.get(0));
    assertThat(lines).hasSameSizeAs(reference);
    for (int i = 1; i < lines.size(); i++) {
      String[] ours = lines.get(i).split(",");
      String[] theirs = reference.get(i).split(",");
      assertThat(ours[0]).isEqualTo(theirs[0]);
      for (int c = 1; c < theirs.length; c++) {
        double expected = Double.parseDouble(theirs[c]);
        assertThat(Double.parseDouble(ours[c]))
            .as("row %d column %d", i, c)
            .isBetween(0.98 * expected, 1.02 * expected);
      }
    }
  }

  @Test
  void carGivesTheDocumentedMeasurements() throws Exception {
    assertThat(run("car", "--rpm", "4500", "--wastegate-open", "0.2", "--json")).isEqualTo(0);
    // Reference row 4500,100,0.2 of the project car: 214.1, 215.2, 295.9 kPa and 181.7 krpm.
    assertThat(value(json(), "car.intake_kpa")).isBetween(212.0, 216.2);
    assertThat(value(json(), "car.turbo_krpm")).isBetween(179.9, 183.5);
    assertDocumented(json());
  }

  @Test
  void carOutsideItsRangeIsWrongUse() {
    assertThat(run("car", "--rpm", "90000")).isEqualTo(2);
    assertThat(run("car", "--rpm", "NaN")).isEqualTo(2);
    assertThat(run("car")).isEqualTo(2);
  }

  /** Key on, start at 5 s, pull from 10 s to 18 s, all changes as fast as an engine makes them. */
  private Path log(double boostKpaAbs) throws Exception {
    StringBuilder csv =
        new StringBuilder("Time [s],MAP [kPa],Engine speed [rpm],Throttle [%],Road speed [km/h]\n");
    for (int i = 0; i <= 400; i++) {
      double t = i * 0.05;
      boolean running = t > 5.0;
      double pull = Math.max(0.0, Math.min(1.0, Math.min(t - 10.0, 18.0 - t) / 0.5));
      csv.append(
          String.format(
              Locale.ROOT,
              "%.2f,%.1f,%.0f,%.0f,%d%n",
              t,
              running ? 40.0 + pull * (boostKpaAbs - 40.0) : 101.0,
              running ? 1500.0 + 2500.0 * Math.max(0.0, Math.min(1.0, (t - 6.0) / 4.0)) : 0.0,
              running ? 5.0 + 95.0 * pull : 5.0,
              running ? 60 : 0));
    }
    return Files.writeString(folder.resolve("drive.csv"), csv.toString());
  }

  @Test
  void replayOfASoundDrivePassesAndKeepsItsReport() throws Exception {
    Path kept = folder.resolve("run");
    assertThat(run("replay", log(175).toString(), "--out", kept.toString(), "--json")).isEqualTo(0);
    JsonNode json = json();
    assertThat(value(json, "replay.faults")).isZero();
    assertThat(value(json, "replay.seconds_controlling")).isBetween(7.0, 8.5);
    assertThat(kept.resolve("report.html")).exists();
    assertThat(Files.readString(kept.resolve("result.json"))).isEqualTo(out.toString());
    assertDocumented(json);
  }

  @Test
  void replayOfAnOverboostFailsAndSaysWhere() throws Exception {
    Path kept = folder.resolve("run");
    assertThat(run("replay", log(215).toString(), "--out", kept.toString(), "--json")).isEqualTo(1);
    assertThat(json().get("findings").get(0).get("code").asText()).isEqualTo("overboost");
    assertThat(json().get("findings").get(0).get("text").asText()).contains("line ");
  }

  @Test
  void settingsChangedForOneRunTakeEffectAndAreRecorded() throws Exception {
    Path kept = folder.resolve("run");
    assertThat(
            run(
                "replay",
                log(215).toString(),
                "--out",
                kept.toString(),
                "--set",
                "limits.cutoff_kpa_abs=230",
                "--json"))
        .isEqualTo(0);
    assertThat(json().get("provenance").get("changed for this run").asText())
        .isEqualTo("limits.cutoff_kpa_abs=230");
  }

  @Test
  void unknownSettingIsWrongUseWithASuggestion() throws Exception {
    assertThat(run("replay", log(175).toString(), "--set", "limits.cutof_kpa_abs=230"))
        .isEqualTo(2);
    assertThat(err.toString()).contains("cutoff");
    assertThat(run("replay", log(175).toString(), "--set", "virtual.mass_kg=900")).isEqualTo(2);
    assertThat(run("replay", log(175).toString(), "--set", "nonsense")).isEqualTo(2);
  }

  @Test
  void pullPassesAndKeepsItsLog() throws Exception {
    Path kept = folder.resolve("run");
    assertThat(run("pull", "--to-rpm", "4000", "--out", kept.toString(), "--json")).isEqualTo(0);
    JsonNode json = json();
    assertThat(json.get("seed").asLong()).isEqualTo(1);
    assertThat(value(json, "pull.peak_map_kpa")).isBetween(170.0, 195.0);
    assertDocumented(json);
    List<String> log = Files.readAllLines(kept.resolve("log.csv"));
    assertThat(log.get(0)).startsWith("time_ns,map_raw_v").contains(",meta,true_map_kpa_abs");
    assertThat(log.get(1)).contains("settings=" + json.get("settings_digest").asText() + " ");
  }

  /**
   * A sensor that reads 25 kPa low deceives the controller, but never the verdict. The car is told
   * that its home is in the mountains and its ceiling is wide: else neither lets it come to that.
   */
  @Test
  void pullIsJudgedByTheTruePressure() throws Exception {
    Path kept = folder.resolve("run");
    assertThat(
            run(
                "pull",
                "--to-rpm",
                "4500",
                "--set",
                "virtual.map_offset_kpa=-25",
                "--set",
                "sensors.assumed_ambient_kpa_abs=76",
                "--set",
                "limits.duty_ceiling_pct=[0,85,85,85,85,85]",
                "--out",
                kept.toString(),
                "--json"))
        .isEqualTo(1);
    assertThat(value(json(), "pull.peak_map_kpa")).isGreaterThan(200.0);
    assertThat(value(json(), "pull.above_limit_ms")).isPositive();
  }

  @Test
  void virtualCarCanBeChangedForOneRun() throws Exception {
    Path kept = folder.resolve("run");
    String[] args = {
      "pull",
      "--to-rpm",
      "4000",
      "--out",
      kept.toString(),
      "--json",
      "--set",
      "virtual.mass_kg=2300"
    };
    assertThat(run(args)).isEqualTo(0);
    double heavy = value(json(), "pull.seconds");
    out.getBuffer().setLength(0);
    args[args.length - 1] = "virtual.mass_kg=1150";
    assertThat(run(args)).isEqualTo(0);
    assertThat(heavy).isGreaterThan(1.5 * value(json(), "pull.seconds"));
    assertThat(run("pull", "--set", "virtual.mass_kg=NaN")).isEqualTo(2);
    assertThat(run("pull", "--set", "virtual.wings=2")).isEqualTo(2);
  }

  @Test
  void pullWithRefusedSettingsIsWrongUseWithEveryProblem() throws Exception {
    Path file = settings(projectCar().replace("coil_ohms       = 30", "coil_ohms = 0\ncolour = 1"));
    assertThat(run("pull", "--settings", file.toString(), "--json")).isEqualTo(2);
    assertThat(json().get("findings")).hasSize(2);
    assertThat(json().get("verdict").asText()).isEqualTo("refused");
  }
}
