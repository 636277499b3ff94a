package org.boostwright.rig.replay.csv;

import de.siegmar.fastcsv.reader.CsvRecord;
import java.util.Arrays;
import java.util.List;
import java.util.stream.IntStream;
import org.jspecify.annotations.Nullable;

/** Walks over the rows of a log: first to see how numbers are written, then to read them. */
final class RowReader {
  private static final int SURVEYED_ROWS = 500;

  /** Rows this far apart in the unit of time are seconds when below, milliseconds when above. */
  private static final double LONGEST_SECONDS = 2.0;

  private static final double SHORTEST_MILLIS = 5.0;

  private final String file;
  private final Layout layout;
  private final ColumnPlan plan;
  private final LogMapping mapping;
  private final RepairLog repairs;
  private boolean decimalComma;
  private @Nullable String timeFormatNote;
  private long[] nanos = {};
  private int[] lines = {};

  RowReader(String file, Layout layout, ColumnPlan plan, LogMapping mapping, RepairLog repairs) {
    this.file = file;
    this.layout = layout;
    this.plan = plan;
    this.mapping = mapping;
    this.repairs = repairs;
  }

  /** No text has more rows than this. */
  static int capacity(String text) {
    int ends = 2;
    for (int i = 0; i < text.length(); i++) {
      char c = text.charAt(i);
      ends += c == '\n' || c == '\r' ? 1 : 0;
    }
    return ends;
  }

  private CsvRows dataRows(String text) {
    return new CsvRows(text, layout.separator(), file);
  }

  private boolean isData(CsvRecord row) {
    long line = row.getStartingLineNumber();
    return line > layout.line() && line != layout.unitsLine();
  }

  /** Looks at the first rows: decimal sign and format of time. */
  TimeFormat survey(String text) throws LogRefusedException {
    CsvRows rows = dataRows(text);
    String[] times = new String[SURVEYED_ROWS];
    int surveyed = 0;
    int commas = 0;
    int points = 0;
    int firstComma = 0;
    int[] numbers =
        IntStream.concat(
                IntStream.of(plan.timeCell()), plan.uses().stream().mapToInt(ColumnUse::cell))
            .toArray();
    for (CsvRecord row = rows.next(); row != null && surveyed < SURVEYED_ROWS; row = rows.next()) {
      if (!isData(row) || row.getFieldCount() <= plan.timeCell()) {
        continue;
      }
      times[surveyed++] = row.getField(plan.timeCell()).strip();
      for (int place : numbers) {
        String cell = place < row.getFieldCount() ? row.getField(place).strip() : "";
        if (cell.indexOf(':') >= 0) {
          continue; // a time of day has its own decimals
        }
        if (NumberCell.hasDecimalComma(cell)) {
          firstComma = commas++ == 0 ? (int) row.getStartingLineNumber() : firstComma;
        } else if (cell.indexOf('.') >= 0) {
          points++;
        }
      }
    }
    Boolean declared = mapping.decimalComma();
    decimalComma = declared != null ? declared : commas > 0 && points == 0;
    if (decimalComma && declared == null) {
      repairs.add(RepairKind.DECIMAL_COMMA, "", firstComma, "");
    }
    return timeFormat(Arrays.copyOf(times, surveyed));
  }

  private TimeFormat timeFormat(String[] times) throws LogRefusedException {
    if (mapping.timeFormat() != null) {
      return mapping.timeFormat();
    }
    if (Arrays.stream(times).anyMatch(cell -> cell.indexOf(':') >= 0)) {
      return TimeFormat.TIME_OF_DAY;
    }
    if (plan.timeFormat() != null) {
      return plan.timeFormat();
    }
    double[] steps = new double[times.length];
    int n = 0;
    double last = Double.NaN;
    for (String cell : times) {
      double time = NumberCell.parse(cell, decimalComma || cell.indexOf('.') < 0);
      if (time > last) {
        steps[n++] = time - last;
      }
      last = Double.isNaN(time) ? last : time;
    }
    double step = n == 0 ? Double.NaN : TimeLine.median(steps, n);
    if (step <= LONGEST_SECONDS) {
      timeFormatNote = "time has no unit; rows " + step + " apart are taken as seconds";
      return TimeFormat.SECONDS;
    }
    if (step >= SHORTEST_MILLIS) {
      timeFormatNote = "time has no unit; rows " + step + " apart are taken as milliseconds";
      return TimeFormat.MILLISECONDS;
    }
    throw new LogRefusedException(
        file,
        layout.line(),
        plan.timeCell() + 1,
        "the time column has no unit and its steps ("
            + step
            + ") do not tell; declare format "
            + "under [time] in a mapping file");
  }

