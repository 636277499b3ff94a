package org.boostwright.core.bench;

import java.util.Locale;
import org.boostwright.core.settings.PressureUnit;
import org.jspecify.annotations.Nullable;

/**
 * A gauge reading as typed: a number, perhaps with its unit ({@code 12}, {@code 12 psi}, {@code
 * 0,83 bar}).
 *
 * @param kpaGauge the pressure, kPa gauge; NaN when it is not understood
 * @param resolutionKpa smallest step the way of writing shows, kPa
 * @param complaint why it is not understood; null when it is
 */
public record GaugeEntry(double kpaGauge, double resolutionKpa, @Nullable String complaint) {
  /** Coarsest step believed of a typed number, kPa: one psi. */
  private static final double COARSEST_KPA = PressureUnit.PSI.toKpa(1.0);

  /**
   * Reads what was typed.
   *
   * @param text as typed
   * @param usual unit when none is typed
   */
  public static GaugeEntry parse(String text, PressureUnit usual) {
    String trimmed = text.strip().toLowerCase(Locale.ROOT).replace(',', '.');
    PressureUnit unit = usual;
    String number = trimmed;
    for (PressureUnit candidate : PressureUnit.values()) {
      String label = candidate.label().toLowerCase(Locale.ROOT);
      if (trimmed.endsWith(label)) {
        unit = candidate;
        number = trimmed.substring(0, trimmed.length() - label.length()).strip();
      }
    }
    double value;
    try {
      value = Double.parseDouble(number);
    } catch (NumberFormatException e) {
      return refused("'" + text.strip() + "' is not a pressure; write for example 12 psi");
    }
    if (!Double.isFinite(value)) {
      return refused("'" + text.strip() + "' is not a pressure");
    }
    int point = number.indexOf('.');
    int decimals = point < 0 ? 0 : number.length() - point - 1;
    double step = unit.toKpa(Math.pow(10.0, -decimals));
    return new GaugeEntry(unit.toKpa(value), Math.min(step, COARSEST_KPA), null);
  }

  private static GaugeEntry refused(String why) {
    return new GaugeEntry(Double.NaN, COARSEST_KPA, why);
  }
}
