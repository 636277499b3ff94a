package org.boostwright.core.settings.file;

import org.boostwright.core.table.Axis;
import org.boostwright.core.table.Curve;
import org.jspecify.annotations.Nullable;

/** The voltages between which a sensor's wire counts as whole. */
final class ValidRange {
  /**
   * How far the valid range may reach beyond the calibrated one, as a share of the calibrated span.
   * Beyond the calibration the reading stands still, so a wide range would hide a broken wire.
   */
  private static final double REACH = 0.10;

  private static final double DEFAULT_REACH = 0.075;

  /** Nearer to 0 V than this a short to ground would pass for a reading, V. */
  private static final double LOWEST_VALID_VOLTS = 0.05;

  /** Nearer to a 5 V supply than this a short to supply would pass for a reading, V. */
  private static final double HIGHEST_VALID_VOLTS = 4.95;

  private ValidRange() {}

  /** Lowest and highest good voltage of a sensor, V. */
  static double[] of(Section section, Curve curve, @Nullable Numbers valid) {
    Axis axis = curve.axis();
    double low = axis.point(0);
    double high = axis.point(axis.size() - 1);
    double span = high - low;
    if (valid == null) {
      return new double[] {
        Math.max(LOWEST_VALID_VOLTS, low - DEFAULT_REACH * span),
        Math.min(HIGHEST_VALID_VOLTS, high + DEFAULT_REACH * span)
      };
    }
    if (valid.size() != 2 || !(valid.values()[0] < valid.values()[1])) {
      section.fail(
          "valid_volts",
          "valid_range",
          "is not a range; write the lowest and the highest good voltage: [0.2, 4.8]");
      return new double[] {low, high};
    }
    double validLow = valid.values()[0];
    double validHigh = valid.values()[1];
    String range = "the valid range " + volts(validLow, validHigh);
    if (validLow > low || validHigh < high) {
      section.fail(
          "valid_volts",
          "valid_range",
          range
              + " cuts off part of the calibration, "
              + volts(low, high)
              + "; widen it or drop the calibration points outside");
    }
    if (validLow < low - REACH * span - 1e-9 || validHigh > high + REACH * span + 1e-9) {
      section.fail(
          "valid_volts",
          "valid_range",
          range
              + " reaches more than a tenth of the span outside the calibration, "
              + volts(low, high)
              + ": readings out there would stand still; keep it within "
              + volts(
                  Math.max(LOWEST_VALID_VOLTS, low - REACH * span),
                  Math.min(HIGHEST_VALID_VOLTS, high + REACH * span)));
    }
    if (!(validLow >= LOWEST_VALID_VOLTS && validHigh <= HIGHEST_VALID_VOLTS)) {
      section.fail(
          "valid_volts",
          "valid_range",
          range
              + " leaves no room to see a short; keep it within "
              + volts(LOWEST_VALID_VOLTS, HIGHEST_VALID_VOLTS));
    }
    return new double[] {validLow, validHigh};
  }

  private static String volts(double low, double high) {
    return Words.number(low) + " to " + Words.number(high) + " V";
  }
}
