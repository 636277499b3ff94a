package org.boostwright.rig.plan;

import static org.assertj.core.api.Assertions.assertThat;

import java.util.ArrayList;
import java.util.List;
import java.util.Locale;
import java.util.Random;
import java.util.stream.Stream;
import org.boostwright.core.settings.ProjectSettings;
import org.boostwright.core.settings.Settings;
import org.boostwright.core.settings.file.LoadResult;
import org.boostwright.core.settings.file.Problem;
import org.boostwright.core.settings.file.SettingsCheck;
import org.boostwright.core.settings.file.SettingsEdit;
import org.boostwright.rig.plant.PlantParams;
import org.boostwright.rig.result.Finding;
import org.boostwright.rig.result.Result;
import org.boostwright.rig.result.ResultBuilder;
import org.boostwright.rig.result.Severity;
import org.boostwright.rig.result.Verdict;
import org.boostwright.rig.scenario.ProjectCarSettings;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.MethodSource;
import org.junit.jupiter.params.provider.ValueSource;

/**
 * Twelve projects, four fine and eight flawed: each flaw is named and nothing else is. Every number
 * that does not matter is drawn anew for each, so that none passes or fails by the project car's.
 */
class PlanTest {
  /** A project: its name, seed, the one problem it has (empty: none), and how it differs. */
  record Project(String name, int seed, String flaw, List<String> changes) {
    @Override
    public String toString() {
      return name;
    }
  }

  static Stream<Project> projects() {
    return Stream.of(
        new Project("the project car with other small numbers", 1, "", List.of()),
        new Project("an external gate", 2, "", List.of("actuator.layout=external_gate")),
        new Project(
            "two actuators on one valve, equal legs",
            3,
            "",
            List.of("project.actuators=2", "project.hose_length_mm=500", "project.actuator_cm3=40")),
        new Project(
            "a mountain village, a compressor that has it",
            4,
            "",
            List.of("project.altitudes_m=[900, 1800]", "project.compressor_ratio_max=2.7")),
        new Project(
            "spring too soft", 5, "spring_too_soft", List.of("actuator.spring_cracks_kpa_gauge=36")),
        new Project(
            "spring too stiff",
            6,
            "spring_too_stiff",
            List.of(
                "actuator.spring_full_lift_kpa_gauge=140", "actuator.spring_cracks_kpa_gauge=95")),
        new Project(
            "2.5 bar sensor on a 2.7 bar run-away",
            7,
            "sensor_saturates",
            List.of("sensors.map.pressure_kpa_abs=[20, 250]", "project.runaway_kpa_abs=270")),
        new Project(
            "the same by the virtual car's own run-away",
            8,
            "sensor_saturates",
            List.of("sensors.map.pressure_kpa_abs=[20, 250]")),
        new Project("passes of 3000 m", 9, "altitude", List.of("project.altitudes_m=[300, 3000]")),
        new Project("valve in the boot", 10, "hose", List.of("project.hose_length_mm=3200")),
        new Project("a frequency for lamps", 11, "valve_window", List.of("valve.frequency_hz=75")),
        new Project(
            "two actuators, one hose longer",
            12,
            "unequal_legs",
            List.of("project.actuators=2", "project.actuator_cm3=40", "project.equal_legs=false")));
  }

  private static LoadResult load(Project project) {
    Random random = new Random(project.seed());
    SettingsEdit edit = SettingsEdit.of("car.toml", ProjectCarSettings.text());
    set(edit, "project.hose_length_mm", random, 150, 400);
    set(edit, "project.actuator_cm3", random, 45, 70);
    set(edit, "project.compressor_ratio_max", random, 2.35, 2.7);
    set(edit, "actuator.spring_cracks_kpa_gauge", random, 52, 66);
    set(edit, "valve.frequency_hz", random, 27, 38);
    set(edit, "limits.cutoff_kpa_abs", random, 196, 202);
    for (String change : project.changes()) {
      String[] pair = change.split("=", 2);
      edit.setText(pair[0], pair[1]);
    }
    return edit.load();
  }

  private static void set(SettingsEdit edit, String key, Random random, double low, double high) {
    double value = low + (high - low) * random.nextDouble();
    edit.set(key, Double.parseDouble(String.format(Locale.ROOT, "%.2f", value)));
  }

  @ParameterizedTest
  @MethodSource("projects")
  void eachFlawIsNamedAndNothingElseIs(Project project) {
    LoadResult loaded = load(project);
    Settings settings = loaded.orThrow();
    ProjectSettings plan = loaded.project();
    assertThat(plan).isNotNull();
    ResultBuilder builder = new ResultBuilder("plan").units(settings.units()).headline("-");
    Plan.add(
        builder,
        settings,
        plan,
        PlantParams.PROJECT_CAR,
        SettingsCheck.report("car.toml", loaded));
    Result result = builder.build();
    List<String> problems = new ArrayList<>();
    for (Finding finding : result.findings()) {
      if (finding.severity() == Severity.PROBLEM) {
        problems.add(finding.code());
        assertThat(finding.text()).isNotBlank();
        assertThat(finding.next()).isNotBlank();
      }
    }
    if (project.flaw().isEmpty()) {
      assertThat(problems).isEmpty();
      assertThat(result.verdict()).isEqualTo(Verdict.PASSED);
    } else {
      assertThat(problems).containsExactly(project.flaw());
      assertThat(result.verdict()).isEqualTo(Verdict.FAILED);
    }
  }

  @ParameterizedTest
  @ValueSource(
      strings = {"dual_port", "vacuum", "electric", "variable_vanes", "two_valves", "bleed"})
  void layoutsThatCannotBeMadeSafeAreRefusedByNameWithTheReason(String layout) {
    LoadResult loaded =
        SettingsEdit.of("car.toml", ProjectCarSettings.text())
            .setText("actuator.layout", layout)
            .load();
    assertThat(loaded.settings()).isNull();
    assertThat(loaded.problems()).extracting(Problem::code).containsExactly("layout_refused");
    assertThat(loaded.problems().get(0).text())
        .contains("\"" + layout + "\" is not supported: ")
        .contains("single_port");
  }

  @ParameterizedTest
  @ValueSource(strings = {"spring_is_safe", "safe_boost_kpa_abs"})
  void whatOnlyThePersonCanKnowIsAskedFor(String key) {
    LoadResult loaded =
        SettingsEdit.of("car.toml", ProjectCarSettings.text())
            .setText("project." + key, key.startsWith("spring") ? "false" : "165")
            .load();
    Settings settings = loaded.orThrow();
    ProjectSettings plan = loaded.project();
    ResultBuilder builder = new ResultBuilder("plan").units(settings.units()).headline("-");
    Plan.add(
        builder,
        settings,
        plan,
        PlantParams.PROJECT_CAR,
        SettingsCheck.report("car.toml", loaded));
    assertThat(builder.build().findings())
        .extracting(Finding::code)
        .contains(key.startsWith("spring") ? "spring_not_stated_safe" : "target_above_safe");
  }
}