  /** How the format of time was chosen; null when the log says it. */
  @Nullable String timeFormatNote() {
    return timeFormatNote;
  }

  /** Reads every row with a readable time into the columns. */
  void read(String text, TimeFormat format, List<CellColumn> columns, int capacity)
      throws LogRefusedException {
    CsvRows rows = dataRows(text);
    long[] times = new long[capacity];
    int[] places = new int[capacity];
    int width = layout.header().size();
    int read = 0;
    int all = 0;
    for (CsvRecord row = rows.next(); row != null; row = rows.next()) {
      if (!isData(row)) {
        noteSkipped(row);
        continue;
      }
      all++;
      int line = (int) row.getStartingLineNumber();
      if (!fits(row, width, line)) {
        continue;
      }
      String timeText =
          plan.timeCell() < row.getFieldCount() ? row.getField(plan.timeCell()).strip() : "";
      long time = TimeCell.parse(timeText, format, decimalComma);
      if (time == TimeCell.UNREADABLE) {
        repairs.add(RepairKind.UNREADABLE_TIME, "", line, timeText);
        continue;
      }
      for (CellColumn column : columns) {
        int cell = column.use().cell();
        String value = cell < row.getFieldCount() ? row.getField(cell) : "";
        column.read(read, value, line, decimalComma);
      }
      times[read] = time;
      places[read] = line;
      read++;
    }
    refuseIfTooManyLeftOut(RepairKind.LONG_ROW, all);
    refuseIfTooManyLeftOut(RepairKind.UNREADABLE_TIME, all);
    if (read < 2) {
      throw new LogRefusedException(
          file, read == 0 ? "no row to read; export the log again" : "a single row is no log");
    }
    nanos = Arrays.copyOf(times, read);
    lines = Arrays.copyOf(places, read);
  }

  private void noteSkipped(CsvRecord row) {
    int line = (int) row.getStartingLineNumber();
    if (line < layout.line()) {
      repairs.add(RepairKind.LINES_BEFORE_HEADER, "", line, row.getField(0));
    }
  }

  /** Notes what is odd about the shape of a row; false when it must be left out. */
  private boolean fits(CsvRecord row, int width, int line) throws LogRefusedException {
    int cells = row.getFieldCount();
    for (int i = 0; i < cells; i++) {
      String cell = row.getField(i);
      if (cell.indexOf('\n') >= 0 || cell.indexOf('\r') >= 0) {
        throw new LogRefusedException(
            file, line, i + 1, "a quoted cell runs over several lines; a quote is not closed");
      }
    }
    if (cells < width) {
      repairs.add(RepairKind.SHORT_ROW, "", line, cells + " of " + width + " cells");
      return true;
    }
    for (int i = width; i < cells; i++) {
      if (!row.getField(i).isBlank()) {
        repairs.add(RepairKind.LONG_ROW, "", line, cells + " instead of " + width + " cells");
        return false;
      }
    }
    if (cells > width) {
      repairs.add(RepairKind.TRAILING_SEPARATOR, "", line, "");
    }
    return true;
  }

  private void refuseIfTooManyLeftOut(RepairKind kind, int rows) throws LogRefusedException {
    int count = repairs.count(kind, "");
    if (count <= Math.max(3, rows / 100)) {
      return;
    }
    Repair first = repairs.list().stream().filter(r -> r.kind() == kind).findFirst().orElseThrow();
    boolean time = kind == RepairKind.UNREADABLE_TIME;
    String what =
        count
            + " of "
            + rows
            + (time ? " rows have no readable time" : " rows are too long")
            + ", first '"
            + first.example()
            + "'; ";
    String advice =
        time
            ? "time is HH:MM:SS, seconds or milliseconds; name its column and format under [time] "
                + "in a mapping file"
            : "decimal commas need ; or tab between the cells: export the log again";
    throw new LogRefusedException(
        file, first.firstLine(), time ? plan.timeCell() + 1 : 0, what + advice);
  }

  /** Time of each row read, ns. */
  long[] nanos() {
    return nanos;
  }

  /** Line of each row read. */
  int[] lines() {
    return lines;
  }
}
