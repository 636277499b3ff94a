package org.boostwright.rig.result;

/**
 * A table over two axes, shown shaded by value.
 *
 * @param id snake_case name, unique within a result
 * @param title what it holds, in words
 * @param rowLabel meaning of the rows
 * @param rowUnit unit of the rows
 * @param rows row axis
 * @param columnLabel meaning of the columns
 * @param columnUnit unit of the columns
 * @param columns column axis
 * @param unit unit of the values, see {@link Units}
 * @param values one array per row; NaN is an empty cell
 */
public record HeatTable(
    String id,
    String title,
    String rowLabel,
    String rowUnit,
    double[] rows,
    String columnLabel,
    String columnUnit,
    double[] columns,
    String unit,
    double[][] values) {

  /** Checks the shape. */
  public HeatTable {
    if (values.length != rows.length) {
      throw new IllegalArgumentException(
          "table " + id + " has " + values.length + " rows for " + rows.length + " row points");
    }
    for (double[] row : values) {
      if (row.length != columns.length) {
        throw new IllegalArgumentException(
            "table "
                + id
                + " has a row of "
                + row.length
                + " values for "
                + columns.length
                + " columns");
      }
    }
  }
}
