package org.boostwright.rig.scenario.file;

import java.nio.charset.StandardCharsets;
import java.util.ArrayList;
import java.util.List;
import java.util.Locale;
import org.boostwright.core.monitor.FaultCode;
import org.boostwright.core.settings.Settings;
import org.boostwright.core.settings.file.LoadResult;
import org.boostwright.core.settings.file.SettingsEdit;
import org.boostwright.core.settings.file.SettingsFile;
import org.boostwright.core.state.Permission;
import org.boostwright.rig.plant.PlantParams;
import org.boostwright.rig.scenario.ProjectCarSettings;
import org.boostwright.rig.scenario.fault.FaultFacts;
import org.boostwright.rig.scenario.fault.Injection;
import org.boostwright.rig.scenario.fault.Setup;
import org.boostwright.rig.scenario.fault.TwinRun;

/** Runs scenarios on the virtual project car and judges them. */
public final class ScenarioRunner {
  private static final long BEFORE_ROLL_OVER_NANOS = 7_000_000_000L;

  private ScenarioRunner() {}

  /** The scenario itself for each seed, then each twin with the first seed. */
  public static List<ScenarioVerdict> run(Scenario scenario) throws ScenarioRefusedException {
    Settings settings = settings(scenario);
    List<ScenarioVerdict> verdicts = new ArrayList<>();
    for (long seed : scenario.car().seeds()) {
      verdicts.add(itself(scenario, settings, seed));
    }
    for (Scenario.Twin twin : scenario.twins()) {
      verdicts.add(twin(scenario, settings, twin));
    }
    return verdicts;
  }

  /** The project car's settings with the scenario's changes. */
  private static Settings settings(Scenario scenario) throws ScenarioRefusedException {
    String text = ProjectCarSettings.text();
    try {
      SettingsEdit edit = SettingsEdit.of(ProjectCarSettings.FILE_NAME, text);
      for (String change : scenario.car().settings()) {
        int equals = change.indexOf('=');
        if (equals < 1) {
          throw new ScenarioRefusedException(
              scenario.file() + ": car.settings holds '" + change + "'; write key=value");
        }
        edit.setText(
            change.substring(0, equals).strip(), change.substring(equals + 1).strip());
      }
      text = edit.text();
    } catch (IllegalArgumentException e) {
      throw new ScenarioRefusedException(
          scenario.file() + ": car.settings: " + e.getMessage());
    }
    LoadResult result =
        SettingsFile.parse(
            ProjectCarSettings.FILE_NAME, text.getBytes(StandardCharsets.UTF_8));
    Settings settings = result.settings();
    if (settings == null) {
      throw new ScenarioRefusedException(
          scenario.file() + ": car.settings: " + result.problems().get(0));
    }
    return settings;
  }

  private static TwinRun drive(
      Scenario scenario, Settings settings, long seed, List<Injection> faults) {
    Scenario.Car car = scenario.car();
    Setup setup =
        Setup.of(
                settings,
                PlantParams.PROJECT_CAR.spread(seed, car.tolerance()),
                car.altitudeM(),
                car.airC(),
                seed,
                scenario.drive())
            .acrossLink(car.link())
            .withRecirculationStuck(car.recirculationStuck())
            .withPermission(car.proven() ? Permission.FULL : Permission.NONE)
            .withClockAt(car.clockRollsOver() ? Long.MAX_VALUE - BEFORE_ROLL_OVER_NANOS : 0L);
    return new TwinRun(setup, faults).drive();
  }

  private static ScenarioVerdict itself(Scenario scenario, Settings settings, long seed) {
    TwinRun run = drive(scenario, settings, seed, scenario.faults());
    List<String> failures = new ArrayList<>();
    Scenario.Expect expect = scenario.expect();
    reports(run, expect, failures);
    outputs(run, expect, failures);
    for (Scenario.Invariant invariant : expect.invariants()) {
      switch (invariant) {
        case EVERY_TICK -> everyTick(run, failures);
        case SAFE -> safe(run, failures);
        case SILENT_TWIN ->
            need(
                run.falseAlarms() == 0L,
                "without the fault " + names(run.falseAlarms()) + " was raised",
                failures);
        case SAME_BYTES ->
            need(
                run.fingerprint()
                    == drive(scenario, settings, seed, scenario.faults()).fingerprint(),
                "a second run with the same seed differs",
                failures);
      }
    }
    return verdict(scenario, seed, "", run, failures);
  }

