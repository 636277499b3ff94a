package org.boostwright.core.table;

import java.util.Arrays;
import org.jspecify.annotations.Nullable;

/**
 * A table over throttle (rows) and engine speed (columns), read bilinearly and clamped at its
 * edges.
 *
 * <p>Immutable; a lookup allocates nothing. Whether a lookup fell outside is asked separately with
 * {@link #covers}, so that the caller can count it.
 */
public final class Table2d {
  private final Axis rows;
  private final Axis columns;
  private final double[] values;

  /**
   * @param rows row axis (throttle or pedal, percent)
   * @param columns column axis (engine speed, 1/min)
   * @param values row by row; {@code rows.size() * columns.size()} finite numbers
   * @throws IllegalArgumentException when the number of values is wrong or one is not finite
   */
  public Table2d(Axis rows, Axis columns, double[] values) {
    if (values.length != rows.size() * columns.size()) {
      throw new IllegalArgumentException(
          "a table of "
              + rows.size()
              + " rows and "
              + columns.size()
              + " columns needs "
              + rows.size() * columns.size()
              + " values, not "
              + values.length);
    }
    for (double value : values) {
      if (!Double.isFinite(value)) {
        throw new IllegalArgumentException("a table value is not a number");
      }
    }
    this.rows = rows;
    this.columns = columns;
    this.values = values.clone();
  }

  /** A table that gives the same value everywhere. */
  public static Table2d constant(double value) {
    return new Table2d(new Axis(0.0), new Axis(0.0), new double[] {value});
  }

  /** Row axis. */
  public Axis rows() {
    return rows;
  }

  /** Column axis. */
  public Axis columns() {
    return columns;
  }

  /** Value of one cell. */
  public double cell(int row, int column) {
    return values[row * columns.size() + column];
  }

  /** All cells row by row, as a copy. */
  public double[] values() {
    return values.clone();
  }

  /** True when both coordinates lie on the axes. A table of one cell covers everything. */
  public boolean covers(double row, double column) {
    return (rows.size() == 1 || rows.contains(row))
        && (columns.size() == 1 || columns.contains(column));
  }

  /** Bilinear value, clamped at the edges. */
  public double at(double row, double column) {
    int r = rows.locate(row);
    int c = columns.locate(column);
    double fr = rows.fraction(r, row);
    double fc = columns.fraction(c, column);
    int r1 = r + 1 < rows.size() ? r + 1 : r;
    int c1 = c + 1 < columns.size() ? c + 1 : c;
    double lower = cell(r, c) + fc * (cell(r, c1) - cell(r, c));
    double upper = cell(r1, c) + fc * (cell(r1, c1) - cell(r1, c));
    return lower + fr * (upper - lower);
  }

  /** Equal when every number is. */
  @Override
  public boolean equals(@Nullable Object other) {
    return other instanceof Table2d that
        && rows.equals(that.rows)
        && columns.equals(that.columns)
        && Arrays.equals(values, that.values);
  }

  @Override
  public int hashCode() {
    return 31 * (31 * rows.hashCode() + columns.hashCode()) + Arrays.hashCode(values);
  }
}
