package org.boostwright.rig.replay.csv;

import de.siegmar.fastcsv.reader.CsvRecord;
import java.util.ArrayList;
import java.util.Collections;
import java.util.List;
import org.jspecify.annotations.Nullable;

/**
 * How a log is laid out: its separator and its header line.
 *
 * <p>The separator and the line are the pair under which the most columns are recognised, so lines
 * a logger writes before the header do no harm.
 *
 * @param separator between cells
 * @param line line of the header from 1; 0 when there is none
 * @param unitsLine line right below the header that holds only units; 0 when there is none
 * @param header cells of the header line; empty texts when there is none
 */
record Layout(char separator, int line, int unitsLine, List<HeaderCell> header) {
  /** A header further down than this is not looked for. */
  private static final int SEARCHED_ROWS = 50;

  private static final char[] SEPARATORS = {',', ';', '\t'};

  static Layout find(String text, String file, LogMapping mapping) throws LogRefusedException {
    Layout best = null;
    int bestScore = 0;
    LogRefusedException unreadable = null;
    String firstLine = "";
    for (char separator : SEPARATORS) {
      if (mapping.separator() != null && mapping.separator() != separator) {
        continue;
      }
      try {
        CsvRows rows = new CsvRows(text, separator, file);
        CsvRecord row = rows.next();
        for (int i = 0; row != null && i < SEARCHED_ROWS; i++) {
          if (firstLine.isEmpty()) {
            firstLine = String.join(" ", row.getFields());
          }
          CsvRecord next = rows.next();
          Layout layout = at(row, next, separator, mapping);
          int score = layout == null ? 0 : score(layout, mapping);
          if (score > bestScore) {
            best = layout;
            bestScore = score;
          }
          row = mapping.headerLine() == 0 ? null : next;
        }
      } catch (LogRefusedException e) {
        unreadable = e;
      }
    }
    if (best != null) {
      return best;
    }
    if (unreadable != null && firstLine.isEmpty()) {
      throw unreadable;
    }
    throw new LogRefusedException(file, message(firstLine, mapping));
  }

  private static String message(String firstLine, LogMapping mapping) {
    if (firstLine.isBlank()) {
      return "no line with anything in it; export the log again";
    }
    String begins = "the file begins '" + RepairLog.shorten(firstLine) + "'; ";
    if (mapping.headerLine() > 0) {
      return "line "
          + mapping.headerLine()
          + " names no time column and a signal; "
          + begins
          + "correct header_line or the column names in the mapping file";
    }
    return "no header line with a time column and at least one known signal in the first "
        + SEARCHED_ROWS
        + " rows; "
        + begins
        + "name the columns in a mapping file";
  }

  private static @Nullable Layout at(
      CsvRecord row, @Nullable CsvRecord next, char separator, LogMapping mapping) {
    int line = (int) row.getStartingLineNumber();
    int cells = row.getFieldCount();
    if (mapping.headerLine() == 0) {
      return new Layout(separator, 0, 0, Collections.nCopies(cells, HeaderCell.parse("")));
    }
    if (mapping.headerLine() > 0 && mapping.headerLine() != line) {
      return null;
    }
    boolean units = next != null && isUnits(next);
    List<HeaderCell> header = new ArrayList<>();
    for (int cell = 0; cell < cells; cell++) {
      String below = units && cell < next.getFieldCount() ? next.getField(cell).strip() : "";
      String text = row.getField(cell).strip();
      HeaderCell plain = HeaderCell.parse(text);
      header.add(below.isEmpty() ? plain : plain.withUnit(below));
    }
    while (!header.isEmpty() && header.get(header.size() - 1).text().isEmpty()) {
      header.remove(header.size() - 1);
    }
    return new Layout(separator, line, units ? (int) next.getStartingLineNumber() : 0, header);
  }

  /** True for a row that holds at least one unit and no digit. */
  private static boolean isUnits(CsvRecord row) {
    boolean unit = false;
    for (String cell : row.getFields()) {
      if (cell.chars().anyMatch(Character::isDigit)) {
        return false;
      }
      unit |= UnitText.parse(cell) != null;
    }
    return unit;
  }

  /** Columns understood under this layout; 0 when the time or every signal is missing. */
  private static int score(Layout layout, LogMapping mapping) {
    int signals = 0;
    boolean time = false;
    for (int cell = 0; cell < layout.header.size(); cell++) {
      HeaderCell header = layout.header.get(cell);
      if (mapping.time().namesColumn()
          ? mapping.time().matches(cell, header.text())
          : ColumnNames.isTime(header)) {
        time = true;
      } else if (isSignal(cell, header, mapping)) {
        signals++;
      }
    }
    return time ? signals : 0;
  }

  private static boolean isSignal(int cell, HeaderCell header, LogMapping mapping) {
    for (ColumnMapping column : mapping.signals().values()) {
      if (column.matches(cell, header.text())) {
        return true;
      }
    }
    return ColumnNames.signal(header) != null;
  }
}
