package org.boostwright.rig.wiring;

import java.math.BigDecimal;
import java.math.MathContext;
import java.math.RoundingMode;

/** Numbers with the prefixes of engineering, for people and for SPICE. */
public final class Si {
  private static final String[] PEOPLE = {"p", "n", "µ", "m", "", "k", "M"};
  private static final String[] SPICE = {"p", "n", "u", "m", "", "k", "meg"};

  private Si() {}

  /** For example {@code 4.7 kΩ}. */
  public static String people(double value, String unit) {
    boolean smallOhms = unit.equals("Ω") && value >= 0.1 && value < 1;
    return smallOhms ? value + " Ω" : text(value, PEOPLE, " ", unit);
  }

  /** For example {@code 4.7k}; SPICE reads M as milli, so a million is {@code meg}. */
  public static String spice(double value) {
    return text(value, SPICE, "", "");
  }

  private static String text(double value, String[] prefixes, String gap, String unit) {
    if (!(Math.abs(value) > 0)) {
      return "0" + gap + unit;
    }
    int group = (int) Math.floor(Math.log10(Math.abs(value) * (1 + 1e-12)) / 3);
    group = Math.max(-4, Math.min(2, group));
    BigDecimal mantissa =
        BigDecimal.valueOf(value / Math.pow(10, 3.0 * group))
            .round(new MathContext(5, RoundingMode.HALF_UP))
            .stripTrailingZeros();
    return mantissa.toPlainString() + gap + prefixes[group + 4] + unit;
  }
}
