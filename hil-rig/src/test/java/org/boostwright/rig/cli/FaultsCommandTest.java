package org.boostwright.rig.cli;

import static org.assertj.core.api.Assertions.assertThat;

import com.fasterxml.jackson.databind.JsonNode;
import com.fasterxml.jackson.databind.ObjectMapper;
import java.io.PrintWriter;
import java.io.StringWriter;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.List;
import org.boostwright.rig.inject.FaultKinds;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;

/** The faults command as people and programs meet it. */
class FaultsCommandTest {
  private static final Path ROOT = Path.of(System.getProperty("boostwright.root", "."));

  private final StringWriter out = new StringWriter();
  private final StringWriter err = new StringWriter();

  @TempDir Path folder;

  private int run(String... args) {
    out.getBuffer().setLength(0);
    err.getBuffer().setLength(0);
    return Boostwright.run(
        new Terminal(new PrintWriter(out), new PrintWriter(err), false, false), args);
  }

  private JsonNode json() throws Exception {
    return new ObjectMapper().readTree(out.toString());
  }

  private static JsonNode measurement(JsonNode json, String id) {
    for (JsonNode m : json.get("measurements")) {
      if (m.get("id").asText().equals(id)) {
        return m;
      }
    }
    throw new AssertionError(id + " is not in " + json);
  }

  private String sub(String name) {
    return folder.resolve(name).toString();
  }

  @Test
  void aCampaignInSharesComesToTheSameAsInOne() throws Exception {
    String[] common = {"faults", "--runs", "12", "--seed", "5", "--json"};
    assertThat(run(with(common, "--out", sub("whole")))).isZero();
    JsonNode whole = json();
    assertThat(whole.get("verdict").asText()).isEqualTo("passed");
    assertThat(measurement(whole, "faults.runs").get("value").asDouble()).isPositive();
    assertThat(measurement(whole, "faults.unsafe").get("value").asDouble()).isZero();
    assertThat(measurement(whole, "faults.unsafe_rate_upper95").get("value").asDouble())
        .isBetween(0.1, 0.9);
    String docs = Files.readString(ROOT.resolve("docs/json.md"));
    for (JsonNode m : whole.get("measurements")) {
      assertThat(docs).contains("`" + m.get("id").asText() + "`");
    }
    for (int i = 1; i <= 2; i++) {
      run(with(common, "--shard", i + "/2", "--threads", "1", "--out", sub("part" + i)));
    }
    assertThat(
            run(
                "faults",
                "--merge",
                sub("part2"),
                "--merge",
                sub("part1"),
                "--json",
                "--out",
                sub("merged")))
        .isZero();
    assertThat(json().get("measurements")).isEqualTo(whole.get("measurements"));
    assertThat(folder.resolve("merged/runs.csv"))
        .hasSameBinaryContentAs(folder.resolve("whole/runs.csv"));
    assertThat(folder.resolve("merged/kinds.csv"))
        .hasSameBinaryContentAs(folder.resolve("whole/kinds.csv"));
    assertThat(run("faults", "--merge", sub("part1"))).isEqualTo(2);
    assertThat(err.toString()).contains("run 1 is missing");
  }

  private static String[] with(String[] common, String... more) {
    return java.util.stream.Stream.concat(
            java.util.Arrays.stream(common), java.util.Arrays.stream(more))
        .toArray(String[]::new);
  }

  @Test
  void aScenarioThatFailsEndsInOneWithItsJunitFile() throws Exception {
    Path good = ROOT.resolve("hil-rig/scenarios/s9_map_stale.toml");
    assertThat(run("faults", "--scenario", good.toString(), "--json", "--out", sub("good")))
        .isZero();
    assertThat(measurement(json(), "faults.scenario.s9_map_stale").get("value").asDouble())
        .isZero();
    Path bad =
        Files.writeString(
            folder.resolve("bad.toml"),
            Files.readString(good).replace("rest_within_ms = 20", "rest_within_ms = 5"));
    assertThat(run("faults", "--scenario", bad.toString(), "--out", sub("bad"))).isEqualTo(1);
    assertThat(out.toString()).contains("instead of 5 ms");
    assertThat(Files.readString(folder.resolve("bad/junit.xml"))).contains("<failure");
  }

  @Test
  void wrongWordsAreRefusedWithWhatToDo() {
    assertThat(run("faults", "--only", "s4_map_frozn")).isEqualTo(2);
    assertThat(err.toString()).contains("did you mean s4_map_frozen?");
    assertThat(run("faults", "--shard", "5/4")).isEqualTo(2);
    assertThat(run("faults", "--runs", "0")).isEqualTo(2);
    assertThat(run("faults", "--scenario", sub("none.toml"))).isEqualTo(2);
    assertThat(run("faults", "--safety-case", sub("case.md"))).isEqualTo(2);
    assertThat(err.toString()).contains("--merge FOLDER and --scenario FOLDER");
  }

  @Test
  void everyKindIsListed() {
    assertThat(run("faults", "--list")).isZero();
    assertThat(out.toString()).contains(FaultKinds.ids());
  }

  @Test
  void theSafetyCaseHasEveryRowAndNamesItsTests() throws Exception {
    assertThat(run("faults", "--runs", "8", "--out", sub("few"))).isZero();
    Path scenarios = Files.createDirectories(folder.resolve("scenarios"));
    Files.copy(ROOT.resolve("hil-rig/scenarios/s9_map_stale.toml"), scenarios.resolve("s9.toml"));
    Path page = folder.resolve("case.md");
    assertThat(
            run(
                "faults",
                "--merge",
                sub("few"),
                "--scenario",
                scenarios.toString(),
                "--safety-case",
                page.toString()))
        .isZero();
    String text = Files.readString(page);
    for (String row : List.of("S1", "S14", "P7", "E3", "B1", "L1", "T2", "C1", "W1", "D2")) {
      assertThat(text).contains("| " + row + " |");
    }
    assertThat(text).contains("`s9_map_stale`", "coil off after 15 ms, 20 allowed");
  }
}
