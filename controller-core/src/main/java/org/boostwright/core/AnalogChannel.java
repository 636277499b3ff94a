package org.boostwright.core;

/**
 * The analogue inputs of the controller, in the order in which they stand in every array and log.
 *
 * <p>A car needs {@link #MAP} and {@link #THROTTLE}; the others are optional and declared in the
 * settings. Pressure is absolute kPa, throttle and pedal are percent (0 closed, 100 full),
 * temperature is degC, supply is volts.
 */
public enum AnalogChannel {
  MAP("map", "kpa_abs"),
  THROTTLE("throttle", "pct"),
  PEDAL("pedal", "pct"),
  INTAKE_AIR("intake_air", "c"),
  COOLANT("coolant", "c"),
  BAROMETER("barometer", "kpa_abs"),
  SUPPLY("supply", "v");

  /** Number of analogue channels; the length of every per-channel array. */
  public static final int COUNT = 7;

  private final String id;
  private final String unit;

  AnalogChannel(String id, String unit) {
    this.id = id;
    this.unit = unit;
  }

  /** Name in logs and settings, snake_case. */
  public String id() {
    return id;
  }

  /** Unit suffix in logs: {@code kpa_abs}, {@code pct}, {@code c} or {@code v}. */
  public String unit() {
    return unit;
  }
}
