package org.boostwright.rig.logs;

import java.util.ArrayList;
import java.util.List;
import org.boostwright.core.record.LogFormat;
import org.boostwright.core.settings.Settings;
import org.boostwright.core.state.SafetyState;
import org.boostwright.rig.result.Plot;
import org.boostwright.rig.result.Plot.Stroke;
import org.boostwright.rig.result.Units;

/** Plots of log rows: pressure against target and limit, duty, engine speed, safety states. */
public final class LogPlots {
  private static final int TARGET = LogFormat.column("target_kpa_abs");
  private static final int BASE_DUTY = LogFormat.column("base_duty_fraction");
  private static final int THROTTLE = LogFormat.column("throttle_pct");
  private static final int RPM = LogFormat.column("engine_rpm");

  private LogPlots() {}

  /**
   * The plot of a run.
   *
   * @param id id of the plot
   * @param title what is seen
   * @param rows rows of {@link LogFormat}, in time order, at least one
   * @param zeroNanos time of the row that is shown as 0 s
   * @param settings settings of the run, for the overboost limit
   * @param more further lines, one value for each row, such as the true pressure of a virtual car
   */
  public static Plot run(
      String id,
      String title,
      List<double[]> rows,
      double zeroNanos,
      Settings settings,
      Plot.Line... more) {
    double[] seconds = new double[rows.size()];
    for (int i = 0; i < seconds.length; i++) {
      seconds[i] = (rows.get(i)[LogFormat.TIME_NS] - zeroNanos) / 1e9;
    }
    List<Plot.Line> lines = new ArrayList<>();
    lines.add(
        line("map", "manifold pressure", Units.KPA_ABS, Stroke.SOLID, rows, LogFormat.MAP, 1));
    lines.add(line("target", "target", Units.KPA_ABS, Stroke.DASHED, rows, TARGET, 1));
    lines.addAll(List.of(more));
    lines.add(line("duty", "duty", Units.PERCENT, Stroke.SOLID, rows, LogFormat.DUTY, 100));
    lines.add(line("base_duty", "base duty", Units.PERCENT, Stroke.DOTTED, rows, BASE_DUTY, 100));
    lines.add(line("throttle", "throttle", Units.PERCENT, Stroke.DASHED, rows, THROTTLE, 1));
    lines.add(line("rpm", "engine speed", Units.RPM, Stroke.SOLID, rows, RPM, 1));
    return new Plot(
        id,
        title,
        "time",
        Units.SECONDS,
        seconds,
        lines,
        List.of(new Plot.Limit("overboost limit", Units.KPA_ABS, settings.limits().cutoffKpaAbs())),
        bands(rows, seconds));
  }

  private static Plot.Line line(
      String id,
      String label,
      String unit,
      Stroke stroke,
      List<double[]> rows,
      int column,
      double factor) {
    double[] y = new double[rows.size()];
    for (int i = 0; i < y.length; i++) {
      y[i] = factor * rows.get(i)[column];
    }
    return new Plot.Line(id, label, unit, stroke, y);
  }

  /** Stretches of one safety state; in a state held by faults the label names them. */
  private static List<Plot.Band> bands(List<double[]> rows, double[] seconds) {
    List<Plot.Band> bands = new ArrayList<>();
    int from = 0;
    for (int i = 1; i <= rows.size(); i++) {
      if (i == rows.size() || !sameBand(rows.get(from), rows.get(i))) {
        double end = i == rows.size() ? seconds[i - 1] : seconds[i];
        bands.add(new Plot.Band(label(rows.get(from)), seconds[from], end));
        from = i;
      }
    }
    return bands;
  }

  private static boolean sameBand(double[] a, double[] b) {
    return a[LogFormat.STATE] == b[LogFormat.STATE]
        && (!heldByFault(a) || a[LogFormat.FAULTS] == b[LogFormat.FAULTS]);
  }

  private static boolean heldByFault(double[] row) {
    SafetyState state = state(row);
    return state == SafetyState.HELD_AT_SPRING || state == SafetyState.LOCKED_UNTIL_RESTART;
  }

  private static SafetyState state(double[] row) {
    return SafetyState.values()[(int) row[LogFormat.STATE]];
  }

  private static String label(double[] row) {
    StringBuilder label = new StringBuilder(state(row).words());
    if (heldByFault(row)) {
      label.append(" (");
      LogFormat.appendFaults(label, (long) row[LogFormat.FAULTS]);
      label.append(')');
    }
    return label.toString();
  }
}
