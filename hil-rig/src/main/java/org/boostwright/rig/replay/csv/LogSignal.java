package org.boostwright.rig.replay.csv;

import org.boostwright.core.AnalogChannel;
import org.jspecify.annotations.Nullable;

/**
 * The signals a log may hold, each with the range outside which a number cannot be one (common
 * practice, no source; wide enough for a sensor that reports its end of scale).
 */
public enum LogSignal {
  MAP("map", Quantity.PRESSURE, AnalogChannel.MAP, 5.0, 600.0),
  THROTTLE("throttle", Quantity.SHARE, AnalogChannel.THROTTLE, -25.0, 125.0),
  PEDAL("pedal", Quantity.SHARE, AnalogChannel.PEDAL, -25.0, 125.0),
  INTAKE_AIR("intake_air", Quantity.TEMPERATURE, AnalogChannel.INTAKE_AIR, -60.0, 250.0),
  COOLANT("coolant", Quantity.TEMPERATURE, AnalogChannel.COOLANT, -60.0, 250.0),
  BAROMETER("barometer", Quantity.PRESSURE, AnalogChannel.BAROMETER, 40.0, 115.0),
  SUPPLY("supply", Quantity.VOLTAGE, AnalogChannel.SUPPLY, 0.0, 40.0),
  ENGINE_SPEED("engine_speed", Quantity.ENGINE_SPEED, null, 0.0, 20_000.0),
  ROAD_SPEED("road_speed", Quantity.SPEED, null, 0.0, 500.0);

  private final String id;
  private final Quantity quantity;
  private final @Nullable AnalogChannel channel;
  private final double lowest;
  private final double highest;

  LogSignal(
      String id,
      Quantity quantity,
      @Nullable AnalogChannel channel,
      double lowest,
      double highest) {
    this.id = id;
    this.quantity = quantity;
    this.channel = channel;
    this.lowest = lowest;
    this.highest = highest;
  }

  /** Name in mapping files and reports, snake_case. */
  public String id() {
    return id;
  }

  /** What it measures. */
  public Quantity quantity() {
    return quantity;
  }

  /** The controller's analogue channel; null for the two speeds, which are pulses. */
  public @Nullable AnalogChannel channel() {
    return channel;
  }

  /** Base unit as shown to people. */
  public String baseUnit() {
    return switch (quantity) {
      case PRESSURE -> "kPa absolute";
      case TEMPERATURE -> "degC";
      case SPEED -> "km/h";
      case SHARE -> "%";
      case VOLTAGE -> "V";
      case ENGINE_SPEED -> "1/min";
    };
  }

  /** Lowest number that can be this signal, base unit. */
  public double lowest() {
    return lowest;
  }

  /** Highest number that can be this signal, base unit. */
  public double highest() {
    return highest;
  }

  /** True when a number in base units can be this signal; false for NaN. */
  public boolean isPossible(double value) {
    return value >= lowest && value <= highest;
  }

  /** The signal of an analogue channel. */
  public static LogSignal of(AnalogChannel channel) {
    for (LogSignal signal : values()) {
      if (signal.channel == channel) {
        return signal;
      }
    }
    throw new IllegalArgumentException(channel.id());
  }
}
