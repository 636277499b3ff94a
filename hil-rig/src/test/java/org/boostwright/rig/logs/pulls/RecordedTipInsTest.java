package org.boostwright.rig.logs.pulls;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assumptions.assumeThat;

import java.io.IOException;
import java.nio.charset.StandardCharsets;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.List;
import java.util.stream.Stream;
import org.boostwright.rig.logs.diagnosis.Diagnosis;
import org.boostwright.rig.logs.diagnosis.DiagnosisResult;
import org.boostwright.rig.replay.csv.LogImport;
import org.boostwright.rig.replay.csv.LogMapping;
import org.boostwright.rig.replay.csv.LogSignal;
import org.boostwright.rig.result.Result;
import org.boostwright.rig.result.ResultBuilder;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.ValueSource;

/**
 * Tip-ins of recorded road drives (M. Weber, Automotive OBD-II Dataset, KIT, RADAR4KIT, 2023, DOI
 * 10.35097/1130, CC BY 4.0), counted by the program and by a script that shares nothing with it.
 */
class RecordedTipInsTest {

  @ParameterizedTest
  @ValueSource(strings = {"a-acceleration", "b-free", "c-normal", "d-traffic", "e-normal"})
  void tipInsAreAsManyAsAnIndependentScriptCounts(String drive) throws Exception {
    String shared = System.getProperty("boostwright.shared", "");
    Path file = Path.of(shared, "data", "drives", "drive-" + drive + ".csv");
    assumeThat(file).as("recorded drives").exists();
    DriveLog log = DriveLog.ofImport(LogImport.read(file, LogMapping.NONE), LogSignal.PEDAL, 99.0);
    List<Pull> pulls = PullFinder.find(log, PullRules.TIP_IN);
    int counted = script(file);
    System.out.println("drive " + drive + ": " + pulls.size() + " tip-ins, script " + counted);
    assertThat(pulls).isNotEmpty();
    assertThat(Math.abs(pulls.size() - counted)).isLessThanOrEqualTo(1);
    assertThat(pulls).noneMatch(Diagnosis::possible);
    ResultBuilder result = new ResultBuilder("replay");
    PullsResult.add(result, pulls, PullRules.TIP_IN);
    DiagnosisResult.cannot(result, log, pulls);
    Result built = result.build();
    assertThat(built.series()).hasSize(1);
    assertThat(built.findings())
        .extracting(f -> f.code())
        .contains("no_diagnosis_without_duty", "no_diagnosis_so_slow");
  }

  private static int script(Path file) throws IOException, InterruptedException {
    Path root = Path.of(System.getProperty("boostwright.root"));
    Path script = root.resolve("hil-rig/src/test/resources/logs/count_tip_ins.py");
    String python =
        Stream.of("/usr/bin/python3", "/usr/local/bin/python3")
            .filter(path -> Files.isExecutable(Path.of(path)))
            .findFirst()
            .orElse("");
    assumeThat(python).as("python3").isNotEmpty();
    Process process = new ProcessBuilder(python, script.toString(), file.toString()).start();
    String answer = new String(process.getInputStream().readAllBytes(), StandardCharsets.UTF_8);
    assertThat(process.waitFor()).isZero();
    return Integer.parseInt(answer.strip());
  }
}
