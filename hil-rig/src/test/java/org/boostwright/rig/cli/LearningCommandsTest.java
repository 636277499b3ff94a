package org.boostwright.rig.cli;

import static org.assertj.core.api.Assertions.assertThat;

import com.fasterxml.jackson.databind.JsonNode;
import com.fasterxml.jackson.databind.ObjectMapper;
import java.io.IOException;
import java.io.PrintWriter;
import java.io.StringWriter;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.List;
import java.util.stream.Stream;
import org.boostwright.core.settings.Settings;
import org.boostwright.core.settings.file.SettingsFile;
import org.boostwright.rig.scenario.ProjectCarSettings;
import org.junit.jupiter.api.BeforeAll;
import org.junit.jupiter.api.BeforeEach;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;

/**
 * {@code correct}, {@code gains} and {@code replay --what-if} as people and programs meet them, on
 * two virtual pulls with base duty three to six percent short and no pressure feedback.
 */
class LearningCommandsTest {
  private static final Path ROOT = Path.of(System.getProperty("boostwright.root"));
  private static final String GOOD = "[   0,   12,   28,   34,   37,   41,   44],";
  private static final String SHORT = "[   0,   12,   24,   29,   31,   35,   38],";

  @TempDir static Path drives;
  private static Path driven;

  @TempDir Path folder;
  private StringWriter out;
  private StringWriter err;

  private int run(String... args) {
    return Boostwright.run(
        new Terminal(new PrintWriter(out), new PrintWriter(err), false, false), args);
  }

  @BeforeAll
  static void drive() throws IOException {
    String text = ProjectCarSettings.text();
    assertThat(text).contains(GOOD);
    String feedbackOff =
        text.replace(GOOD, SHORT)
            .replace("enabled          = true\nrpm  ", "enabled          = false\nrpm  ");
    driven = Files.writeString(drives.resolve("car.toml"), feedbackOff);
    LearningCommandsTest driver = new LearningCommandsTest();
    for (String seed : List.of("1", "2")) {
      driver.newTerminal();
      int code =
          driver.run(
              "pull", "--settings", driven.toString(), "--seed", seed, "--out", folder(seed));
      assertThat(code).as(driver.err.toString()).isEqualTo(0);
    }
  }

  @BeforeEach
  void newTerminal() {
    out = new StringWriter();
    err = new StringWriter();
  }

  private static String folder(String seed) {
    return drives.resolve("pull-" + seed).toString();
  }

  private static String log(String seed) {
    return drives.resolve("pull-" + seed).resolve("log.csv").toString();
  }

  private String kept() {
    return folder.resolve("run").toString();
  }

  private JsonNode json() throws IOException {
    return new ObjectMapper().readTree(out.toString());
  }

  private void assertDocumented() throws IOException {
    String docs = Files.readString(ROOT.resolve("docs/json.md"));
    assertThat(json().get("measurements")).isNotEmpty();
    for (JsonNode m : json().get("measurements")) {
      assertThat(docs).contains("`" + m.get("id").asText() + "`");
    }
  }

  private void assertFound(String code) throws IOException {
    assertThat(json().findValuesAsText("code")).contains(code);
  }

  /** Every comment, in order. */
  private static List<String> comments(Path file) throws IOException {
    return Files.readAllLines(file).stream()
        .filter(line -> line.contains("#"))
        .map(line -> line.substring(line.indexOf('#')))
        .toList();
  }

  private static Settings load(Path file) throws IOException {
    return SettingsFile.load(file).orThrow();
  }

  /** Nothing of the way there is left behind. */
  private void assertOnly(Path parent, String... names) throws IOException {
    try (Stream<Path> files = Files.list(parent)) {
      assertThat(files.map(file -> file.getFileName().toString()))
          .containsExactlyInAnyOrder(names);
    }
  }

  @Test
  void correctRaisesAShortTableAndKeepsEveryComment() throws Exception {
    Path fresh = folder.resolve("fresh.toml");
    int code =
        run(
            "correct",
            "--settings",
            driven.toString(),
            "--write",
            fresh.toString(),
            "--out",
            kept(),
            "--json",
            log("1"),
            log("2"));
    assertThat(code).as(out + "" + err).isEqualTo(0);
    assertThat(json().get("verdict").asText()).isEqualTo("passed");
    assertDocumented();
    assertThat(comments(fresh)).isEqualTo(comments(driven));
    double before = load(driven).baseDuty().at(100.0, 4500.0);
    assertThat(load(fresh).baseDuty().at(100.0, 4500.0)).isBetween(before + 0.02, before + 0.051);
    assertThat(Files.readString(folder.resolve("run/car.toml"))).isEqualTo(Files.readString(fresh));
    assertOnly(folder, "fresh.toml", "run");
    assertOnly(folder.resolve("run"), "car.toml", "report.html", "result.json");
  }

