package org.boostwright.core.settings.file;

import org.boostwright.core.table.Axis;
import org.boostwright.core.table.Curve;
import org.jspecify.annotations.Nullable;

/** Builds curves out of two lists of the file that belong together. */
final class CurveReader {
  private CurveReader() {}

  /** A sensor's curve, value over volts; volts may be written rising or falling. */
  static @Nullable Curve calibration(
      Reading reading, Section section, Numbers volts, Numbers values) {
    if (!sameLength(reading, volts, values)) {
      return null;
    }
    int size = volts.size();
    if (size < 2) {
      section.fail(
          "volts",
          "calibration_short",
          "has " + size + " entries; a calibration needs two points or more");
      return null;
    }
    boolean good = oneWay(reading, volts);
    good &= oneWay(reading, values);
    if (!good) {
      return null;
    }
    double[] x = volts.values().clone();
    double[] y = values.values().clone();
    if (x[0] > x[size - 1]) {
      reverse(x);
      reverse(y);
    }
    return new Curve(new Axis(x), y);
  }

  /**
   * A curve given either as one number for everywhere or as a list over an axis of the same table.
   *
   * @param fallback used when the key is absent or bad
   */
  static Curve curve(
      Section section,
      String axisKey,
      @Nullable Numbers axis,
      String key,
      Curve fallback,
      Quantity quantity,
      Bounds bounds) {
    Reading reading = section.reading();
    if (section.isNumber(key)) {
      return Curve.constant(section.number(key, fallback.value(0), quantity, bounds));
    }
    Numbers values = section.numbers(key, quantity, bounds);
    if (values == null) {
      return fallback;
    }
    if (axis == null) {
      if (!section.has(axisKey)) {
        section.fail(
            key, "axis_missing", "has several entries but " + axisKey + " is missing; write both");
      }
      return fallback;
    }
    if (!sameLength(reading, axis, values)) {
      reading.spoil(section.dotted(key));
      return fallback;
    }
    return new Curve(new Axis(axis.values()), values.values());
  }

  /** A rising axis; null when absent or bad. */
  static @Nullable Numbers axis(Section section, String key, Quantity quantity, Bounds bounds) {
    Numbers axis = section.numbers(key, quantity, bounds);
    if (axis == null) {
      return null;
    }
    if (axis.size() == 0) {
      section.fail(key, "axis_empty", "is empty; write at least one entry");
      return null;
    }
    double last = axis.values()[axis.size() - 1];
    if (axis.size() > 1 && quantity.kind() == Quantity.Kind.PERCENT && last <= 1.0) {
      section.fail(
          key,
          "axis_fraction",
          "ends at "
              + Words.number(last)
              + " and looks like 0 to 1; it is written in percent, 0 to 100");
      return null;
    }
    if (quantity.kind() == Quantity.Kind.ENGINE_SPEED && last > 0.0 && last <= 25.0) {
      section.fail(
          key,
          "axis_thousands",
          "ends at "
              + Words.number(last)
              + " and looks like thousands; it is written in 1/min: "
              + Words.number(1000.0 * last));
      return null;
    }
    if (!axis.rises(section.reading())) {
      section.reading().spoil(section.dotted(key));
      return null;
    }
    return axis;
  }

  private static boolean sameLength(Reading reading, Numbers a, Numbers b) {
    if (a.size() == b.size()) {
      return true;
    }
    reading.error(
        "length_differs",
        b.size() == 0 || a.size() == 0 ? null : b.places()[0],
        b.where()
            + " has "
            + b.size()
            + " entries and "
            + a.where()
            + " has "
            + a.size()
            + "; they belong together one by one, give both the same number");
    return false;
  }

  /** True when the numbers go one way from end to end; reports the first that turns back. */
  private static boolean oneWay(Reading reading, Numbers numbers) {
    double[] v = numbers.values();
    double way = Math.signum(v[1] - v[0]);
    for (int i = 1; i < v.length; i++) {
      if (!((v[i] - v[i - 1]) * way > 0.0)) {
        reading.error(
            "calibration_not_monotone",
            numbers.places()[i],
            numbers.where()
                + ", entry "
                + (i + 1)
                + ": "
                + numbers.quantity().words(v[i])
                + " after "
                + numbers.quantity().words(v[i - 1])
                + " turns back; a calibration must rise or fall all the way, no value twice");
        return false;
      }
    }
    return true;
  }

  private static void reverse(double[] values) {
    for (int i = 0, j = values.length - 1; i < j; i++, j--) {
      double swap = values[i];
      values[i] = values[j];
      values[j] = swap;
    }
  }
}
