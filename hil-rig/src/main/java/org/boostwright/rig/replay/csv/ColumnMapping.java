package org.boostwright.rig.replay.csv;

import org.jspecify.annotations.Nullable;

/**
 * What a mapping file says about one signal; everything it leaves out is recognised or found.
 *
 * @param column header text of the column; null when given by number or recognised by name
 * @param number number of the column from 1; 0 when given by text or recognised by name
 * @param unit unit of the numbers; null when the header says it
 * @param reference absolute or gauge; null when the header says it or it is no pressure
 * @param resolution smallest step of the source, in {@code unit}; NaN when not declared
 * @param refreshMillis time between fresh values, ms; NaN when not declared
 * @param noise noise floor, standard deviation in {@code unit}; NaN when not declared
 */
public record ColumnMapping(
    @Nullable String column,
    int number,
    @Nullable LogUnit unit,
    @Nullable Reference reference,
    double resolution,
    double refreshMillis,
    double noise) {

  /** Says nothing. */
  public static final ColumnMapping NONE =
      new ColumnMapping(null, 0, null, null, Double.NaN, Double.NaN, Double.NaN);

  /** True when it names a column. */
  boolean namesColumn() {
    return column != null || number > 0;
  }

  /** True when this is about the given cell of the header line. */
  boolean matches(int cell, String header) {
    return number > 0 ? number == cell + 1 : column != null && column.equals(header);
  }

  /** The column as a mapping file names it, for messages. */
  String columnWords() {
    return number > 0 ? "column " + number : "column '" + column + "'";
  }
}
