package org.boostwright.rig.result;

/**
 * Unit words of the result object.
 *
 * <p>JSON always carries these units, whatever the person chose to see; a report converts the
 * pressures to the person's own unit.
 */
public final class Units {
  /** Absolute pressure. */
  public static final String KPA_ABS = "kPa absolute";

  /** Gauge pressure, against the ambient pressure of the moment. */
  public static final String KPA_GAUGE = "kPa gauge";

  /** Difference of two pressures. */
  public static final String KPA = "kPa";

  /** Rate of pressure. */
  public static final String KPA_PER_SECOND = "kPa/s";

  /** Percent; duty, throttle and pedal are shown in it. */
  public static final String PERCENT = "%";

  /** A fraction from 0 to 1. */
  public static final String FRACTION = "0..1";

  /** Engine speed. */
  public static final String RPM = "rpm";

  /** Turbocharger speed. */
  public static final String THOUSAND_RPM = "krpm";

  /** Seconds. */
  public static final String SECONDS = "s";

  /** Milliseconds. */
  public static final String MILLISECONDS = "ms";

  /** Hertz. */
  public static final String HERTZ = "Hz";

  /** Degrees Celsius. */
  public static final String CELSIUS = "degC";

  /** Something counted. */
  public static final String COUNT = "count";

  private Units() {}
}
