package org.boostwright.rig.demo;

import java.util.ArrayList;
import java.util.Arrays;
import java.util.List;
import org.boostwright.core.record.LogFormat;
import org.boostwright.rig.result.Plot;
import org.boostwright.rig.result.Plot.Stroke;
import org.boostwright.rig.result.Units;
import org.boostwright.rig.scenario.PullRun;
import org.boostwright.rig.scenario.RunLog;

/** True pressure of several pulls over engine speed, on one sheet. */
final class PullsByRpm {
  private static final double STEP_RPM = 25.0;
  private static final int TARGET = LogFormat.column("target_kpa_abs");

  private PullsByRpm() {}

  static Plot plot(PullRun spring, PullRun open, PullRun closed, PullRun failed) {
    double from = closed.plan().fromRpm();
    int n = (int) Math.floor((closed.plan().toRpm() - from) / STEP_RPM) + 1;
    double[] rpm = new double[n];
    for (int i = 0; i < n; i++) {
      rpm[i] = from + i * STEP_RPM;
    }
    List<Plot.Line> lines = new ArrayList<>();
    lines.add(line("closed", "with pressure feedback", Stroke.SOLID, rpm, closed, false));
    lines.add(line("target", "target", Stroke.DASHED, rpm, closed, true));
    lines.add(line("open", "base duty alone", Stroke.SOLID, rpm, open, false));
    lines.add(line("failed", "sensor wire opens", Stroke.DOTTED, rpm, failed, false));
    lines.add(line("spring", "spring alone", Stroke.DASHED, rpm, spring, false));
    return new Plot(
        "pulls",
        "Four pulls over engine speed",
        "engine speed",
        Units.RPM,
        rpm,
        lines,
        List.of(
            new Plot.Limit(
                "overboost limit", Units.KPA_ABS, closed.settings().limits().cutoffKpaAbs())),
        List.of());
  }

  /** Values where the run first passes each engine speed. */
  private static Plot.Line line(
      String id, String label, Stroke stroke, double[] rpm, PullRun run, boolean target) {
    double[] y = new double[rpm.length];
    Arrays.fill(y, Double.NaN);
    int row = run.openedAt();
    for (int i = 0; i < rpm.length; i++) {
      while (row < run.shutAt() && !(run.log().get(row, RunLog.TRUE_RPM) >= rpm[i])) {
        row++;
      }
      // A speed below the one at which the throttle opened was never passed.
      if (row < run.shutAt() && run.log().get(row, RunLog.TRUE_RPM) < rpm[i] + STEP_RPM) {
        y[i] = run.log().get(row, target ? TARGET : RunLog.TRUE_MAP);
      }
    }
    return new Plot.Line(id, label, Units.KPA_ABS, stroke, y);
  }
}
