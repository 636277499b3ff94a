package org.boostwright.rig.cli;

import java.util.ArrayList;
import java.util.List;
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
    line(result, "From each kind of fault taking effect under boost: half and the last of its runs", rows);
  }

  private static void times(List<Mark> marks, String what, KindSummary.Times times) {
    if (times.median() < times.longest()) {
      marks.add(new Mark(what + " (half)", times.median()));
    }
    if (!Double.isNaN(times.longest())) {
      marks.add(new Mark(what + " (last)", times.longest()));
    }
  }

  /** One row for each scenario and seed; the coil off against the time the scenario allows. */
  static void add(ResultBuilder result, List<ScenarioVerdict> verdicts) {
    List<TimeLine.Row> rows = new ArrayList<>();
    for (ScenarioVerdict verdict : verdicts) {
      if (!verdict.variation().isEmpty() || verdict.status() == ScenarioVerdict.Status.INVALID) {
        continue;
      }
      double limit = 1e3 * verdict.scenario().expect().restWithinSeconds();
      List<Mark> marks = new ArrayList<>();
      if (!Double.isNaN(verdict.detectionSeconds())) {
        marks.add(new Mark("reported", 1e3 * verdict.detectionSeconds()));
      }
      if (!Double.isNaN(verdict.reactionSeconds()) || !Double.isNaN(limit)) {
        marks.add(new Mark("coil off", 1e3 * verdict.reactionSeconds()));
      }
      if (!marks.isEmpty()) {
        rows.add(new TimeLine.Row(verdict.name(), marks, limit));
      }
    }
    line(result, "From each scenario's first fault taking effect", rows);
  }

  private static void line(ResultBuilder result, String title, List<TimeLine.Row> rows) {
    if (!rows.isEmpty()) {
      result.add(new TimeLine("reactions", title, Units.MILLISECONDS, rows));
    }
  }
}
