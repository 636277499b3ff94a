package org.boostwright.rig.cli;

import static org.assertj.core.api.Assertions.assertThat;

import com.fasterxml.jackson.databind.JsonNode;
import com.fasterxml.jackson.databind.ObjectMapper;
import java.io.PrintWriter;
import java.io.StringWriter;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.List;
import org.boostwright.core.ladder.Rung;
import org.boostwright.core.settings.file.LadderFile;
import org.boostwright.core.settings.file.ProofFile;
import org.boostwright.core.settings.file.SettingsEdit;
import org.boostwright.rig.scenario.ProjectCarSettings;
import org.junit.jupiter.api.BeforeEach;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;

/** The ladder as people and programs meet it, practised on the virtual car. */
class StageCommandTest {
  private static final Path ROOT = Path.of(System.getProperty("boostwright.root"));

  @TempDir Path folder;
  private Path car;
  private StringWriter out = new StringWriter();

  @BeforeEach
  void settings() throws Exception {
    car = Files.writeString(folder.resolve("car.toml"), ProjectCarSettings.text());
  }

  private int run(String... args) {
    out = new StringWriter();
    PrintWriter to = new PrintWriter(out);
    return Boostwright.run(new Terminal(to, new PrintWriter(new StringWriter()), false, false), args);
  }

  private int stage(String... args) {
    String[] all = new String[args.length + 5];
    all[0] = "stage";
    all[1] = "--settings=" + car;
    all[2] = "--json";
    all[3] = "--practice";
    all[4] = "--out=" + folder.resolve("run");
    System.arraycopy(args, 0, all, 5, args.length);
    return run(all);
  }

  private JsonNode json() throws Exception {
    return new ObjectMapper().readTree(out.toString());
  }

  private String next() throws Exception {
    for (JsonNode finding : json().get("findings")) {
      if (finding.get("text").asText().startsWith("NEXT: ")) {
        return finding.get("code").asText();
      }
    }
    return "none";
  }

  private void edit(String key, String value) throws Exception {
    SettingsEdit.open(car).setText(key, value).save(car);
  }

  @Test
  void theWholeLadderIsClimbedAndWhatMattersBringsItBack() throws Exception {
    String docs = Files.readString(ROOT.resolve("docs/json.md"));
    for (Rung rung : Rung.values()) {
      assertThat(stage()).isEqualTo(0);
      assertThat(next()).isEqualTo("rung_" + rung.id() + "_missing");
      JsonNode cautions = json().get("cautions");
      for (int i = 0; i < rung.cautions().size(); i++) {
        assertThat(cautions.get(i).asText()).isEqualTo(rung.cautions().get(i));
      }
      assertThat(stage("--drive")).as("%s: %s", rung, out).isEqualTo(0);
      for (JsonNode m : json().get("measurements")) {
        assertThat(docs).contains("`" + m.get("id").asText() + "`");
      }
    }
    assertThat(stage()).isEqualTo(0);
    assertThat(next()).isEqualTo("none");

    edit("car.name", "Same car");
    assertThat(stage()).isEqualTo(0);
    assertThat(next()).isEqualTo("none");
    edit("feedback.tracking_s", "0.6");
    assertThat(stage()).isEqualTo(0);
    assertThat(next()).isEqualTo("rung_pressure_feedback_void");

    // A recording of before is no evidence for other settings.
    Path old = folder.resolve("run/pressure-feedback-1.csv");
    assertThat(stage("--log=" + old)).isEqualTo(2);
    assertThat(out.toString()).contains("other settings");

    assertThat(stage("--changed=valve", "--reason=new valve, same type")).isEqualTo(0);
    assertThat(next()).isEqualTo("rung_bench_missing");
    assertThat(ProofFile.beside(car, true)).doesNotExist();
    assertThat(stage("--drive")).isEqualTo(0);
    assertThat(next()).isEqualTo("rung_spring_drive_void");

    // The own car's ladder never saw any of it.
    assertThat(run("stage", "--settings=" + car, "--json")).isEqualTo(0);
    assertThat(next()).isEqualTo("rung_bench_missing");
    assertThat(LadderFile.beside(car, false)).doesNotExist();
  }

  @Test
  void aChangedNumberInARecordingIsFound() throws Exception {
    assertThat(stage("--drive")).isEqualTo(0);
    assertThat(stage("--drive")).isEqualTo(0);
    Path start = folder.resolve("start.csv");
    Path test = folder.resolve("run/cut-test.csv");
    String text = Files.readString(test);
    int row = text.indexOf('\n', text.length() / 2) + 1;
    int cell = text.indexOf(',', row);
    char digit = text.charAt(cell + 3);
    String forged =
        text.substring(0, cell + 3) + (digit == '9' ? '1' : (char) (digit + 1)) + text.substring(cell + 4);
    Files.writeString(start, forged);
    assertThat(stage("--sign=cut_proven", "--log=" + start)).isEqualTo(2);
    assertThat(out.toString()).contains("do not come again when replayed");
    assertThat(stage("--sign=cut_proven", "--log=" + test)).isEqualTo(1);
    assertThat(out.toString()).contains("Two recordings are needed");
  }

  @Test
  void skippingNeedsItsPlaceAndItsReason() throws Exception {
    assertThat(stage("--skip=bench", "--reason=I know what I am doing, I do")).isEqualTo(1);
    assertThat(stage("--skip=first_start", "--reason=I know what I am doing, I do")).isEqualTo(1);
    assertThat(stage("--drive")).isEqualTo(0);
    assertThat(stage("--drive")).isEqualTo(0);
    assertThat(stage("--skip=first_start", "--reason=because")).isEqualTo(1);
    assertThat(stage("--skip=first_start", "--reason=It has run for ten years, A. Owner"))
        .isEqualTo(0);
    assertThat(out.toString()).contains("It has run for ten years");
    assertThat(next()).isEqualTo("rung_spring_drive_missing");
  }

  @Test
  void aDamagedLadderProvesNothingAndIsNotWrittenOver() throws Exception {
    assertThat(stage("--drive")).isEqualTo(0);
    Path file = LadderFile.beside(car, true);
    byte[] bytes = Files.readAllBytes(file);
    bytes[bytes.length / 2] ^= 1;
    Files.write(file, bytes);
    assertThat(stage()).isEqualTo(0);
    assertThat(next()).isEqualTo("rung_bench_void");
    assertThat(stage("--sign=bench")).isEqualTo(1);
    assertThat(out.toString()).contains("move it away");
    assertThat(Files.readAllBytes(file)).isEqualTo(bytes);
  }

  @Test
  void wrongUseSaysWhatToDo() {
    for (List<String> wrong :
        List.of(
            List.of("--sign=top"),
            List.of("--changed=paint"),
            List.of("--drive", "--sign=bench"),
            List.of("--sign=first_start"),
            List.of("--log=" + folder.resolve("none.csv")))) {
      assertThat(stage(wrong.toArray(String[]::new))).as("%s", wrong).isEqualTo(2);
    }
    assertThat(run("stage", "--settings=" + car, "--drive", "--json")).isEqualTo(2);
  }
}
