package org.boostwright.rig.replay.csv;

import org.jspecify.annotations.Nullable;

/**
 * Recognises columns by the general words of the trade, never by one logger's own names.
 *
 * <p>A name that speaks of something wanted, limited or derived (target, limit, error ...) is no
 * measurement and is left alone, and so is one whose unit cannot be that signal's.
 */
final class ColumnNames {

  private static final String[] NO_MEASUREMENT = {
    "target",
    "desired",
    "commanded",
    "command",
    "request",
    "requested",
    "setpoint",
    "limit",
    "error",
    "duty",
    "solenoid",
    "correction",
    "max",
    "min",
    "peak",
    "average",
    "avg",
    "raw",
    "seen",
    "age",
    "answered",
    "fuel",
    "oil",
    "exhaust",
    "turbo",
    "turbine",
    "brake",
    "clutch",
    "high",
    "low",
    "sample",
    "period",
    "pulse",
    "pulses",
    "count"
  };

  private static final String[] TIME_COMPANIONS = {
    "time",
    "timestamp",
    "clock",
    "elapsed",
    "of",
    "day",
    "date",
    "stamp",
    "log",
    "recording",
    "relative",
    "rel",
    "local",
    "utc",
    "s",
    "sec",
    "seconds",
    "ms",
    "msec",
    "milliseconds",
    "ns",
    "since",
    "start"
  };

  private ColumnNames() {}

  /** True when the column holds the time of each row. */
  static boolean isTime(HeaderCell header) {
    if (!header.hasAny("time", "timestamp", "elapsed", "clock")) {
      return header.words().size() <= 2
          && (header.has("seconds") || header.has("milliseconds") || header.has("t"));
    }
    for (String word : header.words()) {
      if (!contains(TIME_COMPANIONS, word)) {
        return false;
      }
    }
    return true;
  }

  private static boolean contains(String[] list, String word) {
    for (String each : list) {
      if (each.equals(word)) {
        return true;
      }
    }
    return false;
  }

  /** The signal a column's name speaks of; null when it speaks of none. */
  static @Nullable LogSignal signal(HeaderCell header) {
    LogSignal named = named(header);
    if (named == null || header.hasAny(NO_MEASUREMENT)) {
      return null;
    }
    UnitText unit = header.unit();
    return unit == null || unit.unit().quantity() == named.quantity() ? named : null;
  }

  private static @Nullable LogSignal named(HeaderCell h) {
    boolean temperature = h.hasAny("temperature", "temp", "iat", "ect") || isTemperature(h);
    if (h.has("rpm") || (h.has("speed") && (h.has("engine") || isRpm(h)))) {
      return LogSignal.ENGINE_SPEED;
    }
    if (h.has("pedal") || h.has("accelerator")) {
      return LogSignal.PEDAL;
    }
    if (h.has("throttle") || h.has("tps")) {
      return LogSignal.THROTTLE;
    }
    if (h.hasAny("coolant", "ect") || (h.has("water") && temperature)) {
      return LogSignal.COOLANT;
    }
    if (temperature) {
      return h.has("iat") || h.hasAny("intake", "inlet", "charge", "manifold")
          ? LogSignal.INTAKE_AIR
          : null;
    }
    if (h.hasAny("barometer", "barometric", "baro", "atmospheric", "ambient")) {
      return LogSignal.BAROMETER;
    }
    if (h.hasAny("map", "boost") || (h.has("manifold") && !h.hasAny("flow", "vacuum"))) {
      return LogSignal.MAP;
    }
    if (h.hasAny("battery", "supply") || (h.has("voltage") && h.has("system"))) {
      return LogSignal.SUPPLY;
    }
    if (h.hasAny("speed", "vss") || (h.has("road") && isSpeed(h))) {
      return LogSignal.ROAD_SPEED;
    }
    return null;
  }

  private static boolean isTemperature(HeaderCell header) {
    UnitText unit = header.unit();
    return unit != null && unit.unit().quantity() == Quantity.TEMPERATURE;
  }

  private static boolean isRpm(HeaderCell header) {
    UnitText unit = header.unit();
    return unit != null && unit.unit().quantity() == Quantity.ENGINE_SPEED;
  }

  private static boolean isSpeed(HeaderCell header) {
    UnitText unit = header.unit();
    return unit != null && unit.unit().quantity() == Quantity.SPEED;
  }
}
