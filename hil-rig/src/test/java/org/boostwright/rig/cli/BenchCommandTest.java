package org.boostwright.rig.cli;

import static org.assertj.core.api.Assertions.assertThat;

import com.fasterxml.jackson.databind.JsonNode;
import com.fasterxml.jackson.databind.ObjectMapper;
import java.io.BufferedReader;
import java.io.PrintWriter;
import java.io.StringReader;
import java.io.StringWriter;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.Arrays;
import java.util.Optional;
import org.boostwright.core.bench.proof.Proof;
import org.boostwright.core.bench.proof.ProofState;
import org.boostwright.core.settings.PressureUnit;
import org.boostwright.core.settings.file.ProofFile;
import org.boostwright.core.settings.file.SettingsDigest;
import org.boostwright.rig.scenario.ProjectCarSettings;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;

/** The bench command as people and programs meet it. */
class BenchCommandTest {
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

  private String run() {
    return folder.resolve("run").toString();
  }

  @Test
  void theVirtualValveIsProvenAndEveryNumberIsDocumented() throws Exception {
    assertThat(run("bench", "--json", "--out", run())).isEqualTo(0);
    JsonNode json = json();
    assertThat(json.get("verdict").asText()).isEqualTo("passed");
    // Assumption A-01: 3.5 ms and 7.5 ms; window at 30 Hz 10.5 to 77.5 %.
    assertThat(value(json, "valve.t_on_ms")).isBetween(3.4, 3.6);
    assertThat(value(json, "valve.t_off_ms")).isBetween(7.4, 7.6);
    assertThat(value(json, "valve.window_low_duty")).isBetween(0.1, 0.11);
    assertThat(value(json, "valve.window_high_duty")).isBetween(0.77, 0.78);
    assertThat(value(json, "valve.recommended_hz")).isBetween(26.0, 39.0);
    assertThat(json.get("series")).hasSize(2);
    String docs = Files.readString(ROOT.resolve("docs/bench.md"));
    for (JsonNode m : json.get("measurements")) {
      assertThat(docs).contains("`" + m.get("id").asText() + "`");
    }
    Proof proof = ProofFile.read(Path.of(run(), "bench-proof.txt"));
    assertThat(proof.sound()).isTrue();
    assertThat(proof.missing()).isEmpty();
    String hardware = SettingsDigest.ofHardware(ProjectCarSettings.load());
    assertThat(ProofState.of(proof, hardware).status()).isEqualTo(ProofState.Status.NOT_THIS_CAR);
  }

  @Test
  void theSweepIsDrawnWithinOneHundredColumns() {
    assertThat(run("bench", "--out", run())).isEqualTo(0);
    assertThat(out.toString()).contains("| window 10.").contains("recommended").contains("*");
    assertThat(out.toString().lines().mapToInt(String::length).max().orElse(0))
        .isLessThanOrEqualTo(Terminal.WIDTH);
  }

  /** Common practice, no source: 12 psi of regulated air, a valve driven at 26 Hz. */
  @Test
  void practiceFactsComeOutOfASessionInPsi() throws Exception {
    String[] inPsi = {
      "bench",
      "--out",
      run(),
      "--set",
      "units.pressure=psi",
      "--set",
      "units.reference=gauge",
      "--set",
      "valve.frequency_hz=26",
      "--json"
    };
    assertThat(run(inPsi)).isEqualTo(0);
    JsonNode sweep = json().get("series").get(0);
    assertThat(psi(sweep, 0)).as("at rest all 12 psi").isBetween(11.9, 12.1);
    assertThat(psi(sweep, 10)).as("at 10 % practically all").isBetween(11.0, 11.8);
    assertThat(psi(sweep, 20)).as("at 20 % part of it").isBetween(9.0, 11.0);
    assertThat(psi(sweep, 70)).as("at 70 % practically nothing").isLessThan(1.2);
    assertThat(value(json(), "valve.window_high_duty")).isLessThan(0.82);
    assertThat(value(json(), "valve.recommended_hz")).isBetween(26.0, 39.0);
    out.getBuffer().setLength(0);
    assertThat(run(Arrays.copyOf(inPsi, inPsi.length - 1))).isEqualTo(0);
    assertThat(out.toString()).containsPattern("line at rest +12\\.0\\d* psi gauge");
    assertThat(out.toString()).contains("psi gauge over duty in % at 26 Hz");
  }

  private static double psi(JsonNode sweep, int dutyPct) {
    for (int i = 0; i < sweep.get("x").size(); i++) {
      if (Math.abs(sweep.get("x").get(i).asDouble() - dutyPct) < 0.01) {
        return PressureUnit.PSI.fromKpa(sweep.get("lines").get(0).get("y").get(i).asDouble());
      }
    }
    throw new AssertionError("no reading at " + dutyPct + " %");
  }

