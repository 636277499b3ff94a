package org.boostwright.rig.cli;

import java.util.Locale;

/** Limits of numbers given as options. */
final class Range {
  private Range() {}

  /** Refuses a number outside its limits, NaN included. */
  static void check(String option, double value, double low, double high) throws WrongUseException {
    if (!(value >= low && value <= high)) {
      throw new WrongUseException(
          String.format(Locale.ROOT, "%s %s is outside %s to %s", option, value, low, high),
          "give a number within these limits");
    }
  }
}
