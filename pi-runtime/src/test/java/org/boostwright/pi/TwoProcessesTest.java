package org.boostwright.pi;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assumptions.assumeThat;

import java.io.IOException;
import java.nio.charset.StandardCharsets;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.Arrays;
import java.util.List;
import java.util.concurrent.TimeUnit;
import java.util.regex.Matcher;
import java.util.regex.Pattern;
import org.junit.jupiter.api.Tag;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;

/**
 * The real runtime and the rig as two programs, in real time, over a serial line (a pair of
 * pseudo-terminals by socat): a drive, faults, kill -9 at full boost, restart with the engine
 * running. The rig measures at the wire; here only its verdicts are read.
 *
 * <p>Every bound is one of the fault list. A pseudo-terminal is served by ordinary workers of the
 * kernel, so the settings declare samples every 15 ms for it: old after 45 ms.
 */
@Tag("L1")
@Tag("T2")
@Tag("S11")
@Tag("S12")
class TwoProcessesTest {
  private static final List<String> FAULTS =
      List.of("s11_hose_off", "s12_throttle_open", "l1_silent", "l1_corrupt", "t2_frozen", "t2_killed");

  @TempDir Path folder;

  private static boolean socat() {
    return Arrays.stream(System.getenv("PATH").split(":"))
        .anyMatch(place -> Files.isExecutable(Path.of(place, "socat")));
  }

  private List<String> commandLine() {
    String java = Path.of(System.getProperty("java.home"), "bin", "java").toString();
    String classPath = System.getProperty("java.class.path");
    List<String> words =
        new ArrayList<>(
            List.of(java, "-XX:+UseSerialGC", "-cp", classPath, "org.boostwright.rig.cli.Boostwright"));
    words.addAll(List.of("rig", "--with-drive", "--json", "--for", "6"));
    words.addAll(List.of("--faults", String.join(",", FAULTS)));
    words.addAll(List.of("--set", "sensors.map.refresh_ms=15"));
    words.addAll(List.of("--set", "sensors.throttle.refresh_ms=15"));
    words.addAll(List.of("--out", folder.resolve("run").toString()));
    words.addAll(
        List.of(
            "--drive-command",
            String.join(
                " ",
                java,
                "-XX:+UseSerialGC",
                "-Xmx96m",
                "-cp",
                classPath,
                "org.boostwright.pi.cli.PiMain")));
    return words;
  }

  @Test
  void everyFaultIsMetInItsTimeAndAKilledRuntimeLetsGoOfTheCoil()
      throws IOException, InterruptedException {
    assumeThat(socat()).as("socat is installed (apt install socat)").isTrue();
    Path out = folder.resolve("out.json");
    Path err = folder.resolve("err.txt");
    Process rig =
        new ProcessBuilder(commandLine())
            .directory(folder.toFile())
            .redirectOutput(out.toFile())
            .redirectError(err.toFile())
            .start();
    boolean ended = rig.waitFor(170, TimeUnit.SECONDS);
    rig.destroyForcibly();
    String json = Files.readString(out, StandardCharsets.UTF_8);
    String all = json + Files.readString(err, StandardCharsets.UTF_8);
    assertThat(ended).as(all).isTrue();
    for (String fault : FAULTS) {
      assertThat(verdict(json, "rig." + fault + "_ms")).as(all).isEqualTo("passed");
    }
    assertThat(verdict(json, "rig.broken_frames")).as(all).isEqualTo("passed");
    assertThat(verdict(json, "link.missed_at_rig")).as(all).isEqualTo("passed");
    assertThat(json).doesNotContain("restart_not_at_rest");
    assertThat(json).contains("\"drive.restart_s\"");
    assertThat(rig.exitValue()).as(all).isZero();
    assertThat(folder.resolve("run/junit.xml")).content().contains("<testsuite");
    assertThat(folder.resolve("run/report.html")).exists();
  }

  private static String verdict(String json, String id) {
    Matcher matcher =
        Pattern.compile(
                "\"id\" *: *\"" + Pattern.quote(id) + "\".*?\"verdict\" *: *\"([^\"]*)\"",
                Pattern.DOTALL)
            .matcher(json);
    return matcher.find() ? matcher.group(1) : "missing";
  }
}