  @Test
  void aMistakeFailsWithWhatItMeansAndWhatToDo() throws Exception {
    int code = run("bench", "--json", "--out", run(), "--set", "virtual.mistake=driver_inverted");
    assertThat(code).isEqualTo(1);
    JsonNode finding = json().get("findings").get(0);
    assertThat(finding.get("code").asText()).isEqualTo("driver_inverted");
    assertThat(finding.get("severity").asText()).isEqualTo("problem");
    assertThat(finding.get("text").asText()).contains("DANGEROUS").contains("kPa gauge");
    assertThat(finding.get("next").asText()).isNotBlank();
  }

  @Test
  void aFrequencyWithoutWindowFailsAndTheUsualOneIsAdvised() throws Exception {
    int code = run("bench", "--json", "--out", run(), "--set", "valve.frequency_hz=95");
    assertThat(code).isEqualTo(1);
    assertThat(out.toString()).contains("frequency_too_high");
    assertThat(value(json(), "valve.recommended_hz")).isBetween(26.0, 39.0);
  }

  @Test
  void piAndLinkAreRefusedPlainly() {
    assertThat(run("bench", "--valve", "pi")).isEqualTo(2);
    assertThat(run("bench", "--valve", "link:/dev/ttyUSB0")).isEqualTo(2);
    assertThat(err.toString()).contains("controller program, which is not installed here");
    assertThat(run("bench", "--valve", "elsewhere")).isEqualTo(2);
    assertThat(run("bench", "--steps", "juggling")).isEqualTo(2);
    assertThat(run("bench", "--set", "virtual.mistake=none_known")).isEqualTo(2);
  }

  @Test
  void onlyTheChosenStepsRun() throws Exception {
    assertThat(run("bench", "--json", "--out", run(), "--steps", "ambient,rest")).isEqualTo(0);
    Proof proof = ProofFile.read(Path.of(run(), "bench-proof.txt"));
    assertThat(proof.steps()).hasSize(2);
    assertThat(proof.missing()).isNotEmpty();
  }

  @Test
  void readingsNeedNoSettingsFileAndAFileWithoutSupplyIsRefused() throws Exception {
    Path readings =
        Files.writeString(
            folder.resolve("gauge.csv"),
            "frequency_hz,duty_pct,pressure,unit\n30,0,12,psi\n30,20,10,psi\n30,50,4,psi\n");
    assertThat(run("bench", "--json", "--readings", readings.toString())).isEqualTo(0);
    assertThat(value(json(), "valve.window_hz")).isEqualTo(30.0);
    Files.writeString(readings, "frequency_hz,duty_pct,pressure,unit\n30,20,10,psi\n");
    assertThat(run("bench", "--readings", readings.toString())).isEqualTo(2);
    assertThat(err.toString()).contains("0 % duty");
  }

  @Test
  void theDialogueCatchesSlipsAndEndsWhenThePersonStops() throws Exception {
    Terminal terminal = new Terminal(new PrintWriter(out), new PrintWriter(err), false, false);
    BufferedReader typed = new BufferedReader(new StringReader("twelve\n83\n12\n0\n0\nstop\n"));
    ManualDialogue dialogue =
        new ManualDialogue(terminal, typed, PressureUnit.PSI, Optional.empty());
    WrongUseException stopped = null;
    try {
      dialogue.run();
    } catch (WrongUseException e) {
      stopped = e;
    }
    assertThat(stopped).isNotNull();
    assertThat(err.toString())
        .contains("Eye protection")
        .contains("'twelve' is not a pressure")
        .contains("Read again")
        .contains("one pulse of");
  }

  @Test
  void checkShowsWhetherTheBenchHasProvenTheseSettings() throws Exception {
    Path car = Files.writeString(folder.resolve("car.toml"), ProjectCarSettings.text());
    assertThat(run("check", car.toString())).isEqualTo(0);
    assertThat(out.toString()).contains("has not been proven on the bench");

    assertThat(run("bench", "--quiet", "--out", run(), "--settings", car.toString())).isEqualTo(0);
    Files.copy(Path.of(run(), "bench-proof.txt"), ProofFile.beside(car));
    assertThat(run("check", car.toString())).isEqualTo(0);
    assertThat(out.toString()).contains("virtual valve");

    Files.writeString(ProofFile.beside(car), "boostwright bench proof 1\n");
    assertThat(run("check", car.toString(), "--json")).isEqualTo(0);
    assertThat(out.toString()).contains("bench_proof_damaged");
  }
}
