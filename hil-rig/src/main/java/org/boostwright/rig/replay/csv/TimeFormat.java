package org.boostwright.rig.replay.csv;

import org.jspecify.annotations.Nullable;

/** How the time of a row is written. */
public enum TimeFormat {
  /** {@code HH:MM:SS}, with decimals of a second, with or without a date before it. */
  TIME_OF_DAY("time_of_day", 0.0),
  SECONDS("s", 1e9),
  MILLISECONDS("ms", 1e6),
  NANOSECONDS("ns", 1.0);

  private final String label;
  private final double nanosPerUnit;

  TimeFormat(String label, double nanosPerUnit) {
    this.label = label;
    this.nanosPerUnit = nanosPerUnit;
  }

  /** As written in mapping files and reports. */
  public String label() {
    return label;
  }

  /** Nanoseconds of one unit; 0 for time of day. */
  double nanosPerUnit() {
    return nanosPerUnit;
  }

  /** The format a header names; null when it names none. */
  static @Nullable TimeFormat named(HeaderCell header) {
    if (header.hasAny("s", "sec", "seconds")) {
      return SECONDS;
    }
    if (header.hasAny("ms", "msec", "milliseconds")) {
      return MILLISECONDS;
    }
    return header.has("ns") ? NANOSECONDS : null;
  }
}
