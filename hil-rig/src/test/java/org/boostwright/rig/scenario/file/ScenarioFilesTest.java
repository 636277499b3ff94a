package org.boostwright.rig.scenario.file;

import static org.assertj.core.api.Assertions.assertThat;

import java.nio.file.Path;
import java.util.TreeSet;
import java.util.stream.Stream;
import org.junit.jupiter.api.DynamicTest;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.TestFactory;

/** Every shipped scenario file: a fault that stops being caught breaks the build. */
class ScenarioFilesTest {
  private static final Path FOLDER =
      Path.of(System.getProperty("boostwright.root", "."), "hil-rig", "scenarios");

  @TestFactory
  Stream<DynamicTest> everyScenarioOfTheFolder() throws Exception {
    return ScenarioFile.readAll(FOLDER).stream()
        .map(
            scenario ->
                DynamicTest.dynamicTest(
                    scenario.row() + " " + scenario.id() + ": " + scenario.text(),
                    Path.of(scenario.file()).toUri(),
                    () -> passes(scenario)));
  }

  private static void passes(Scenario scenario) throws ScenarioRefusedException {
    for (ScenarioVerdict verdict : ScenarioRunner.run(scenario)) {
      assertThat(verdict.failures()).as(verdict.name()).isEmpty();
      assertThat(verdict.status())
          .as("%s: the fault took effect", verdict.name())
          .isEqualTo(ScenarioVerdict.Status.PASSED);
    }
  }

  @Test
  void everyRowThatTheRigCanRunHasAScenario() throws Exception {
    TreeSet<String> rows = new TreeSet<>();
    for (Scenario scenario : ScenarioFile.readAll(FOLDER)) {
      rows.add(scenario.row());
    }
    assertThat(rows)
        .contains("S1", "S2", "S3", "S4", "S5", "S6", "S7", "S8", "S9", "S10", "S11", "S12")
        .contains("S13", "S14", "P1", "P2", "P3", "P4", "P5", "P6", "P7", "E1", "E2", "E3", "B1")
        .contains("L1", "T1", "T2", "T3", "D2");
  }
}
