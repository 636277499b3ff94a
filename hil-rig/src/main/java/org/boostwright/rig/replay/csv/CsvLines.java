package org.boostwright.rig.replay.csv;

import de.siegmar.fastcsv.reader.CsvRecord;
import java.nio.charset.StandardCharsets;
import org.jspecify.annotations.Nullable;

/** The rows of a comma-separated text of known columns, one by one. */
public final class CsvLines {
  private final CsvRows rows;
  private final long mostRows;
  private @Nullable CsvRecord row;

  /**
   * @param bytes UTF-8 text
   * @param file name shown in messages
   */
  public CsvLines(byte[] bytes, String file) {
    String text = new String(bytes, StandardCharsets.UTF_8);
    this.rows = new CsvRows(text, ',', file);
    this.mostRows = RowReader.capacity(text);
  }

  /** Goes on to the next row; false at the end. */
  public boolean next() throws LogRefusedException {
    row = rows.next();
    return row != null;
  }

  /** No more rows than this. */
  public long mostRows() {
    return mostRows;
  }

  /** Number of cells of the row; 0 when there is none. */
  public int cells() {
    return row == null ? 0 : row.getFieldCount();
  }

  /** Text of a cell, from 0; empty when there is none. */
  public String cell(int column) {
    return row == null || column >= row.getFieldCount() ? "" : row.getField(column);
  }

  /** Text of a cell, shortened for a message. */
  public String shown(int column) {
    return RepairLog.shorten(cell(column));
  }

  /** Line of the row in the file, from 1; 0 when there is none. */
  public int line() {
    return row == null ? 0 : (int) row.getStartingLineNumber();
  }
}
