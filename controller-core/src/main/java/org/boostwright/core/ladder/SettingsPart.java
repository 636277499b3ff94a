package org.boostwright.core.ladder;

import java.util.List;
import java.util.Locale;

/**
 * The parts of a settings file that proofs depend on. Every effective key belongs to exactly one;
 * what only changes how things are shown (units, the car's name) to none.
 */
public enum SettingsPart {
  /** Actuator, pressure sensor, valve, wires, pins, converter. */
  HARDWARE(
      "actuator, pressure sensor, valve, wires, pins or converter",
      "actuator.",
      "sensors.map",
      "valve.",
      "wires.",
      "wiring.",
      "pins",
      "converter"),
  /** The other sensors. */
  SENSORS("throttle, temperature or supply sensors", "sensors."),
  /** Cylinders, pulses, gears, redline. */
  CAR("engine speed, road speed or gears", "car."),
  /** The overboost limit and the engine cut. */
  PROTECTION("overboost limit or engine cut", "limits.cutoff", "limits.engine_cut"),
  /** How far the feedback may move the duty, and its gains. */
  FEEDBACK("pressure feedback", "limits.trim_cap", "feedback."),
  /** Every other limit: duty ceiling, gears, heat, altitude, low boost. */
  REACH("duty ceiling or the limits of gears, heat and altitude", "limits."),
  /** Target, base duty and spool strategy. */
  TABLES("target, base duty or spool strategy", "target.", "base_duty.", "spool.");

  private final String words;
  private final List<String> prefixes;

  SettingsPart(String words, String... prefixes) {
    this.words = words;
    this.prefixes = List.of(prefixes);
  }

  /** As written in the ladder's file. */
  public String id() {
    return name().toLowerCase(Locale.ROOT);
  }

  /** What is in it, for people. */
  public String words() {
    return words;
  }

  /**
   * The part a key belongs to; the longest prefix that fits decides.
   *
   * @throws IllegalArgumentException for a key of no part: a proof must not overlook it
   */
  public static SettingsPart of(String key) {
    SettingsPart found = null;
    int longest = 0;
    for (SettingsPart part : values()) {
      for (String prefix : part.prefixes) {
        if (prefix.length() > longest && key.startsWith(prefix)) {
          found = part;
          longest = prefix.length();
        }
      }
    }
    if (found == null) {
      throw new IllegalArgumentException("no proof looks after the setting " + key);
    }
    return found;
  }
}
