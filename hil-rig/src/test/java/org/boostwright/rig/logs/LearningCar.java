package org.boostwright.rig.logs;

import java.util.ArrayList;
import java.util.List;
import org.boostwright.core.settings.FeedbackSettings;
import org.boostwright.core.settings.Settings;
import org.boostwright.core.settings.SpoolSettings;
import org.boostwright.core.table.Axis;
import org.boostwright.core.table.Curve;
import org.boostwright.core.table.Table2d;
import org.boostwright.rig.logs.pulls.DriveLog;
import org.boostwright.rig.plant.PlantParams;
import org.boostwright.rig.scenario.ProjectCarSettings;
import org.boostwright.rig.scenario.PullPlan;
import org.boostwright.rig.scenario.PullRun;
import org.boostwright.rig.scenario.VirtualPull;

/** Virtual drives for the tests of learning from logs. */
public final class LearningCar {
  private LearningCar() {}

  /**
   * Settings of the project car before its duty ceiling was set as low as lets boost come. Under
   * the ceiling it is delivered with, boost never gets to where overboost, spike and hunting show
   * themselves in half of the drawn cars: there is nothing to be learnt there.
   */
  public static Settings settings() {
    Settings project = ProjectCarSettings.load();
    return project.withLimits(
        project
            .limits()
            .withDutyCeiling(
                new Curve(
                    new Axis(1500.0, 2000.0, 3500.0, 4500.0, 5500.0, 6800.0),
                    0.0,
                    0.85,
                    0.85,
                    0.44,
                    0.47,
                    0.50)));
  }

  /** Settings driven on base duty alone. */
  public static Settings baseDutyAlone(Settings s) {
    FeedbackSettings f = s.feedback();
    SpoolSettings spool = s.spool();
    return s.withFeedback(
            new FeedbackSettings(
                false,
                f.kpDutyPerKpa(),
                f.kiDutyPerKpaSecond(),
                f.kdDutySecondPerKpa(),
                f.trackingSeconds(),
                f.derivativeFilterSeconds(),
                f.activeWithinKpa()))
        .withSpool(
            new SpoolSettings(
                false, spool.leadSeconds(), spool.timeLimitSeconds(), spool.minRiseKpaPerSecond()));
  }

  /** Base duty times a factor; {@code column} -1 for every column, else that one alone. */
  public static Settings scaledBase(Settings s, double factor, int column) {
    Table2d base = s.baseDuty();
    double[] values = base.values();
    int columns = base.columns().size();
    for (int i = 0; i < values.length; i++) {
      values[i] *= column < 0 || i % columns == column ? factor : 1.0;
    }
    return s.withBaseDuty(new Table2d(base.rows(), base.columns(), values));
  }

  /** Pulls with seeds of their own. */
  public static List<PullRun> pulls(
      Settings settings, PlantParams car, PullPlan plan, long seed, int count) {
    List<PullRun> runs = new ArrayList<>();
    for (int i = 0; i < count; i++) {
      runs.add(VirtualPull.run(settings, car, plan.withSeed(seed + i), share -> {}));
    }
    return runs;
  }

  /** Their logs. */
  public static List<DriveLog> logs(List<PullRun> runs) {
    List<DriveLog> logs = new ArrayList<>();
    for (PullRun run : runs) {
      logs.add(log(run));
    }
    return logs;
  }

  /** Its log. */
  public static DriveLog log(PullRun run) {
    return DriveLog.ofRecord("pull " + run.plan().seed(), run.log().recordRows());
  }
}
