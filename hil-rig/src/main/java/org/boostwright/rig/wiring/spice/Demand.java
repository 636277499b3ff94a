package org.boostwright.rig.wiring.spice;

import java.util.List;
import java.util.Locale;
import java.util.Map;

/**
 * What one printed result of a simulation must be.
 *
 * @param requirement id of the hardware requirement it answers
 * @param measure name printed by the deck
 * @param text what is measured, in a workshop's words
 * @param unit shown beside the value
 * @param scale shown value over printed value
 * @param low lowest allowed, in the shown unit
 * @param high highest allowed, in the shown unit
 * @param runs how many values the deck must print
 */
public record Demand(
    String requirement,
    String measure,
    String text,
    String unit,
    double scale,
    double low,
    double high,
    int runs) {

  /** What became of a demand. */
  public enum Verdict {
    PASSED,
    FAILED,
    /** The simulation did not print what it was asked for: neither passed nor failed. */
    ERROR
  }

  /**
   * The outcome.
   *
   * @param demand what was asked
   * @param lowest lowest value seen, shown unit; NaN when there is none
   * @param highest highest value seen
   * @param verdict passed, failed or error
   */
  public record Outcome(Demand demand, double lowest, double highest, Verdict verdict) {
    /** The value or the range seen. */
    public String seen() {
      if (Double.isNaN(lowest)) {
        return "no result";
      }
      String a = number(lowest);
      String b = number(highest);
      return a.equals(b) ? a : a + " to " + b;
    }
  }

  /** Judges what a deck printed. */
  public Outcome judge(Map<String, List<Double>> printed) {
    List<Double> values = printed.getOrDefault(measure, List.of());
    if (values.size() != runs) {
      return new Outcome(this, Double.NaN, Double.NaN, Verdict.ERROR);
    }
    double lowest = Double.POSITIVE_INFINITY;
    double highest = Double.NEGATIVE_INFINITY;
    boolean inside = true;
    for (double value : values) {
      double shown = value * scale;
      lowest = Math.min(lowest, shown);
      highest = Math.max(highest, shown);
      inside &= shown >= low && shown <= high;
    }
    return new Outcome(this, lowest, highest, inside ? Verdict.PASSED : Verdict.FAILED);
  }

  /** The limits in words. */
  public String limits() {
    if (low == Double.NEGATIVE_INFINITY) {
      return "at most " + number(high);
    }
    if (high == Double.POSITIVE_INFINITY) {
      return "at least " + number(low);
    }
    return number(low) + " to " + number(high);
  }

  private static String number(double value) {
    double size = Math.abs(value);
    int decimals = size >= 100 ? 0 : size >= 10 ? 1 : size >= 1 ? 2 : 3;
    String text = String.format(Locale.ROOT, "%." + decimals + "f", value);
    return text.equals("-0.000") ? "0.000" : text;
  }
}
