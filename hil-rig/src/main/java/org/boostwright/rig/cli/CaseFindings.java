package org.boostwright.rig.cli;

import java.util.Locale;
import org.boostwright.rig.link.CaseOutcome;
import org.boostwright.rig.result.ResultBuilder;
import org.boostwright.rig.result.Severity;
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

  private static String number(String words, double value) {
    return value > 0.0 ? String.format(Locale.ROOT, words, value) : "";
  }
}
