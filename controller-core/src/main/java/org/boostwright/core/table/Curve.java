package org.boostwright.core.table;

import java.util.Arrays;
import org.jspecify.annotations.Nullable;

/** A piecewise linear curve over one axis, clamped at its ends. Immutable, allocates nothing. */
public final class Curve {
  private final Axis axis;
  private final double[] values;

  /**
   * @param axis break points
   * @param values one finite value per break point
   * @throws IllegalArgumentException when the lengths differ or a value is not finite
   */
  public Curve(Axis axis, double... values) {
    if (values.length != axis.size()) {
      throw new IllegalArgumentException(
          "a curve of " + axis.size() + " points has " + values.length + " values");
    }
    for (double value : values) {
      if (!Double.isFinite(value)) {
        throw new IllegalArgumentException("a curve value is not a number");
      }
    }
    this.axis = axis;
    this.values = values.clone();
  }

  /** A curve that gives the same value everywhere. */
  public static Curve constant(double value) {
    return new Curve(new Axis(0.0), value);
  }

  /** Break points. */
  public Axis axis() {
    return axis;
  }

  /** Value at break point {@code i}. */
  public double value(int i) {
    return values[i];
  }

  /** All values, as a copy. */
  public double[] values() {
    return values.clone();
  }

  /** Linear value at {@code x}, clamped at the ends. */
  public double at(double x) {
    int i = axis.locate(x);
    double f = axis.fraction(i, x);
    int next = i + 1 < values.length ? i + 1 : i;
    return values[i] + f * (values[next] - values[i]);
  }

  /** Equal when every number is. */
  @Override
  public boolean equals(@Nullable Object other) {
    return other instanceof Curve that
        && axis.equals(that.axis)
        && Arrays.equals(values, that.values);
  }

  @Override
  public int hashCode() {
    return 31 * axis.hashCode() + Arrays.hashCode(values);
  }
}
