package org.boostwright.rig.replay.csv;

import java.util.List;
import java.util.Locale;
import java.util.stream.Collectors;
import java.util.stream.Stream;
import org.jspecify.annotations.Nullable;

/**
 * Units a log may be written in: {@code base = factor * number + offset}, base units as in {@link
 * Quantity}.
 *
 * <p>Factors: psi, conventional inch and millimetre of mercury, mile and degree Fahrenheit from
 * NIST Special Publication 811 (2008), appendix B.8; 1 hPa = 1 mbar = 0.1 kPa.
 */
public enum LogUnit {
  KPA("kPa", Quantity.PRESSURE, 1.0, 0.0),
  HPA("hPa", Quantity.PRESSURE, 0.1, 0.0, "mbar"),
  BAR("bar", Quantity.PRESSURE, 100.0, 0.0),
  PSI("psi", Quantity.PRESSURE, 6.894757293168361, 0.0),
  INHG("inHg", Quantity.PRESSURE, 3.386389, 0.0),
  MMHG("mmHg", Quantity.PRESSURE, 0.1333224, 0.0),
  DEG_C("degC", Quantity.TEMPERATURE, 1.0, 0.0, "c", "celsius", "degcelsius"),
  DEG_F("degF", Quantity.TEMPERATURE, 5.0 / 9.0, -160.0 / 9.0, "f", "fahrenheit", "degfahrenheit"),
  KELVIN("K", Quantity.TEMPERATURE, 1.0, -273.15, "kelvin"),
  KM_H("km/h", Quantity.SPEED, 1.0, 0.0, "kmh", "kph"),
  MPH("mph", Quantity.SPEED, 1.609344, 0.0, "mi/h"),
  PERCENT("%", Quantity.SHARE, 1.0, 0.0, "pct", "percent"),
  FRACTION("fraction", Quantity.SHARE, 100.0, 0.0),
  VOLT("V", Quantity.VOLTAGE, 1.0, 0.0, "volt", "volts"),
  RPM("rpm", Quantity.ENGINE_SPEED, 1.0, 0.0, "1/min", "r/min", "rev/min");

  private final String label;
  private final Quantity quantity;
  private final double factor;
  private final double offset;
  private final List<String> spellings;

  LogUnit(String label, Quantity quantity, double factor, double offset, String... aliases) {
    this.label = label;
    this.quantity = quantity;
    this.factor = factor;
    this.offset = offset;
    this.spellings =
        Stream.concat(Stream.of(label.toLowerCase(Locale.ROOT)), Stream.of(aliases)).toList();
  }

  /** As written in mapping files and reports. */
  public String label() {
    return label;
  }

  /** What it measures. */
  public Quantity quantity() {
    return quantity;
  }

  /** Base-unit value of a number in this unit. */
  public double toBase(double number) {
    return number * factor + offset;
  }

  /** Base-unit size of a difference in this unit. */
  public double stepToBase(double difference) {
    return difference * factor;
  }

  /** The unit spelled like this, any letter case; null when there is none. */
  static @Nullable LogUnit spelled(String text) {
    String lower = text.toLowerCase(Locale.ROOT);
    for (LogUnit unit : values()) {
      if (unit.spellings.contains(lower)) {
        return unit;
      }
    }
    return null;
  }

  /** Labels that fit a quantity, for messages. */
  static String labelsFor(Quantity quantity) {
    return Stream.of(values())
        .filter(unit -> unit.quantity == quantity)
        .map(LogUnit::label)
        .collect(Collectors.joining(", "));
  }
}
