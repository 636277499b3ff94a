package org.boostwright.rig.result;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatThrownBy;

import com.fasterxml.jackson.databind.JsonNode;
import com.fasterxml.jackson.databind.ObjectMapper;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.List;
import java.util.stream.Stream;
import org.boostwright.core.settings.PressureUnit;
import org.boostwright.core.settings.UnitSettings;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;

class ResultJsonTest {
  private static ResultBuilder sample() {
    return new ResultBuilder("pull")
        .headline("Peak \"182.4\" <kPa>")
        .settingsDigest("ab12")
        .seed(Long.MAX_VALUE)
        .units(new UnitSettings(PressureUnit.PSI, true))
        .measure("pull.peak_map_kpa", "highest pressure", 182.4, Units.KPA_ABS, Double.NaN, 200)
        .measure("pull.spool_s", "time to target", Double.NaN, Units.SECONDS)
        .find("outside_table", Severity.NOTE, "3 lookups", "widen the table")
        .add(
            new Plot(
                "pull",
                "the pull",
                "time",
                Units.SECONDS,
                new double[] {0, 0.005},
                List.of(
                    new Plot.Line(
                        "map",
                        "MAP",
                        Units.KPA_ABS,
                        Plot.Stroke.DASHED,
                        new double[] {1.0 / 3, Double.POSITIVE_INFINITY})),
                List.of(new Plot.Limit("overboost limit", Units.KPA_ABS, 200)),
                List.of(new Plot.Band("controlling", 0, 0.005))))
        .add(
            new HeatTable(
                "base_duty",
                "base duty",
                "throttle",
                Units.PERCENT,
                new double[] {50, 100},
                "engine speed",
                Units.RPM,
                new double[] {3000},
                Units.PERCENT,
                new double[][] {{20}, {Double.NaN}}))
        .add(
            new TimeLine(
                "rest",
                "to rest",
                Units.MILLISECONDS,
                List.of(
                    new TimeLine.Row(
                        "wire open", List.of(new TimeLine.Mark("at rest", 18.5)), 40),
                    new TimeLine.Row(
                        "hose off", List.of(new TimeLine.Mark("at rest", 7)), Double.NaN))))
        .file("log", "runs/pull-1/log.csv")
        .provenance("settings", "car.toml")
        .caution("virtual");
  }

  @Test
  void jsonNeverHoldsNanOrInfinityAndNullComesBackAsNan() throws Exception {
    String json = ResultJson.toJson(sample().build());
    assertThat(json).doesNotContain("NaN").doesNotContain("Infinity");
    Result back = ResultJson.fromJson(json);
    assertThat(back.measurements().get(1).value()).isNaN();
    assertThat(back.series().get(0).lines().get(0).y()[1]).isNaN();
    assertThat(back.tables().get(0).values()[1][0]).isNaN();
  }

  @Test
  void readingBackAndWritingAgainGivesTheSameBytes() throws Exception {
    String json = ResultJson.toJson(sample().build());
    assertThat(ResultJson.toJson(ResultJson.fromJson(json))).isEqualTo(json);
  }

  @Test
  void aRowOfATimeLineOverItsLimitFailsTheCommand() {
    assertThat(sample().verdict()).isEqualTo(Verdict.PASSED);
    for (double at : new double[] {40.001, Double.NaN}) {
      TimeLine.Row late = new TimeLine.Row("wire", List.of(new TimeLine.Mark("at rest", at)), 40);
      assertThat(sample().add(new TimeLine("l", "l", "ms", List.of(late))).verdict())
          .isEqualTo(Verdict.FAILED);
    }
  }

