package org.boostwright.core.bench.model;

/**
 * What the actuator line does once a duty has been held long enough.
 *
 * @param meanKpaAbs mean over whole PWM periods, kPa absolute
 * @param lowKpaAbs lowest pressure of a period, kPa absolute
 * @param highKpaAbs highest pressure of a period, kPa absolute
 */
public record SteadyLine(double meanKpaAbs, double lowKpaAbs, double highKpaAbs) {
  /** Peak-to-peak ripple, kPa. */
  public double rippleKpa() {
    return highKpaAbs - lowKpaAbs;
  }
}
