package org.boostwright.rig.scenario;

import java.util.Locale;
import org.boostwright.core.monitor.FaultCode;
import org.boostwright.core.record.LogFormat;
import org.boostwright.rig.logs.LogPlots;
import org.boostwright.rig.report.DisplayUnits;
import org.boostwright.rig.result.Plot;
import org.boostwright.rig.result.Plot.Stroke;
import org.boostwright.rig.result.ResultBuilder;
import org.boostwright.rig.result.Severity;
import org.boostwright.rig.result.Units;

/** What a pull came to, as a result. */
public final class PullResult {
  /** What a result of the virtual car must not be taken for. */
  public static final String VIRTUAL =
      "This is the virtual car. It proves program and settings, not your hoses, wastegate, fuel,"
          + " ignition or engine.";

  private static final double NONE = Double.NaN;
  private static final int ROWS_BEFORE = 200;

  private PullResult() {}

  /** Everything a single pull says. */
  public static void add(ResultBuilder result, PullRun run) {
    PullMeasures m = PullMeasures.of(run);
    double limit = run.settings().limits().cutoffKpaAbs();
    result.measure(
        "pull.peak_map_kpa",
        "highest manifold pressure",
        m.peakMapKpaAbs(),
        Units.KPA_ABS,
        NONE,
        limit);
    result.measure(
        "pull.above_limit_ms",
        "time above the overboost limit",
        1e3 * m.aboveLimitSeconds(),
        Units.MILLISECONDS,
        NONE,
        0);
    result.measure(
        "pull.faults",
        "faults that rest the valve",
        Long.bitCount(m.faults()),
        Units.COUNT,
        NONE,
        0);
    result.measure("pull.reach_s", "time to the target", m.reachSeconds(), Units.SECONDS);
    result.measure("pull.reach_rpm", "engine speed then", m.reachRpm(), Units.RPM);
    result.measure("pull.overshoot_kpa", "highest over target", m.overshootKpa(), Units.KPA);
    result.measure(
        "pull.settled_error_kpa",
        "farthest from target once settled, mean of 100 ms",
        m.settledErrorKpa(),
        Units.KPA);
    result.measure(
        "pull.peak_turbo_krpm", "highest turbo speed", m.peakTurboKrpm(), Units.THOUSAND_RPM);
    result.measure("pull.seconds", "full throttle lasted", m.pullSeconds(), Units.SECONDS);
    result.measure(
        "pull.outside_table",
        "table lookups outside the axes",
        (double) m.outsideTable(),
        Units.COUNT);
    faults(result, m.faults(), Severity.PROBLEM);
    faults(result, m.findings(), Severity.NOTE);
    if (Double.isNaN(m.reachSeconds())) {
      result.find(
          "target_not_reached",
          Severity.CAUTION,
          "The pressure never came within 2 kPa of the target.",
          "look at base duty and duty ceiling, or ask for less");
    }
    result.add(plot("pull", "The pull", run));
    result.caution(VIRTUAL);
    result.headline(headline(run, m));
  }

  private static String headline(PullRun run, PullMeasures m) {
    DisplayUnits units = new DisplayUnits(run.settings().units());
    String peak = units.text(m.peakMapKpaAbs(), Units.KPA_ABS);
    if (m.faults() != 0L) {
      return "Peak " + peak + "; a fault put the valve at rest.";
    }
    if (Double.isNaN(m.reachSeconds())) {
      return "Peak " + peak + "; the target was not reached.";
    }
    return String.format(
        Locale.ROOT,
        "Peak %s, %s over target, reached after %.2f s at %.0f rpm.",
        peak,
        units.text(m.overshootKpa(), Units.KPA),
        m.reachSeconds(),
        m.reachRpm());
  }

  private static void faults(ResultBuilder result, long bits, Severity severity) {
    for (FaultCode code : FaultCode.values()) {
      if ((bits & code.bit()) != 0L) {
        result.find(
            code.id(),
            severity,
            code.id().replace('_', ' ') + " was confirmed.",
            severity == Severity.PROBLEM ? "it clears " + code.clearRule().words() : "");
      }
    }
  }

  /** The plot of a pull from a second before the throttle opens, with the car's true pressures. */
  public static Plot plot(String id, String title, PullRun run) {
    int from = Math.max(0, run.openedAt() - ROWS_BEFORE);
    RunLog log = run.log();
    return LogPlots.run(
        id,
        title,
        log.recordRows().subList(from, log.rows()),
        log.get(run.openedAt(), LogFormat.TIME_NS),
        run.settings(),
        truth(log, from, "true_map", "true pressure", Units.KPA_ABS, RunLog.TRUE_MAP),
        truth(log, from, "actuator", "actuator", Units.KPA_GAUGE, RunLog.TRUE_ACTUATOR));
  }

  private static Plot.Line truth(
      RunLog log, int from, String id, String label, String unit, int column) {
    return new Plot.Line(id, label, unit, Stroke.DOTTED, log.column(column, from));
  }
}
