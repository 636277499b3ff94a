package org.boostwright.rig.cli;

import java.util.Locale;
import org.boostwright.rig.link.CaseOutcome;
import org.boostwright.rig.result.ResultBuilder;
import org.boostwright.rig.result.Severity;
import org.boostwright.rig.result.Units;

/** Puts the outcome of a case into a result: its reaction as a measurement, its words as a finding. */
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
    } else {
      result.measure(group + "." + outcome.id() + "_ms", outcome.text(), value, Units.MILLISECONDS);
    }
    boolean passed = outcome.verdict() == CaseOutcome.Verdict.PASSED;
    result.find(
        group + "_" + outcome.id(),
        passed ? Severity.NOTE : Severity.PROBLEM,
        outcome.text()
            + ": "
            + outcome.words()
            + (outcome.verdict() == CaseOutcome.Verdict.INVALID ? " (invalid)" : "")
            + (Double.isNaN(outcome.peakKpaAbs())
                ? ""
                : String.format(
                    Locale.ROOT, "; true pressure at most %.0f kPa", outcome.peakKpaAbs())),
        "");
  }
}
