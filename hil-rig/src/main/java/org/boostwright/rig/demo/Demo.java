package org.boostwright.rig.demo;

import java.util.Locale;
import org.boostwright.core.settings.Settings;
import org.boostwright.core.settings.file.LoadResult;
import org.boostwright.core.settings.file.Problem;
import org.boostwright.core.settings.file.SettingsDigest;
import org.boostwright.core.settings.file.SettingsEdit;
import org.boostwright.core.settings.file.SettingsFile;
import org.boostwright.rig.plant.PlantParams;
import org.boostwright.rig.report.DisplayUnits;
import org.boostwright.rig.result.Result;
import org.boostwright.rig.result.ResultBuilder;
import org.boostwright.rig.result.SettingsTables;
import org.boostwright.rig.result.Severity;
import org.boostwright.rig.result.Units;
import org.boostwright.rig.scenario.ProjectCarSettings;
import org.boostwright.rig.scenario.PullMeasures;
import org.boostwright.rig.scenario.PullPlan;
import org.boostwright.rig.scenario.PullResult;
import org.boostwright.rig.scenario.PullRun;
import org.boostwright.rig.scenario.VirtualPull;

/**
 * The whole job on the built-in project car: settings, valve, pulls on the spring, on base duty
 * alone and with pressure feedback, a sensor that fails at full boost, and two rounds of learning
 * with a what-if.
 *
 * @param result what it came to
 * @param closedLoop the pull with pressure feedback, for its log
 * @param failure the pull with the failing sensor, for its log
 */
public record Demo(Result result, PullRun closedLoop, PullRun failure) {
  /** Largest overshoot the closed loop may have, kPa: the project's own requirement. */
  private static final double OVERSHOOT_KPA = 5.0;

  /** Repeats of a pull lie within 3 to 5 kPa of each other (common practice, no source). */
  private static final double SETTLED_KPA = 3.0;

  private static final double FAILS_AFTER_REACHING_SECONDS = 0.8;
  private static final double NONE = Double.NaN;

  /**
   * Runs it.
   *
   * @param seed seed of every noise
   */
  public static Demo run(long seed, Steps steps) {
    ResultBuilder result = new ResultBuilder("demo").seed(seed);
    steps.begin("1 of 9  settings");
    String name = ProjectCarSettings.FILE_NAME;
    String text = ProjectCarSettings.text();
    LoadResult loaded = SettingsFile.parse(name, text);
    Settings settings = loaded.orThrow();
    result.units(settings.units()).settingsDigest(SettingsDigest.of(settings));
    long problems = loaded.problems().stream().filter(Demo::isError).count();
    result.measure(
        "demo.settings_problems",
        "problems in the settings",
        (double) problems,
        Units.COUNT,
        NONE,
        0);

    steps.begin("2 of 9  bench on the virtual valve");
    ValveSweep.add(result, settings.valve(), seed, steps);

    Settings openLoop =
        SettingsEdit.of(name, text)
            .set("feedback.enabled", false)
            .set("spool.enabled", false)
            .load()
            .orThrow();
    PullPlan plan = PullPlan.STANDARD.withSeed(seed);
    PullRun spring =
        pull(
            "3 of 9  pull on the spring",
            settings,
            plan.withEvents(SensorFailure.springOnly()),
            steps);
    PullRun open = pull("4 of 9  pull on base duty alone", openLoop, plan, steps);
    PullRun closed = pull("5 of 9  pull with pressure feedback", settings, plan, steps);
    PullMeasures best = PullMeasures.of(closed);
    double failsAt =
        Double.isNaN(best.reachSeconds())
            ? best.pullSeconds() / 2.0
            : best.reachSeconds() + FAILS_AFTER_REACHING_SECONDS;
    PullRun failed =
        pull(
            "6 of 9  sensor wire opens at full boost",
            settings,
            plan.withEvents(SensorFailure.wireOpensAt(failsAt)),
            steps);

    judge(result, PullMeasures.of(open), best, settings);
    SensorFailure.judge(result, failed, spring);
    result.add(PullsByRpm.plot(spring, open, closed, failed));
    result.add(PullResult.plot("open_loop", "Pull on base duty alone", open));
    result.add(PullResult.plot("closed_loop", "Pull with pressure feedback", closed));
    result.add(PullResult.plot("failure", "The sensor wire opens at full boost", failed));
    LearningRounds.add(result, openLoop, plan, steps);
    SettingsTables.add(result, settings);
    result.find(
        "your_own_car",
        Severity.NOTE,
        "Everything here is the built-in project car.",
        "copy docs/project-car.toml to car.toml, put in the numbers of your own car, and run"
            + " 'boostwright check car.toml', then 'boostwright pull'");
    result.caution(PullResult.VIRTUAL);
    result.provenance("settings", "the built-in project car");
    result.provenance("pulls", "gear 3 from 2500 to 6200 rpm, sea level, 20 °C");
    result.headline(headline(result, best, settings));
    return new Demo(result.build(), closed, failed);
  }

  private static boolean isError(Problem problem) {
    return problem.severity() == org.boostwright.core.settings.file.Severity.ERROR;
  }

  private static PullRun pull(String what, Settings settings, PullPlan plan, Steps steps) {
    steps.begin(what);
    return VirtualPull.run(settings, PlantParams.PROJECT_CAR, plan, steps::share);
  }

  private static void judge(
      ResultBuilder result, PullMeasures open, PullMeasures closed, Settings settings) {
    double limit = settings.limits().cutoffKpaAbs();
    result.measure(
        "demo.open_loop_peak_kpa",
        "highest pressure on base duty alone",
        open.peakMapKpaAbs(),
        Units.KPA_ABS,
        NONE,
        limit);
    result.measure(
        "demo.closed_loop_peak_kpa",
        "highest pressure with feedback",
        closed.peakMapKpaAbs(),
        Units.KPA_ABS,
        NONE,
        limit);
    result.measure(
        "demo.closed_loop_overshoot_kpa",
        "overshoot with feedback",
        closed.overshootKpa(),
        Units.KPA,
        NONE,
        OVERSHOOT_KPA);
    result.measure(
        "demo.closed_loop_settled_error_kpa",
        "farthest from target with feedback once settled, mean of 100 ms",
        closed.settledErrorKpa(),
        Units.KPA,
        -SETTLED_KPA,
        SETTLED_KPA);
    result.measure(
        "demo.closed_loop_reach_s",
        "time to the target with feedback and spool strategy",
        closed.reachSeconds(),
        Units.SECONDS);
    result.measure(
        "demo.open_loop_reach_s",
        "time to the target on base duty alone",
        open.reachSeconds(),
        Units.SECONDS);
    result.measure(
        "demo.closed_loop_faults",
        "faults in the pull with feedback",
        Long.bitCount(closed.faults()),
        Units.COUNT,
        NONE,
        0);
  }

  private static String headline(ResultBuilder result, PullMeasures closed, Settings settings) {
    DisplayUnits units = new DisplayUnits(settings.units());
    return switch (result.verdict()) {
      case PASSED ->
          String.format(
              Locale.ROOT,
              "The project car reaches its target in %.1f s, peaks at %s against a limit of %s, and"
                  + " falls to its spring when the sensor fails.",
              closed.reachSeconds(),
              units.text(closed.peakMapKpaAbs(), Units.KPA_ABS),
              units.text(settings.limits().cutoffKpaAbs(), Units.KPA_ABS));
      default -> "Something in the demonstration is not as it should be; see what failed below.";
    };
  }
}
