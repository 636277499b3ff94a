package org.boostwright.rig.scenario.file;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatThrownBy;

import java.nio.file.Files;
import java.nio.file.Path;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;

/** Scenario files: what is refused, where, and what is suggested. */
class ScenarioFileTest {
  private static final String GOOD =
      """
      schema = 1
      id     = "mine"
      row    = "S4"
      text   = "frozen at part throttle"

      [drive]
      start_rpm = 3500
      length_s  = 5.0
      steps = [ { at_s = 0.2, throttle_pct = 80 } ]

      [[fault]]
      kind = "s4_map_frozen"
      at_s = 3.0

      [expect]
      faults = ["map_frozen"]
      rest_within_ms = 100
      """;

  @ParameterizedTest
  @CsvSource(
      delimiter = '|',
      value = {
        "schema = 1       | schema = 2        | mine.toml:1:1: schema is 2.0; this version reads",
        "start_rpm        | start_rmp         | mine.toml:7:1: drive.start_rmp is not known; did"
            + " you mean start_rpm?",
        "throttle_pct = 80| throtle_pct = 80  | mine.toml:9:25: drive.steps.throtle_pct is not"
            + " known; did you mean throttle_pct?",
        ", throttle_pct = 80|                 | says when but not what",
        "throttle_pct = 80| throttle_pct = 180| write a number from 0 to 100",
        "s4_map_frozen    | s4_map_frozn      | did you mean \"s4_map_frozen\"?",
        "at_s = 3.0       | amount = 1        | amount means nothing for s4_map_frozen",
        "map_frozen\"]    | map_frosen\"]     | did you mean \"map_frozen\"?",
        "[expect]         | [expekt]          | mine.toml:15:1: expekt is not known; did you mean"
            + " expect?",
        "length_s  = 5.0  |                   | drive.length_s is missing",
        "at_s = 3.0       |                   | fault.at_s is missing",
        "id     = \"mine\"|                   | id is missing or no text",
        "[drive]          | [drive            | mine.toml:6:"
      })
  void whatIsWrongIsRefusedWithItsPlace(String good, String bad, String message) {
    String text = GOOD.replace(good, bad == null ? "" : bad);
    assertThat(text).isNotEqualTo(GOOD);
    assertThatThrownBy(() -> ScenarioFile.parse("mine.toml", text))
        .isInstanceOf(ScenarioRefusedException.class)
        .hasMessageContaining(message);
  }

  @Test
  void aSettingThatIsRefusedIsNamed() throws Exception {
    Scenario scenario =
        ScenarioFile.parse(
            "mine.toml", GOOD + "[car]\nsettings = [\"limits.cutoff_kpa_abs=2000\"]\n");
    assertThatThrownBy(() -> ScenarioRunner.run(scenario))
        .isInstanceOf(ScenarioRefusedException.class)
        .hasMessageContaining("cutoff_kpa_abs");
  }

  @Test
  void aFaultThatNeverTakesEffectIsInvalidAndNotPassed() throws Exception {
    // A valve at rest cannot show that its spool is stuck there.
    String text =
        GOOD.replace("s4_map_frozen", "p4_stuck_at_rest")
            .replace("throttle_pct = 80", "throttle_pct = 20")
            .replace("faults = [\"map_frozen\"]\nrest_within_ms = 100\n", "");
    ScenarioVerdict verdict = ScenarioRunner.run(ScenarioFile.parse("mine.toml", text)).get(0);
    assertThat(verdict.failures()).isEmpty();
    assertThat(verdict.status()).isEqualTo(ScenarioVerdict.Status.INVALID);
  }

  @Test
  void theGuidesExampleRunsAsItStands() throws Exception {
    String guide =
        Files.readString(
            Path.of(System.getProperty("boostwright.root", "."), "docs", "scenarios.md"));
    int from = guide.indexOf("```toml\n") + "```toml\n".length();
    String example = guide.substring(from, guide.indexOf("```", from));
    ScenarioVerdict verdict = ScenarioRunner.run(ScenarioFile.parse("guide", example)).get(0);
    assertThat(verdict.failures()).isEmpty();
    assertThat(verdict.status()).isEqualTo(ScenarioVerdict.Status.PASSED);
  }

  @Test
  void aMissedExpectationFailsAndSaysWhy() throws Exception {
    String text = GOOD.replace("rest_within_ms = 100", "rest_within_ms = 20");
    ScenarioVerdict verdict = ScenarioRunner.run(ScenarioFile.parse("mine.toml", text)).get(0);
    assertThat(verdict.status()).isEqualTo(ScenarioVerdict.Status.FAILED);
    assertThat(verdict.failures()).anyMatch(why -> why.contains("instead of 20 ms"));
    assertThat(
            ScenarioRunner.run(ScenarioFile.parse("mine.toml", GOOD)).get(0).status())
        .isEqualTo(ScenarioVerdict.Status.PASSED);
  }
}
