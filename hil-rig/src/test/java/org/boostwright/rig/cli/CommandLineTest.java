package org.boostwright.rig.cli;

import static org.assertj.core.api.Assertions.assertThat;

import com.fasterxml.jackson.databind.JsonNode;
import com.fasterxml.jackson.databind.ObjectMapper;
import java.io.PrintWriter;
import java.io.StringWriter;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.List;
import org.boostwright.rig.result.ResultBuilder;
import org.boostwright.rig.result.ResultJson;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;

class CommandLineTest {
  private final StringWriter out = new StringWriter();
  private final StringWriter err = new StringWriter();

  private int run(String... args) {
    return run(false, args);
  }

  private int run(boolean colours, String... args) {
    return Boostwright.run(
        new Terminal(new PrintWriter(out), new PrintWriter(err), colours, false), args);
  }

  @Test
  void withoutACommandItSaysWhatToDoFirst() {
    assertThat(run()).isEqualTo(0);
    assertThat(out.toString()).contains("boostwright demo");
    assertThat(out.toString().lines().count()).isLessThan(15);
  }

  @Test
  void unknownOptionIsWrongUseAndSuggestsTheRightOne() {
    assertThat(run("report", "--jsn", "x")).isEqualTo(2);
    assertThat(err.toString()).contains("--jsn").contains("did you mean --json");
    assertThat(out.toString()).isEmpty();
  }

  @Test
  void unknownCommandIsWrongUseAndSuggestsTheRightOne() {
    assertThat(run("reprot")).isEqualTo(2);
    assertThat(err.toString()).contains("did you mean report");
  }

  @Test
  void wrongUseWithJsonStillPrintsOneObject() throws Exception {
    assertThat(run("report", "no-such-run", "--json")).isEqualTo(2);
    JsonNode json = new ObjectMapper().readTree(out.toString());
    assertThat(json.get("verdict").asText()).isEqualTo("refused");
    assertThat(json.get("findings").get(0).get("text").asText()).contains("does not exist");
  }

  @Test
  void everyHelpFitsAHundredColumnsAndHasAnExample() {
    run("--help");
    List<String> commands =
        out.toString()
            .lines()
            .dropWhile(line -> !line.startsWith("Commands:"))
            .filter(line -> line.startsWith("  ") && line.charAt(2) != ' ')
            .map(line -> line.strip().split(" ")[0])
            .toList();
    assertThat(commands).contains("report");
    for (String command : commands) {
      out.getBuffer().setLength(0);
      assertThat(run(command, "--help")).as(command).isEqualTo(0);
      assertThat(out.toString()).as(command).contains("Example").contains("--json");
      assertThat(out.toString().lines()).as(command).allMatch(line -> line.length() <= 100);
    }
  }

  @Test
  void reportRendersARecordedRunFromItsFolder(@TempDir Path folder) throws Exception {
    ResultJson.write(
        folder.resolve("result.json"), new ResultBuilder("pull").headline("It held.").build());
    assertThat(run("report", folder.toString())).isEqualTo(0);
    assertThat(folder.resolve("report.html")).content().contains("It held.");
    assertThat(out.toString()).contains(folder.resolve("report.html").toString());
  }

  @Test
  void reportOfABrokenResultSaysWhere(@TempDir Path folder) throws Exception {
    Files.writeString(folder.resolve("result.json"), "{\n oops");
    assertThat(run("report", folder.toString())).isEqualTo(2);
    assertThat(err.toString()).contains("result.json").contains("line 2");
    assertThat(folder.resolve("report.html")).doesNotExist();
  }

  @Test
  void coloursOnlyWhereAllowed(@TempDir Path folder) throws Exception {
    ResultJson.write(folder.resolve("result.json"), new ResultBuilder("pull").build());
    run(true, "report", folder.toString());
    assertThat(out.toString()).contains("\u001B[");
    out.getBuffer().setLength(0);
    run(false, "report", folder.toString());
    assertThat(out.toString()).doesNotContain("\u001B[");
  }

  @Test
  void quietPrintsOneLine(@TempDir Path folder) throws Exception {
    ResultJson.write(folder.resolve("result.json"), new ResultBuilder("pull").build());
    run("report", folder.toString(), "--quiet");
    assertThat(out.toString().lines().count()).isEqualTo(1);
  }

  /** A file can name things as it likes; the terminal obeys none of it (ECMA-48 controls). */
  @Test
  void hostileLogLeavesTheTerminalAlone(@TempDir Path folder) throws Exception {
    Path log = HostileLogs.write(folder.resolve("hostile.csv"));
    assertThat(run("replay", log.toString(), "--out", folder.resolve("run").toString())).isZero();
    Path big = HostileLogs.megabyte(folder.resolve("big.csv"));
    assertThat(run("replay", big.toString())).isEqualTo(2);
    assertThat(err.toString()).contains("cell longer than 1000 characters");
    Path refused = Files.writeString(folder.resolve("refused.csv"), HostileLogs.ESCAPES + ",2\n3,4\n");
    assertThat(run("replay", refused.toString())).isEqualTo(2);
    for (String text : List.of(out.toString(), err.toString())) {
      assertThat(text).doesNotContainPattern("[\\x00-\\x08\\x0b-\\x1f\\x7f-\\x9f\u202e\u2066]");
      assertThat(text).hasSizeBetween(50, 20_000);
    }
  }
}