  @Test
  void fieldsAreNamedAsDocumented() throws Exception {
    JsonNode n = new ObjectMapper().readTree(ResultJson.toJson(sample().build()));
    assertThat(n.get("command").asText()).isEqualTo("pull");
    assertThat(n.get("verdict").asText()).isEqualTo("passed");
    assertThat(n.get("settings_digest").asText()).isEqualTo("ab12");
    assertThat(n.get("seed").asLong()).isEqualTo(Long.MAX_VALUE);
    JsonNode m = n.get("measurements").get(0);
    assertThat(m.get("id").asText()).isEqualTo("pull.peak_map_kpa");
    assertThat(m.get("value").asDouble()).isEqualTo(182.4);
    assertThat(m.get("low").isNull()).isTrue();
    assertThat(m.get("high").asDouble()).isEqualTo(200.0);
    assertThat(m.get("verdict").asText()).isEqualTo("passed");
    assertThat(n.get("findings").get(0).get("next").asText()).isEqualTo("widen the table");
    assertThat(n.get("files").get("log").asText()).isEqualTo("runs/pull-1/log.csv");
  }

  @Test
  void aMeasurementThatCouldNotBeTakenFailsTheCommandAndItsTwinPasses() {
    assertThat(new ResultBuilder("x").measure("x.y", "y", Double.NaN, "s", 0, 1).build().verdict())
        .isEqualTo(Verdict.FAILED);
    assertThat(new ResultBuilder("x").measure("x.y", "y", 1, "s", 0, 1).build().verdict())
        .isEqualTo(Verdict.PASSED);
    assertThat(new ResultBuilder("x").measure("x.y", "y", 1.01, "s", 0, 1).build().verdict())
        .isEqualTo(Verdict.FAILED);
    assertThat(new ResultBuilder("x").measure("x.y", "y", -0.01, "s", 0, 1).build().verdict())
        .isEqualTo(Verdict.FAILED);
  }

  @Test
  void refusedWinsOverFailed() {
    Result r =
        new ResultBuilder("x")
            .measure("x.y", "y", 2, "s", 0, 1)
            .refuse("engine_runs", "the engine runs", "stop it")
            .build();
    assertThat(r.verdict()).isEqualTo(Verdict.REFUSED);
  }

  @Test
  void whatIsNotAResultIsRefusedWithItsPlace() {
    assertThatThrownBy(() -> ResultJson.fromJson("{\"command\": 3}"))
        .isInstanceOf(UnreadableResultException.class)
        .hasMessageContaining("\"command\"");
    assertThatThrownBy(() -> ResultJson.fromJson("{\n\"command\": }"))
        .isInstanceOf(UnreadableResultException.class)
        .hasMessageContaining("line 2");
    assertThatThrownBy(
            () ->
                ResultJson.fromJson("{\"command\":\"x\",\"version\":\"1\",\"verdict\":\"maybe\"}"))
        .isInstanceOf(UnreadableResultException.class)
        .hasMessageContaining("passed, failed, refused");
    assertThatThrownBy(() -> ResultJson.fromJson("")).isInstanceOf(UnreadableResultException.class);
  }

  @Test
  void writingReplacesTheFileAndLeavesNoTemporaryBehind(@TempDir Path folder) throws Exception {
    Path file = folder.resolve("result.json");
    Files.writeString(file, "old");
    Result result = sample().build();
    ResultJson.write(file, result);
    assertThat(ResultJson.toJson(ResultJson.read(file))).isEqualTo(ResultJson.toJson(result));
    try (Stream<Path> left = Files.list(folder)) {
      assertThat(left).containsExactly(file);
    }
  }

  @Test
  void linesAndTablesOfTheWrongLengthAreRefused() {
    assertThatThrownBy(
            () ->
                new Plot(
                    "p",
                    "",
                    "",
                    "",
                    new double[2],
                    List.of(new Plot.Line("l", "", "", Plot.Stroke.SOLID, new double[3])),
                    List.of(),
                    List.of()))
        .isInstanceOf(IllegalArgumentException.class);
    assertThatThrownBy(
            () ->
                new HeatTable(
                    "t",
                    "",
                    "",
                    "",
                    new double[1],
                    "",
                    "",
                    new double[2],
                    "",
                    new double[][] {{1}}))
        .isInstanceOf(IllegalArgumentException.class);
  }
}