  private static ScenarioVerdict twin(
      Scenario scenario, Settings settings, Scenario.Twin twin) {
    List<Injection> faults = new ArrayList<>(scenario.faults());
    faults.set(0, twin.fault());
    long seed = scenario.car().seeds().get(0);
    TwinRun run = drive(scenario, settings, seed, faults);
    List<String> failures = new ArrayList<>();
    long raised = run.facts().faults() & ~twin.allowed();
    need(raised == 0L, names(raised) + " was raised", failures);
    everyTick(run, failures);
    pressure(run, failures);
    return verdict(scenario, seed, twin.text(), run, failures);
  }

  private static ScenarioVerdict verdict(
      Scenario scenario, long seed, String variation, TwinRun run, List<String> failures) {
    ScenarioVerdict.Status status =
        !run.everyFaultTookEffect()
            ? ScenarioVerdict.Status.INVALID
            : failures.isEmpty() ? ScenarioVerdict.Status.PASSED : ScenarioVerdict.Status.FAILED;
    boolean none = run.faults().isEmpty();
    return new ScenarioVerdict(
        scenario,
        seed,
        variation,
        status,
        List.copyOf(failures),
        none ? Double.NaN : run.faults().get(0).detectionSeconds(),
        none ? Double.NaN : run.faults().get(0).reactionSeconds(),
        run.facts().peakOverKpa(),
        run.facts().faults());
  }

  private static void reports(TwinRun run, Scenario.Expect expect, List<String> failures) {
    long raised = run.facts().faults();
    long missing = expect.faults() & ~raised;
    need(missing == 0L, names(missing) + " was not reported", failures);
    need(
        expect.anyOf() == 0L || (raised & expect.anyOf()) != 0L,
        "none of " + names(expect.anyOf()) + " was reported",
        failures);
    long wrong = raised & ~(expect.faults() | expect.anyOf() | expect.allowed());
    need(wrong == 0L, names(wrong) + " was reported and is unrelated", failures);
    long absent = expect.findings() & ~(run.facts().findings() | raised);
    need(absent == 0L, names(absent) + " was not found", failures);
  }

  private static void outputs(TwinRun run, Scenario.Expect expect, List<String> failures) {
    double within = expect.restWithinSeconds();
    if (!Double.isNaN(within)) {
      for (FaultFacts fault : run.faults()) {
        need(
            fault.reactionSeconds() <= within + 1e-9,
            String.format(
                Locale.ROOT,
                "rest after %.0f ms instead of %.0f ms",
                fault.reactionSeconds() * 1e3,
                within * 1e3),
            failures);
      }
    }
    need(
        expect.stateAtEnd() == null || expect.stateAtEnd() == run.endState(),
        "ends in '" + run.endState().words() + "'",
        failures);
    need(
        Double.isNaN(expect.peakOverLimitKpa())
            || run.facts().peakOverKpa() <= expect.peakOverLimitKpa(),
        String.format(Locale.ROOT, "peak %.1f kPa over the limit", run.facts().peakOverKpa()),
        failures);
    need(
        Double.isNaN(expect.peakOverLimitAtLeastKpa())
            || run.facts().peakOverKpa() >= expect.peakOverLimitAtLeastKpa(),
        String.format(
            Locale.ROOT, "peak only %.1f kPa over the limit", run.facts().peakOverKpa()),
        failures);
    need(
        Double.isNaN(expect.dutyApartAtMost())
            || run.largestDutyApart() <= expect.dutyApartAtMost(),
        String.format(
            Locale.ROOT, "duty %.4f away from the run without it", run.largestDutyApart()),
        failures);
    need(!expect.neverDriven() || !run.facts().everDriven(), "the coil was driven", failures);
  }

  private static void everyTick(TwinRun run, List<String> failures) {
    need(run.facts().broken().isEmpty(), run.facts().broken(), failures);
    need(run.twin().broken().isEmpty(), "without the fault: " + run.twin().broken(), failures);
  }

  private static void safe(TwinRun run, List<String> failures) {
    pressure(run, failures);
    need(!run.dutyAfterReaction(), "unsafe: coil fed after the reaction time", failures);
  }

  private static void pressure(TwinRun run, List<String> failures) {
    need(
        !run.controllable() || !run.overPressure(),
        String.format(
            Locale.ROOT,
            "unsafe: %.1f kPa over the limit, %.0f ms above it",
            run.facts().peakOverKpa(),
            run.facts().longestAboveSeconds() * 1e3),
        failures);
  }

  private static void need(boolean holds, String otherwise, List<String> failures) {
    if (!holds) {
      failures.add(otherwise);
    }
  }

  /** Ids of the faults of some bits. */
  public static String names(long bits) {
    StringBuilder names = new StringBuilder();
    for (FaultCode code : FaultCode.values()) {
      if ((bits & code.bit()) != 0L) {
        names.append(names.length() > 0 ? ", " : "").append(code.id());
      }
    }
    return names.toString();
  }
}
