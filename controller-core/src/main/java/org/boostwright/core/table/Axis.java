package org.boostwright.core.table;

import java.util.Arrays;
import org.jspecify.annotations.Nullable;

/**
 * Strictly rising break points of a table axis, at least one.
 *
 * <p>{@link #locate} finds the interval, {@link #fraction} the place inside it; outside the axis
 * both clamp to its ends. NaN locates at the first point; callers guard against it.
 */
public final class Axis {
  private final double[] points;

  /**
   * @param points break points, strictly rising and finite
   * @throws IllegalArgumentException when empty, not finite or not strictly rising
   */
  public Axis(double... points) {
    if (points.length == 0) {
      throw new IllegalArgumentException("an axis needs at least one point");
    }
    for (int i = 0; i < points.length; i++) {
      if (!Double.isFinite(points[i])) {
        throw new IllegalArgumentException("axis point " + (i + 1) + " is not a number");
      }
      if (i > 0 && !(points[i] > points[i - 1])) {
        throw new IllegalArgumentException(
            "axis point " + (i + 1) + " (" + points[i] + ") does not rise above " + points[i - 1]);
      }
    }
    this.points = points.clone();
  }

  /** Number of break points. */
  public int size() {
    return points.length;
  }

  /** Break point {@code i}. */
  public double point(int i) {
    return points[i];
  }

  /** All break points, as a copy. */
  public double[] points() {
    return points.clone();
  }

  /** Index of the interval that holds {@code x}: 0 to size - 2 (0 for a single point). */
  public int locate(double x) {
    int low = 0;
    int high = points.length - 1;
    while (high - low > 1) {
      int mid = (low + high) >>> 1;
      if (x >= points[mid]) {
        low = mid;
      } else {
        high = mid;
      }
    }
    return low;
  }

  /** Place of {@code x} inside interval {@code i}, clamped to 0..1. */
  public double fraction(int i, double x) {
    if (i + 1 >= points.length) {
      return 0.0;
    }
    double f = (x - points[i]) / (points[i + 1] - points[i]);
    if (!(f > 0.0)) {
      return 0.0;
    }
    return f < 1.0 ? f : 1.0;
  }

  /** True when {@code x} lies on the axis, ends included; false for NaN. */
  public boolean contains(double x) {
    return x >= points[0] && x <= points[points.length - 1];
  }

  /** Equal when every number is. */
  @Override
  public boolean equals(@Nullable Object other) {
    return other instanceof Axis that && Arrays.equals(points, that.points);
  }

  @Override
  public int hashCode() {
    return Arrays.hashCode(points);
  }
}
