package org.boostwright.pi;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assumptions.assumeThat;

import com.fasterxml.jackson.databind.JsonNode;
import com.fasterxml.jackson.databind.ObjectMapper;
import java.io.IOException;
import java.nio.charset.StandardCharsets;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.Arrays;
import java.util.List;
import java.util.concurrent.TimeUnit;
import org.junit.jupiter.api.BeforeAll;
import org.junit.jupiter.api.Tag;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.TestInstance;
import org.junit.jupiter.api.io.TempDir;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.ValueSource;

/**
 * The real runtime and the rig as two programs, in real time, over a serial line (a pair of
 * pseudo-terminals by socat): a drive, faults, kill -9 at full boost, restart with the engine
 * running. They run once; each test reads what the rig measured at the wire.
 *
 * <p>Every limit is one of the fault list, and times are those of the frames' stamps. A
 * pseudo-terminal is served by ordinary workers of the kernel, so the settings declare samples
 * every 15 ms for it: old after 45 ms. Where this machine held the line up for longer than that,
 * the rig calls the case invalid, and its test is aborted, visibly; it is not run again.
 */
@TestInstance(TestInstance.Lifecycle.PER_CLASS)
class TwoProcessesTest {
  private static final String FAULTS =
      "s1_map_open,s3_map_to_supply,s11_hose_off,s12_throttle_open,l1_silent,l1_corrupt,t2_frozen,"
          + "t2_killed";
  private static final long LONGEST_SECONDS = 300L;

  private Path folder;
  private JsonNode result;
  private String said;

  private static boolean socat() {
    return Arrays.stream(System.getenv("PATH").split(":"))
        .anyMatch(place -> Files.isExecutable(Path.of(place, "socat")));
  }

  private List<String> commandLine() {
    String java = Path.of(System.getProperty("java.home"), "bin", "java").toString();
    String classPath = System.getProperty("java.class.path");
    List<String> words = new ArrayList<>(List.of(java, "-XX:+UseSerialGC", "-cp", classPath));
    words.add("org.boostwright.rig.cli.Boostwright");
    words.addAll(List.of("rig", "--with-drive", "--json", "--for", "8", "--faults", FAULTS));
    words.addAll(List.of("--set", "sensors.map.refresh_ms=15"));
    words.addAll(List.of("--set", "sensors.throttle.refresh_ms=15"));
    words.addAll(List.of("--out", folder.resolve("run").toString()));
    String drive = java + " -XX:+UseSerialGC -Xmx64m -cp " + classPath;
    words.addAll(List.of("--drive-command", drive + " org.boostwright.pi.cli.PiMain"));
    return words;
  }

  @BeforeAll
  void runBothPrograms(@TempDir Path place) throws IOException, InterruptedException {
    folder = place;
    assumeThat(socat()).as("socat is installed (apt install socat)").isTrue();
    Path out = folder.resolve("out.json");
    Path err = folder.resolve("err.txt");
    Process rig =
        new ProcessBuilder(commandLine())
            .directory(folder.toFile())
            .redirectOutput(out.toFile())
            .redirectError(err.toFile())
            .start();
    try {
      boolean ended = rig.waitFor(LONGEST_SECONDS, TimeUnit.SECONDS);
      said = Files.readString(out, StandardCharsets.UTF_8) + Files.readString(err);
      assertThat(ended).as(said).isTrue();
    } finally {
      rig.destroy();
    }
    result = new ObjectMapper().readTree(out.toFile());
  }

  private JsonNode measurement(String id) {
    for (JsonNode measurement : result.path("measurements")) {
      if (measurement.path("id").asText().equals(id)) {
        return measurement;
      }
    }
    throw new AssertionError("no " + id + " in " + said);
  }

  private boolean found(String code) {
    for (JsonNode finding : result.path("findings")) {
      if (finding.path("code").asText().equals(code)) {
        return true;
      }
    }
    return false;
  }

  @ParameterizedTest
  @ValueSource(
      strings = {"s1_map_open", "s3_map_to_supply", "s11_hose_off", "s12_throttle_open"})
  @Tag("S1")
  @Tag("S3")
  @Tag("S11")
  @Tag("S12")
  void aSensorFaultRestsInItsTime(String fault) {
    assertPassed(fault);
  }

  @ParameterizedTest
  @ValueSource(strings = {"l1_silent", "l1_corrupt"})
  @Tag("L1")
  void aBrokenLinkRestsWithin100Ms(String fault) {
    assertPassed(fault);
  }

  @ParameterizedTest
  @ValueSource(strings = {"t2_frozen", "t2_killed"})
  @Tag("T2")
  void aRuntimeThatIsFrozenOrKilledAtFullBoostLetsGoOfTheCoilWithin100Ms(String fault) {
    assertPassed(fault);
  }

  private void assertPassed(String fault) {
    assumeThat(found("rig_invalid_" + fault)).as("this machine disturbed it: " + said).isFalse();
    assertThat(found("rig_passed_" + fault)).as(said).isTrue();
    JsonNode measured = measurement("rig." + fault + "_ms");
    assertThat(measured.path("verdict").asText()).as(said).isEqualTo("passed");
    assertThat(measured.path("value").asDouble()).isPositive();
    assertThat(measured.path("high").asDouble()).isLessThanOrEqualTo(100.0);
  }

  @Test
  void noFrameEverCarriesAnImpossibleDutyOrDutyAtRest() {
    assertThat(measurement("rig.broken_frames").path("value").asDouble()).as(said).isZero();
    assertThat(measurement("rig.frames").path("value").asDouble()).isGreaterThan(5000.0);
  }

  @Test
  void noFrameIsMissedWhileDriving() {
    assertThat(measurement("link.missed_at_rig").path("value").asDouble()).as(said).isZero();
  }

  @Test
  @Tag("T2")
  @Tag("S13")
  void aKilledRuntimeComesUpAtRestWithTheEngineRunning() {
    assumeThat(found("rig_invalid_t2_killed")).as(said).isFalse();
    assertThat(measurement("drive.restart_s").path("value").asDouble()).as(said).isPositive();
    assertThat(found("restart_not_at_rest")).as(said).isFalse();
  }

  @Test
  @Tag("T3")
  void sequenceNumbersAndStampsRollOverMeanwhile() {
    String key = "sequence and stamps rolled over";
    assertThat(result.path("provenance").path(key).asText()).as(said).isEqualTo("yes");
  }

  @Test
  void theResultIsThereForBuildServersAndForPeople() {
    assertThat(folder.resolve("run/junit.xml")).content().contains("<testsuite");
    assertThat(folder.resolve("run/report.html")).exists();
    assertThat(folder.resolve("run/result.json")).exists();
  }
}
