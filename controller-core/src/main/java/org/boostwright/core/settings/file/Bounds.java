package org.boostwright.core.settings.file;

import java.util.Locale;
import org.boostwright.core.settings.UnitSettings;

/**
 * The range a number must lie in, in the units used inside, and the slips that explain a number
 * outside it.
 *
 * @param low lowest accepted
 * @param high highest accepted
 */
record Bounds(double low, double high) {
  private static final double KELVIN = 273.15;

  /** True inside the range; false for NaN. */
  boolean holds(double inside) {
    return inside >= low && inside <= high;
  }

  /** What is wrong with a number, for a message; empty when nothing is. */
  String complaint(double inside, Quantity quantity, String key) {
    if (quantity.kind() == Quantity.Kind.SHARE && inside > 0.0 && inside < 0.01) {
      double share = quantity.written(inside);
      return Words.number(share)
          + " % is less than one percent and looks like a fraction; duty is written in percent: "
          + Words.number(100.0 * share);
    }
    if (holds(inside)) {
      return "";
    }
    String limit =
        inside < low
            ? " is below the lowest accepted, " + quantity.words(low)
            : " is above the highest accepted, " + quantity.words(high);
    if (Double.isNaN(inside)) {
      return "not a number; write one from " + range(quantity);
    }
    return quantity.words(inside) + limit + slip(inside, quantity, key);
  }

  private String range(Quantity quantity) {
    return quantity.words(low) + " to " + quantity.words(high);
  }

  private String slip(double inside, Quantity quantity, String key) {
    String likely =
        switch (quantity.kind()) {
          case TEMPERATURE -> temperatureSlip(inside);
          case PERCENT ->
              scaleSlip(inside, inside <= 1.0 ? 100.0 : Double.NaN, "0 to 1", "percent");
          case ENGINE_SPEED -> scaleSlip(inside, 1000.0, "thousands", "1/min");
          case VOLTS -> scaleSlip(inside, 0.001, "millivolts", "volts");
          case PRESSURE -> pressureSlip(inside, quantity, key);
          case PLAIN, SHARE -> "";
        };
    return likely.isEmpty() ? "; write a number from " + range(quantity) : likely;
  }

  private String scaleSlip(double inside, double factor, String looks, String is) {
    return holds(factor * inside)
        ? "; it looks like " + looks + ", and this is " + is + ": " + Words.number(factor * inside)
        : "";
  }

  private String temperatureSlip(double inside) {
    if (holds(inside - KELVIN)) {
      return "; it looks like kelvin, and this is degC: " + Words.number(inside - KELVIN);
    }
    double celsius = (inside - 32.0) / 1.8;
    return holds(celsius)
        ? "; it looks like Fahrenheit, and this is degC: " + Words.number(celsius)
        : "";
  }

  private String pressureSlip(double inside, Quantity quantity, String key) {
    double atmosphere = UnitSettings.STANDARD_ATMOSPHERE_KPA;
    boolean gauge = quantity.writtenAsGauge();
    double other = gauge ? inside - atmosphere : inside + atmosphere;
    if (holds(other)) {
      return "; it is about 101 kPa off and looks like "
          + (gauge ? "absolute pressure written as gauge" : "gauge pressure written as absolute")
          + ": write "
          + quantity.words(other)
          + ", or say the unit in the key ("
          + key.replaceAll("_(kpa|psi|bar)_(abs|gauge)$", "")
          + "_"
          + quantity.unit().substring(0, quantity.unit().indexOf(' ')).toLowerCase(Locale.ROOT)
          + (gauge ? "_abs" : "_gauge")
          + ")";
    }
    return "";
  }
}
