package org.boostwright.rig.cli;

import java.util.ArrayList;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.function.ToDoubleFunction;
import org.boostwright.rig.result.ResultBuilder;
import org.boostwright.rig.result.TimeLine;
import org.boostwright.rig.result.TimeLine.Mark;
import org.boostwright.rig.result.Units;
import org.boostwright.rig.scenario.campaign.CampaignSummary;
import org.boostwright.rig.scenario.campaign.KindSummary;
import org.boostwright.rig.scenario.file.ScenarioVerdict;

/** What the faults command saw, as time-lines from the fault taking effect. */
final class FaultTimeLines {
  private FaultTimeLines() {}

  /** One row for each kind of fault that was reported while boost was controlled. */
  static void add(ResultBuilder result, CampaignSummary summary) {
    List<TimeLine.Row> rows = new ArrayList<>();
    for (KindSummary kind : summary.kinds()) {
      // Without a report the coil goes off at the end of the pull, which is no reaction.
      if (!Double.isNaN(kind.detectionMs().median())) {
        List<Mark> marks = new ArrayList<>();
        times(marks, "reported", kind.detectionMs());
        times(marks, "coil off", kind.reactionMs());
        rows.add(new TimeLine.Row(kind.kind().words(), marks, Double.NaN));
      }
    }
    line(
        result,
        "From each kind of fault taking effect under boost: half and the last of its runs",
        rows);
  }

  private static void times(List<Mark> marks, String what, KindSummary.Times times) {
    if (times.median() < times.longest()) {
      marks.add(new Mark(what + " (half)", times.median()));
    }
    if (!Double.isNaN(times.longest())) {
      marks.add(new Mark(what + " (last)", times.longest()));
    }
  }

  /** One row for each scenario: its slowest seed, the coil off against the time it is allowed. */
  static void add(ResultBuilder result, List<ScenarioVerdict> verdicts) {
    Map<String, List<ScenarioVerdict>> byId = new LinkedHashMap<>();
    for (ScenarioVerdict verdict : verdicts) {
      if (verdict.variation().isEmpty() && verdict.status() != ScenarioVerdict.Status.INVALID) {
        byId.computeIfAbsent(verdict.scenario().id(), id -> new ArrayList<>()).add(verdict);
      }
    }
    List<TimeLine.Row> rows = new ArrayList<>();
    for (List<ScenarioVerdict> seeds : byId.values()) {
      double limit = 1e3 * seeds.get(0).scenario().expect().restWithinSeconds();
      List<Mark> marks = new ArrayList<>();
      double reported = slowestMillis(seeds, ScenarioVerdict::detectionSeconds);
      if (!Double.isNaN(reported)) {
        marks.add(new Mark("reported", reported));
      }
      double off = slowestMillis(seeds, ScenarioVerdict::reactionSeconds);
      if (!Double.isNaN(off) || !Double.isNaN(limit)) {
        marks.add(new Mark("coil off", off));
      }
      if (!marks.isEmpty()) {
        rows.add(new TimeLine.Row(seeds.get(0).scenario().text(), marks, limit));
      }
    }
    line(result, "From each scenario's first fault taking effect, slowest of its seeds", rows);
  }

  /** The longest time, ms; NaN as soon as one seed has none, because "never" is the slowest. */
  private static double slowestMillis(
      List<ScenarioVerdict> seeds, ToDoubleFunction<ScenarioVerdict> seconds) {
    return 1e3 * seeds.stream().mapToDouble(seconds).reduce(0.0, Math::max);
  }

  private static void line(ResultBuilder result, String title, List<TimeLine.Row> rows) {
    if (!rows.isEmpty()) {
      result.add(new TimeLine("reactions", title, Units.MILLISECONDS, rows));
    }
  }
}
