package org.boostwright.rig.cli;

import java.util.ArrayList;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Locale;
import java.util.Map;
import org.boostwright.core.monitor.FaultCode;
import org.boostwright.core.settings.Settings;
import org.boostwright.core.state.SafetyState;
import org.boostwright.rig.replay.FaultEvent;
import org.boostwright.rig.replay.RecordResult;
import org.boostwright.rig.replay.TraceResult;
import org.boostwright.rig.replay.TraceSeries;
import org.boostwright.rig.replay.csv.Repair;
import org.boostwright.rig.result.Plot;
import org.boostwright.rig.result.Plot.Stroke;
import org.boostwright.rig.result.ResultBuilder;
import org.boostwright.rig.result.Severity;
import org.boostwright.rig.result.Units;

/** What a replay showed, as a result. */
final class ReplayResult {
  private static final String CAUTION =
      "A replay shows what the controller would have believed and asked for, not what the car would"
          + " then have done.";

  private ReplayResult() {}

  static void add(ResultBuilder result, TraceResult trace) {
    double none = Double.NaN;
    result.measure("replay.rows", "rows replayed", trace.rows(), Units.COUNT, 1, none);
    result.measure(
        "replay.skipped_rows",
        "rows before every signal had been read once",
        trace.skippedRows(),
        Units.COUNT);
    result.measure(
        "replay.repairs", "repairs to the log", (double) trace.log().repairCount(), Units.COUNT);
    result.measure("replay.restarts", "pauses of the logger", trace.restarts(), Units.COUNT);
    result.measure("replay.ticks", "controller ticks", (double) trace.ticks(), Units.COUNT);
    result.measure("replay.faults", "faults raised", trace.faults().size(), Units.COUNT, none, 0);
    result.measure(
        "replay.overboosts", "overboosts", trace.overboosts().size(), Units.COUNT, none, 0);
    result.measure(
        "replay.outside_table",
        "table lookups outside the axes",
        (double) trace.outsideTable(),
        Units.COUNT);
    result.measure(
        "replay.peak_map_kpa", "highest manifold pressure", trace.peakMapKpaAbs(), Units.KPA_ABS);
    result.measure(
        "replay.peak_duty_pct", "highest duty", 100.0 * trace.peakDutyFraction(), Units.PERCENT);
    states(result, trace.stateSeconds());
    events(result, trace.faults(), Severity.PROBLEM);
    events(result, trace.findings(), Severity.NOTE);
    if (!(trace.secondsIn(SafetyState.READY) + trace.secondsIn(SafetyState.CONTROLLING) > 0.0)) {
      result.find(
          "never_ready",
          Severity.CAUTION,
          "The controller never became ready, so nothing of its control was seen.",
          "if the log begins with the engine running, give --ambient-kpa-abs; otherwise look at"
              + " where the pressure sensor sits (sensors.map.location)");
    }
    trace.notes().forEach(note -> result.find("not_shown", Severity.NOTE, note, ""));
    for (Repair repair : trace.log().repairs()) {
      String code = "repair_" + repair.kind().name().toLowerCase(Locale.ROOT);
      result.find(code, Severity.NOTE, repair.text(), "");
    }
    result.find("watches", Severity.NOTE, judged(trace), "");
    result.add(plot(trace.series(), trace.settings()));
    result.caution(CAUTION);
    result.headline(headline(trace.rows(), trace.faults().size()));
  }

  /**
   * A run recorded by Boostwright itself.
   *
   * @param sameSettings it was recorded with these settings: then every bit must come again
   */
  static void add(ResultBuilder result, RecordResult run, Settings settings, boolean sameSettings) {
    double none = Double.NaN;
    double highest = sameSettings ? 0 : none;
    result.measure("replay.rows", "rows replayed", run.rows(), Units.COUNT, 1, none);
    result.measure(
        "replay.differing_rows",
        "rows whose outputs differ from the recorded ones",
        run.differingRows(),
        Units.COUNT,
        none,
        highest);
    result.measure(
        "replay.missing_ticks",
        "ticks the recorder lost",
        (double) run.missingTicks(),
        Units.COUNT);
    result.measure("replay.faults", "faults raised", run.faults().size(), Units.COUNT);
    result.measure("replay.overboosts", "overboosts", run.overboosts().size(), Units.COUNT);
    states(result, run.stateSeconds());
    events(result, run.faults(), Severity.CAUTION);
    events(result, run.findings(), Severity.NOTE);
    RecordResult.Difference first = run.firstDifference();
    if (first != null) {
      result.find(
          "differs",
          sameSettings ? Severity.PROBLEM : Severity.NOTE,
          String.format(
              Locale.ROOT,
              "Outputs differ from line %d on: %s was %s and is %s.",
              first.line(),
              first.column(),
              first.recorded(),
              first.replayed()),
          sameSettings
              ? "if the run was recorded before every proof was given, or ticks were lost, this is"
                  + " expected; otherwise the program differs from the one that recorded it"
              : "the run was recorded with other settings, so a difference is expected");
    }
    result.add(plot(run.series(), settings));
    result.caution(CAUTION);
    result.headline(headline(run.rows(), run.faults().size()));
  }

