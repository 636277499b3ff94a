package org.boostwright.core.settings.file;

import org.boostwright.core.settings.PressureUnit;
import org.boostwright.core.settings.UnitSettings;

/**
 * What a number in the file measures: its unit, and how it becomes the number used inside. {@code
 * inside = written * factor / divisor + offset}.
 *
 * @param kind what is measured; decides which slips are looked for
 * @param unit shown beside the number; empty for a bare number
 * @param factor see above
 * @param divisor see above
 * @param offset see above
 */
record Quantity(Kind kind, String unit, double factor, double divisor, double offset) {

  /** Kinds of quantity. */
  enum Kind {
    PLAIN,
    SHARE,
    PERCENT,
    TEMPERATURE,
    VOLTS,
    ENGINE_SPEED,
    PRESSURE
  }

  /** A bare number, or one whose unit is used inside as written. */
  static Quantity plain(String unit) {
    return new Quantity(Kind.PLAIN, unit, 1.0, 1.0, 0.0);
  }

  /** Volts. */
  static final Quantity VOLTS = new Quantity(Kind.VOLTS, "V", 1.0, 1.0, 0.0);

  /** Degrees Celsius. */
  static final Quantity CELSIUS = new Quantity(Kind.TEMPERATURE, "degC", 1.0, 1.0, 0.0);

  /** Engine speed. */
  static final Quantity RPM = new Quantity(Kind.ENGINE_SPEED, "1/min", 1.0, 1.0, 0.0);

  /** Percent in the file and inside: throttle, pedal. */
  static final Quantity PERCENT = new Quantity(Kind.PERCENT, "%", 1.0, 1.0, 0.0);

  /** Percent in the file, 0 to 1 inside: duty. */
  static final Quantity SHARE = new Quantity(Kind.SHARE, "%", 1.0, 100.0, 0.0);

  /** Percent in the file, 0 to 1 inside, per something: feedback gains. */
  static Quantity sharePer(String unit) {
    return new Quantity(Kind.PLAIN, unit, 1.0, 100.0, 0.0);
  }

  /** A pressure, kPa absolute inside. */
  static Quantity level(UnitSettings notation) {
    return new Quantity(
        Kind.PRESSURE,
        notation.label(),
        notation.pressure().toKpa(1.0),
        1.0,
        notation.gauge() ? UnitSettings.STANDARD_ATMOSPHERE_KPA : 0.0);
  }

  /** A pressure, kPa gauge inside: a spring. */
  static Quantity gaugeLevel(UnitSettings notation) {
    return new Quantity(
        Kind.PRESSURE,
        notation.label(),
        notation.pressure().toKpa(1.0),
        1.0,
        notation.gauge() ? 0.0 : -UnitSettings.STANDARD_ATMOSPHERE_KPA);
  }

  /** True when a pressure is written as gauge. */
  boolean writtenAsGauge() {
    return unit.endsWith("gauge");
  }

  /** A difference of pressures, kPa inside. */
  static Quantity difference(PressureUnit unit) {
    return new Quantity(Kind.PLAIN, unit.label(), unit.toKpa(1.0), 1.0, 0.0);
  }

  /** A rate of pressure, kPa/s inside. */
  static Quantity rate(PressureUnit unit) {
    return new Quantity(Kind.PLAIN, unit.label() + "/s", unit.toKpa(1.0), 1.0, 0.0);
  }

  /** The number used inside. */
  double inside(double written) {
    return written * factor / divisor + offset;
  }

  /** The number as written. */
  double written(double inside) {
    return (inside - offset) * divisor / factor;
  }

  /** A number used inside, as text with its unit. */
  String words(double inside) {
    String number = Words.number(written(inside));
    return unit.isEmpty() ? number : unit.equals("%") ? number + " %" : number + " " + unit;
  }
}
