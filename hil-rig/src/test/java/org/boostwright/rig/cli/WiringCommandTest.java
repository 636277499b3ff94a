package org.boostwright.rig.cli;

import static org.assertj.core.api.Assertions.assertThat;
import static org.junit.jupiter.api.Assumptions.assumeTrue;

import com.fasterxml.jackson.databind.JsonNode;
import com.fasterxml.jackson.databind.ObjectMapper;
import java.io.PrintWriter;
import java.io.StringWriter;
import java.nio.file.Files;
import java.nio.file.Path;
import org.boostwright.rig.wiring.spice.NgSpice;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;

/** The wiring command: verdict and numbers out, wrong use refused. */
class WiringCommandTest {
  private final StringWriter out = new StringWriter();

  @TempDir Path folder;

  private int run(String... args) {
    PrintWriter err = new PrintWriter(new StringWriter());
    return Boostwright.run(new Terminal(new PrintWriter(out), err, false, false), args);
  }

  /** Release of a 30 ohm, 100 mH coil into 0.8 V, to a fifth of 14 V/30 ohm: 4.71 ms by formula. */
  @Test
  void oneSimulationIsRunAndJudged() throws Exception {
    assumeTrue(NgSpice.present(), "ngspice is not installed: apt install ngspice");
    assertThat(run("wiring", "--only", "release", "--json")).isEqualTo(0);
    JsonNode json = new ObjectMapper().readTree(out.toString());
    assertThat(json.get("verdict").asText()).isEqualTo("passed");
    JsonNode first = json.get("measurements").get(0);
    assertThat(first.get("id").asText()).isEqualTo("wiring.hw_09_release.release_diode");
    assertThat(first.get("value").asDouble()).isBetween(4.66, 4.76);
    assertThat(first.get("verdict").asText()).isEqualTo("passed");
  }

  @Test
  void unknownSimulationAndWritingAPartAreWrongUse() {
    assumeTrue(NgSpice.present(), "ngspice is not installed: apt install ngspice");
    assertThat(run("wiring", "--only", "nothing-of-that-name")).isEqualTo(2);
    assertThat(run("wiring", "--only", "release", "--write")).isEqualTo(2);
  }

  @Test
  void writingNeedsTheProjectsFolder() throws Exception {
    assertThat(run("wiring", "--write", "--folder", folder.toString())).isEqualTo(2);
    assertThat(Files.list(folder)).isEmpty();
  }
}