  private static void states(ResultBuilder result, Map<SafetyState, Double> seconds) {
    seconds.forEach(
        (state, time) ->
            result.measure(
                "replay.seconds_" + state.name().toLowerCase(Locale.ROOT),
                "time " + state.words(),
                time,
                Units.SECONDS));
  }

  private static String headline(int replayed, int faults) {
    String rows = replayed + " rows replayed";
    return faults == 0
        ? rows + ", no fault raised."
        : rows + ", " + faults + (faults == 1 ? " fault" : " faults") + " raised.";
  }

  /** One finding for each kind, with its first place and how often. */
  private static void events(ResultBuilder result, List<FaultEvent> events, Severity severity) {
    Map<FaultCode, List<FaultEvent>> kinds = new LinkedHashMap<>();
    for (FaultEvent event : events) {
      kinds.computeIfAbsent(event.code(), code -> new ArrayList<>()).add(event);
    }
    kinds.forEach(
        (code, all) -> {
          FaultEvent first = all.get(0);
          result.find(
              code.id(),
              severity,
              String.format(
                  Locale.ROOT,
                  "%s, %d times, first at %.2f s (line %d of the log): %.1f kPa absolute,"
                      + " throttle %.0f %%, %.0f rpm.",
                  code.id(),
                  all.size(),
                  first.seconds(),
                  first.line(),
                  first.mapKpaAbs(),
                  first.throttlePct(),
                  first.engineRpm()),
              severity == Severity.PROBLEM
                  ? "look at that line; the fault clears " + code.clearRule().words()
                  : "");
        });
  }

  /** "No fault" is not "not tested": which watches had anything to judge. */
  private static String judged(TraceResult trace) {
    List<String> untested = new ArrayList<>();
    for (FaultCode code : FaultCode.values()) {
      if (!trace.judged().contains(code)) {
        untested.add(code.id());
      }
    }
    return untested.isEmpty()
        ? "Every watch judged samples of this log."
        : "Not tested by this log: " + String.join(", ", untested) + ".";
  }

  private static Plot plot(TraceSeries series, Settings settings) {
    int n = series.size();
    double[] x = new double[n];
    double[] map = new double[n];
    double[] target = new double[n];
    double[] duty = new double[n];
    double[] throttle = new double[n];
    double[] rpm = new double[n];
    List<Plot.Band> bands = new ArrayList<>();
    int from = 0;
    for (int i = 0; i < n; i++) {
      x[i] = series.seconds(i);
      map[i] = series.mapKpaAbs(i);
      target[i] = series.targetKpaAbs(i);
      duty[i] = 100.0 * series.dutyFraction(i);
      throttle[i] = series.throttlePct(i);
      rpm[i] = series.engineRpm(i);
      boolean last = i == n - 1;
      if (last || series.state(i + 1) != series.state(from)) {
        SafetyState state = SafetyState.values()[series.state(from)];
        bands.add(new Plot.Band(state.words(), x[from], last ? x[i] : series.seconds(i + 1)));
        from = i + 1;
      }
    }
    return new Plot(
        "replay",
        "The log through the controller",
        "time since the first row",
        Units.SECONDS,
        x,
        List.of(
            new Plot.Line("map", "manifold pressure", Units.KPA_ABS, Stroke.SOLID, map),
            new Plot.Line("target", "target", Units.KPA_ABS, Stroke.DASHED, target),
            new Plot.Line("duty", "duty", Units.PERCENT, Stroke.SOLID, duty),
            new Plot.Line("throttle", "driver's demand", Units.PERCENT, Stroke.DASHED, throttle),
            new Plot.Line("rpm", "engine speed", Units.RPM, Stroke.SOLID, rpm)),
        List.of(new Plot.Limit("overboost limit", Units.KPA_ABS, settings.limits().cutoffKpaAbs())),
        bands);
  }
}
