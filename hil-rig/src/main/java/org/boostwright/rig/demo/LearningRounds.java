package org.boostwright.rig.demo;

import java.util.ArrayList;
import java.util.Arrays;
import java.util.List;
import java.util.Locale;
import org.boostwright.core.settings.Settings;
import org.boostwright.core.table.Table2d;
import org.boostwright.rig.logs.correct.Caution;
import org.boostwright.rig.logs.correct.Correction;
import org.boostwright.rig.logs.correct.TableCorrection;
import org.boostwright.rig.logs.identify.CarTwin;
import org.boostwright.rig.logs.identify.RecordedDrive;
import org.boostwright.rig.logs.pulls.DriveLog;
import org.boostwright.rig.logs.pulls.Pull;
import org.boostwright.rig.logs.pulls.PullFinder;
import org.boostwright.rig.logs.pulls.PullRules;
import org.boostwright.rig.logs.whatif.Prediction;
import org.boostwright.rig.logs.whatif.WhatIf;
import org.boostwright.rig.plant.PlantParams;
import org.boostwright.rig.result.Plot;
import org.boostwright.rig.result.Plot.Stroke;
import org.boostwright.rig.result.ResultBuilder;
import org.boostwright.rig.result.Severity;
import org.boostwright.rig.result.Units;
import org.boostwright.rig.scenario.PullPlan;
import org.boostwright.rig.scenario.VirtualPull;

/**
 * A first table that is 15 % short, corrected from two rounds of three pulls, and the first of
 * these pulls computed under the corrected table before that is driven.
 */
final class LearningRounds {
  private static final double FIRST_TABLE = 0.85;
  private static final double SETTLED_KPA = 3.0;
  private static final double WHAT_IF_KPA = 5.0;
  private static final double NONE = Double.NaN;
  private static final double SETTLED_RPM = 4200.0;
  private static final int PULLS = 3;

  private LearningRounds() {}

  static void add(ResultBuilder result, Settings openLoop, PullPlan plan, Steps steps) {
    Settings first = openLoop.withBaseDuty(shorter(openLoop.baseDuty()));
    List<DriveLog> before = round("7 of 9  learning round 1", first, plan, 0, steps);
    Correction one = correct(first, before);
    Settings second = first.withBaseDuty(one.after());
    List<DriveLog> middle = round("8 of 9  learning round 2", second, plan, 1, steps);
    Correction two = correct(second, middle);
    Settings third = second.withBaseDuty(two.after());
    steps.begin("9 of 9  what if, and the proof");
    CarTwin twin = one.twin();
    if (one.refused() || two.refused() || twin == null) {
      result.find(
          "learning_refused",
          Severity.PROBLEM,
          "A correction was refused on the project car.",
          "this is a defect; please report it");
      return;
    }
    Pull recorded = pull(before.get(0));
    Prediction prediction = WhatIf.of(recorded, first, third, twin, plan.seed());
    DriveLog proof = drive(third, plan.withSeed(plan.seed() + 10L * PULLS));
    steps.share(1.0);
    result.measure(
        "demo.learning_error_before_kpa",
        "boost less target with the first table",
        error(before.get(0)),
        Units.KPA);
    result.measure(
        "demo.learning_error_middle_kpa", "after one round", error(middle.get(0)), Units.KPA);
    result.measure(
        "demo.learning_error_after_kpa",
        "after two rounds",
        error(proof),
        Units.KPA,
        -SETTLED_KPA,
        SETTLED_KPA);
    result.measure(
        "demo.what_if_rms_kpa",
        "computed what-if against the pull then driven, root mean square",
        distance(prediction, pull(proof)),
        Units.KPA,
        NONE,
        WHAT_IF_KPA);
    result.add(plot(before.get(0), middle.get(0), proof, prediction));
    result.find(
        "learnt",
        Severity.NOTE,
        String.format(
            Locale.ROOT,
            "A first table %.0f %% short was corrected from two rounds of %d pulls.",
            100.0 * (1.0 - FIRST_TABLE),
            PULLS),
        "");
  }

  private static Table2d shorter(Table2d base) {
    double[] values = base.values();
    for (int i = 0; i < values.length; i++) {
      values[i] *= FIRST_TABLE;
    }
    return new Table2d(base.rows(), base.columns(), values);
  }

  private static List<DriveLog> round(
      String what, Settings settings, PullPlan plan, int round, Steps steps) {
    steps.begin(what);
    List<DriveLog> logs = new ArrayList<>();
    for (int i = 0; i < PULLS; i++) {
      logs.add(drive(settings, plan.withSeed(plan.seed() + 10L * round + i)));
      steps.share((i + 1.0) / (PULLS + 1.0));
    }
    return logs;
  }

  private static DriveLog drive(Settings settings, PullPlan plan) {
    return DriveLog.ofRecord(
        "pull " + plan.seed(),
        VirtualPull.run(settings, PlantParams.PROJECT_CAR, plan, share -> {}).log().recordRows());
  }

  private static Correction correct(Settings settings, List<DriveLog> logs) {
    return TableCorrection.of(settings, PlantParams.PROJECT_CAR, logs, Caution.DEFAULT, true);
  }

  private static Pull pull(DriveLog log) {
    return PullFinder.find(log, PullRules.FULL_THROTTLE).get(0);
  }

  /** Mean recorded pressure over target from where boost is settled to the end, kPa. */
  private static double error(DriveLog log) {
    Pull pull = pull(log);
    double sum = 0.0;
    int n = 0;
    for (int r = pull.from(); r < pull.to(); r++) {
      if (log.rpm(r) >= SETTLED_RPM) {
        sum += log.meanKpaAbs(r) - log.targetKpaAbs(r);
        n++;
      }
    }
    return sum / n;
  }

  private static double distance(Prediction prediction, Pull truth) {
    int n = Math.min(prediction.kpaAbs().length, RecordedDrive.points(truth));
    double square = 0.0;
    for (int i = 0; i < n; i++) {
      double off = prediction.kpaAbs()[i] - truth.log().meanKpaAbs(RecordedDrive.row(truth, i));
      square += off * off;
    }
    return Math.sqrt(square / n);
  }

  private static Plot plot(
      DriveLog before, DriveLog middle, DriveLog proof, Prediction prediction) {
    double[] x = prediction.seconds();
    double[] target = new double[x.length];
    Pull pull = pull(proof);
    for (int i = 0; i < x.length; i++) {
      int row = RecordedDrive.row(pull, i);
      target[i] = row < pull.to() ? proof.targetKpaAbs(row) : NONE;
    }
    return new Plot(
        "learning",
        "Two rounds of learning, and the computed what-if",
        "time since the throttle opened",
        Units.SECONDS,
        x,
        List.of(
            new Plot.Line("target", "target", Units.KPA_ABS, Stroke.DASHED, target),
            line("before", "first table", before, x.length),
            line("middle", "after one round", middle, x.length),
            line("after", "after two rounds", proof, x.length),
            new Plot.Line(
                "what_if", "what if, computed", Units.KPA_ABS, Stroke.DOTTED, prediction.kpaAbs())),
        List.of(),
        List.of());
  }

  private static Plot.Line line(String id, String label, DriveLog log, int points) {
    Pull pull = pull(log);
    double[] y = new double[points];
    Arrays.fill(y, NONE);
    for (int i = 0; i < Math.min(points, RecordedDrive.points(pull)); i++) {
      y[i] = log.meanKpaAbs(RecordedDrive.row(pull, i));
    }
    return new Plot.Line(id, label, Units.KPA_ABS, Stroke.SOLID, y);
  }
}
