package org.boostwright.core.bench.model;

/**
 * A value with its 95 % interval.
 *
 * @param value best value
 * @param low lower end
 * @param high upper end
 */
public record Estimate(double value, double low, double high) {
  /** The same in other units. */
  public Estimate times(double factor) {
    return new Estimate(value * factor, low * factor, high * factor);
  }

  /** True when {@code x} lies inside, ends included. */
  public boolean covers(double x) {
    return x >= low && x <= high;
  }
}
