package org.boostwright.rig.cli;

import java.util.ArrayList;
import java.util.List;
import java.util.Locale;
import org.boostwright.rig.link.CaseOutcome;
import org.boostwright.rig.result.ResultBuilder;
import org.boostwright.rig.result.Severity;
import org.boostwright.rig.result.TimeLine;
import org.boostwright.rig.result.Units;

/**
 * Puts the outcome of a case into a result: its reaction as a measurement, its words as a finding.
 */
final class CaseFindings {
  private CaseFindings() {}

  /**
   * Adds an outcome.
   *
   * @param group first part of the ids
   */
  static void add(ResultBuilder result, String group, CaseOutcome outcome) {
    boolean judgedByTime = !Double.isNaN(outcome.withinMillis());
    double value =
        outcome.verdict() == CaseOutcome.Verdict.INVALID ? Double.NaN : outcome.reactionMillis();
    if (judgedByTime) {
      result.measure(
          group + "." + outcome.id() + "_ms",
          outcome.text(),
          value,
          Units.MILLISECONDS,
          Double.NaN,
          outcome.withinMillis());
    } else if (!Double.isNaN(value)) {
      result.measure(group + "." + outcome.id() + "_ms", outcome.text(), value, Units.MILLISECONDS);
    }
    String verdict = outcome.verdict().name().toLowerCase(Locale.ROOT);
    result.find(
        group + "_" + verdict + "_" + outcome.id(),
        outcome.verdict() == CaseOutcome.Verdict.PASSED ? Severity.NOTE : Severity.PROBLEM,
        outcome.text()
            + ": "
            + verdict
            + "; "
            + outcome.words()
            + number("; true pressure at most %.0f kPa", outcome.peakKpaAbs())
            + number("; line or rig late by at most %.1f ms", outcome.lateMillis()),
        outcome.verdict() == CaseOutcome.Verdict.INVALID && outcome.lateMillis() > 0.0
            ? "run it again on a quieter machine"
            : "");
  }

  /** Every reaction that was measured or awaited, against the time it is allowed. */
  static void timeLine(ResultBuilder result, List<CaseOutcome> outcomes) {
    List<TimeLine.Row> rows = new ArrayList<>();
    for (CaseOutcome outcome : outcomes) {
      boolean timed =
          !Double.isNaN(outcome.reactionMillis()) || !Double.isNaN(outcome.withinMillis());
      if (timed && outcome.verdict() != CaseOutcome.Verdict.INVALID) {
        rows.add(
            new TimeLine.Row(
                outcome.text(),
                List.of(new TimeLine.Mark("reaction", outcome.reactionMillis())),
                outcome.withinMillis()));
      }
    }
    if (!rows.isEmpty()) {
      result.add(
          new TimeLine(
              "reactions",
              "From the fault at the controller's wire to its reaction",
              Units.MILLISECONDS,
              rows));
    }
  }

  private static String number(String words, double value) {
    return value > 0.0 ? String.format(Locale.ROOT, words, value) : "";
  }
}