  @Test
  void correctReplacesAFileOnlyWhenTold() throws Exception {
    Path mine = Files.writeString(folder.resolve("mine.toml"), "# mine\n");
    String[] args = {
      "correct", "--settings", driven.toString(), "--write", mine.toString(), "--out", kept(),
      "--quiet", log("1"), log("2")
    };
    assertThat(run(args)).isEqualTo(2);
    assertThat(err.toString()).contains("mine.toml is there already").contains("--overwrite");
    assertThat(Files.readString(mine)).isEqualTo("# mine\n");
    assertThat(folder.resolve("run")).doesNotExist();
    args[args.length - 3] = "--overwrite";
    assertThat(run(args)).isEqualTo(0);
    assertThat(comments(mine)).isEqualTo(comments(driven));
  }

  @Test
  void correctRefusesLogsOfAnotherTableAndWritesNothing() throws Exception {
    Path fresh = folder.resolve("fresh.toml");
    int code =
        run("correct", "--write", fresh.toString(), "--out", kept(), "--json", log("1"), log("2"));
    assertThat(code).isEqualTo(1);
    assertThat(json().get("verdict").asText()).isEqualTo("refused");
    assertFound("other_table_recorded");
    assertThat(fresh).doesNotExist();
    assertThat(folder.resolve("run/car.toml")).doesNotExist();
  }

  @Test
  void correctOfAMissingLogIsWrongUse() {
    assertThat(run("correct", folder.resolve("none.csv").toString())).isEqualTo(2);
    assertThat(err.toString()).contains("none.csv");
  }

  @Test
  void quietIsOneLine() {
    int code =
        run(
            "correct",
            "--settings",
            driven.toString(),
            "--out",
            kept(),
            "--quiet",
            log("1"),
            log("2"));
    assertThat(code).isEqualTo(0);
    assertThat(out.toString().lines()).hasSize(1).allMatch(l -> l.startsWith("correct passed: "));
    assertThat(err.toString()).isEmpty();
  }

  @Test
  void gainsOffersWhatPassedItsProofAndKeepsEveryComment() throws Exception {
    int code =
        run(
            "gains",
            "--settings",
            driven.toString(),
            "--cars",
            "20",
            "--out",
            kept(),
            "--json",
            log("1"),
            log("2"));
    assertThat(code).as(out + "" + err).isEqualTo(0);
    assertDocumented();
    Path fresh = folder.resolve("run/car.toml");
    assertThat(comments(fresh)).isEqualTo(comments(driven));
    assertThat(load(driven).feedback().enabled()).isFalse();
    assertThat(load(fresh).feedback().enabled()).isTrue();
    assertThat(load(fresh).feedback().kpDutyPerKpa().at(4500.0)).isPositive();
    assertThat(load(fresh).baseDuty()).isEqualTo(load(driven).baseDuty());
  }

  @Test
  void gainsRefusesALogWithoutAPull() throws Exception {
    assertThat(run("gains", "--out", kept(), "--json", atRest().toString())).isEqualTo(1);
    assertThat(json().get("verdict").asText()).isEqualTo("refused");
    assertFound("no_usable_pull");
    assertThat(folder.resolve("run/car.toml")).doesNotExist();
  }

  @Test
  void gainsRefusesTooFewCarsAndAnUnknownPace() {
    assertThat(run("gains", "--cars", "5", log("1"))).isEqualTo(2);
    assertThat(err.toString()).contains("--cars");
    assertThat(run("gains", "--pace", "wild", log("1"))).isEqualTo(2);
  }

  @Test
  void whatIfForeseesMoreBoostAndSaysThatItIsComputed() throws Exception {
    Path other = Files.writeString(folder.resolve("other.toml"), ProjectCarSettings.text());
    int code = whatIf(other, log("1"));
    assertThat(code).as(out + "" + err).isEqualTo(0);
    assertDocumented();
    assertThat(json().get("headline").asText()).startsWith("What if, computed: 1 pull,");
    // The target is 180 kPa, the recording stayed about 9 below.
    double recorded = value("whatif.recorded_peak_kpa");
    assertThat(recorded).isBetween(168.0, 175.0);
    assertThat(value("whatif.peak_kpa")).isBetween(recorded + 5.0, 188.0);
  }

  @Test
  void whatIfRefusesALogWithoutAPull() throws Exception {
    assertThat(whatIf(driven, atRest().toString())).isEqualTo(1);
    assertFound("whatif_no_pull");
  }

  private int whatIf(Path other, String log) {
    return run(
        "replay",
        "--settings",
        driven.toString(),
        "--what-if",
        other.toString(),
        "--out",
        kept(),
        "--json",
        log);
  }

  private double value(String id) throws IOException {
    for (JsonNode m : json().get("measurements")) {
      if (m.get("id").asText().equals(id)) {
        return m.get("value").asDouble();
      }
    }
    throw new AssertionError(id + " is not in " + json());
  }

  /** The first ten seconds of a drive: no pull yet. */
  private Path atRest() throws IOException {
    List<String> lines = Files.readAllLines(Path.of(log("1")));
    return Files.write(folder.resolve("rest.csv"), lines.subList(0, 2000));
  }
}
