package org.boostwright.rig.report;

import java.math.BigDecimal;
import java.math.RoundingMode;
import java.util.Locale;
import org.boostwright.core.settings.UnitSettings;
import org.boostwright.rig.result.Measurement;
import org.boostwright.rig.result.Units;

/**
 * Shows numbers of a result as the person wants them: pressures in their unit, fractions in
 * percent, everything else as it is.
 *
 * <p>Absolute pressures become gauge pressures where the person wants that; a pressure that is
 * gauge by nature (at the actuator, from the bench regulator) stays gauge.
 */
public final class DisplayUnits {
  private final UnitSettings units;

  /** For a person's choice of units. */
  public DisplayUnits(UnitSettings units) {
    this.units = units;
  }

  /** The number to show for a value in a {@link Units} unit; NaN stays NaN. */
  public double value(double value, String unit) {
    return switch (unit) {
      case Units.KPA_ABS -> units.fromKpaAbs(value);
      case Units.KPA_GAUGE, Units.KPA, Units.KPA_PER_SECOND -> units.pressure().fromKpa(value);
      case Units.FRACTION -> 100.0 * value;
      default -> value;
    };
  }

  /** The unit to show beside it; empty for counted things. */
  public String label(String unit) {
    String pressure = units.pressure().label();
    return switch (unit) {
      case Units.KPA_ABS -> units.label();
      case Units.KPA_GAUGE -> pressure + " gauge";
      case Units.KPA -> pressure;
      case Units.KPA_PER_SECOND -> pressure + "/s";
      case Units.FRACTION -> Units.PERCENT;
      case Units.CELSIUS -> "°C";
      case Units.COUNT -> "";
      default -> unit;
    };
  }

  /** The number as text with as many decimals as make sense in its unit; a dash for NaN. */
  public String number(double value, String unit) {
    if (!Double.isFinite(value)) {
      return "–";
    }
    double shown = value(value, unit);
    BigDecimal rounded =
        new BigDecimal(shown).setScale(decimals(shown, unit), RoundingMode.HALF_EVEN);
    if (rounded.signum() == 0) {
      rounded = rounded.abs();
    }
    String text = rounded.toPlainString();
    return text.contains(".") && isWhole(shown) ? text.replaceAll("\\.0+$", "") : text;
  }

  /** The number with its unit; a dash alone for NaN. */
  public String text(double value, String unit) {
    String label = label(unit);
    return label.isEmpty() || !Double.isFinite(value)
        ? number(value, unit)
        : String.format(Locale.ROOT, "%s %s", number(value, unit), label);
  }

  /** The limits of a measurement in words; a dash when it has none. */
  public String allowed(Measurement m) {
    boolean low = !Double.isNaN(m.low());
    boolean high = !Double.isNaN(m.high());
    if (low && high) {
      return number(m.low(), m.unit()) + " to " + text(m.high(), m.unit());
    }
    if (low) {
      return "at least " + text(m.low(), m.unit());
    }
    return high ? "at most " + text(m.high(), m.unit()) : "–";
  }

  private int decimals(double shown, String unit) {
    return switch (unit) {
      case Units.COUNT, Units.RPM -> isWhole(shown) ? 0 : 1;
      case Units.KPA_ABS, Units.KPA_GAUGE, Units.KPA, Units.KPA_PER_SECOND ->
          Math.max(pressureDecimals(), smallDecimals(Math.abs(shown)));
      default -> byMagnitude(Math.abs(shown));
    };
  }

  private int pressureDecimals() {
    return switch (units.pressure()) {
      case KPA -> 1;
      case PSI -> 2;
      case BAR -> 3;
    };
  }

  /** So that a step of 0.013 kPa does not read 0.0; below a thousandth nothing counts. */
  private static int smallDecimals(double size) {
    return size >= 0.001 && size < 0.1 ? 3 : 0;
  }

  private static boolean isWhole(double x) {
    return x == Math.rint(x);
  }

  private static int byMagnitude(double size) {
    if (size == 0.0 || size >= 1000.0) {
      return 0;
    }
    if (size >= 10.0) {
      return 1;
    }
    return size >= 1.0 ? 2 : size >= 0.01 ? 3 : 6;
  }
}
