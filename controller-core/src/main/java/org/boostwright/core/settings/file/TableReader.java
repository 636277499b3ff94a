package org.boostwright.core.settings.file;

import java.util.List;
import org.boostwright.core.AnalogChannel;
import org.boostwright.core.table.Axis;
import org.boostwright.core.table.Table2d;
import org.jspecify.annotations.Nullable;
import org.tomlj.TomlPosition;

/**
 * A table over throttle or pedal (rows) and engine speed (columns), with the place of each cell.
 *
 * @param table the numbers, in the units used inside
 * @param demand what the rows are
 * @param rows the cells as read; empty when the file does not have this table
 */
record TableReader(Table2d table, AnalogChannel demand, List<Numbers> rows) {
  private static final Bounds RPM = new Bounds(0.0, 20000.0);
  private static final Bounds PERCENT = new Bounds(0.0, 100.0);

  /** Reads {@code [target]}. */
  static TableReader target(Section section, double fallbackKpaAbs) {
    Axes axes = Axes.read(section);
    List<Numbers> rows = section.pressureRows("boost", "target table", new Bounds(60.0, 700.0));
    return assemble(section, axes, rows, "boost", "target table", fallbackKpaAbs);
  }

  /** Reads {@code [base_duty]}. */
  static TableReader baseDuty(Section section) {
    Axes axes = Axes.read(section);
    List<Numbers> rows =
        section.rows("duty_pct", "base duty table", Quantity.SHARE, new Bounds(0.0, 1.0));
    return assemble(section, axes, rows, "duty_pct", "base duty table", 0.0);
  }

  /** Place of a cell; null when the table is not in the file. */
  @Nullable TomlPosition place(int row, int column) {
    return rows.isEmpty() ? null : rows.get(row).places()[column];
  }

  private record Axes(@Nullable Numbers rows, @Nullable Numbers columns, AnalogChannel demand) {
    static Axes read(Section section) {
      Numbers throttle = CurveReader.axis(section, "throttle_pct", Quantity.PERCENT, PERCENT);
      Numbers pedal = CurveReader.axis(section, "pedal_pct", Quantity.PERCENT, PERCENT);
      Numbers columns = CurveReader.axis(section, "rpm", Quantity.RPM, RPM);
      boolean both = section.has("throttle_pct") && section.has("pedal_pct");
      if (both) {
        section.fail(
            "pedal_pct",
            "key_twice",
            "the rows are either throttle_pct or pedal_pct; keep one of the two");
      }
      AnalogChannel demand =
          section.has("pedal_pct") ? AnalogChannel.PEDAL : AnalogChannel.THROTTLE;
      return new Axes(throttle != null ? throttle : pedal, columns, demand);
    }
  }

  private static TableReader assemble(
      Section section,
      Axes axes,
      @Nullable List<Numbers> rows,
      String key,
      String words,
      double fallback) {
    TableReader none = new TableReader(Table2d.constant(fallback), axes.demand(), List.of());
    if (!section.present()) {
      return none;
    }
    boolean complete = section.reading().stated().containsKey(section.dotted(key));
    complete &= section.has("rpm");
    complete &= section.has("throttle_pct") || section.has("pedal_pct");
    if (!complete) {
      section
          .reading()
          .error(
              "table_incomplete",
              section.position(),
              words + ": needs throttle_pct (or pedal_pct), rpm and " + key + "; write all three");
      return none;
    }
    Numbers rowAxis = axes.rows();
    Numbers columnAxis = axes.columns();
    if (rows == null || rowAxis == null || columnAxis == null) {
      return none;
    }
    if (!shape(section, rows, rowAxis.size(), columnAxis.size(), key, words)) {
      section.reading().spoil(section.dotted(key));
      return none;
    }
    double[] cells = new double[rowAxis.size() * columnAxis.size()];
    for (int row = 0; row < rows.size(); row++) {
      System.arraycopy(
          rows.get(row).values(), 0, cells, row * columnAxis.size(), columnAxis.size());
    }
    Table2d table = new Table2d(new Axis(rowAxis.values()), new Axis(columnAxis.values()), cells);
    return new TableReader(table, axes.demand(), rows);
  }

  private static boolean shape(
      Section section, List<Numbers> rows, int high, int wide, String key, String words) {
    if (rows.size() != high) {
      section.fail(
          section.spelled(key),
          "table_shape",
          words
              + " has "
              + rows.size()
              + " rows but its throttle axis has "
              + high
              + " entries; write one row for each");
      return false;
    }
    boolean good = true;
    for (Numbers row : rows) {
      if (row.size() != wide) {
        section
            .reading()
            .error(
                "table_shape",
                row.size() > 0 ? row.places()[0] : section.position(),
                row.where()
                    + " has "
                    + row.size()
                    + " entries but rpm has "
                    + wide
                    + "; write one for each engine speed");
        good = false;
      }
    }
    return good;
  }
}
