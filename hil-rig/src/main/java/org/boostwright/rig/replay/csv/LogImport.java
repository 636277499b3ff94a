package org.boostwright.rig.replay.csv;

import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.Arrays;
import java.util.List;

/**
 * Imports a CSV log of any logger: finds separator, decimal sign, header, units and the format of
 * time, repairs what loggers do wrong and says so, refuses what it cannot read.
 */
public final class LogImport {
  private final String file;
  private final LogMapping mapping;
  private final RepairLog repairs = new RepairLog();
  private final List<String> notes = new ArrayList<>();
  private final List<CellColumn> columns = new ArrayList<>();

  private LogImport(String file, LogMapping mapping) {
    this.file = file;
    this.mapping = mapping;
  }

  /** Imports a file. */
  public static RecordedLog read(Path path, LogMapping mapping) throws LogRefusedException {
    return parse(bytes(path), path.toString(), mapping);
  }

  /** Bytes of a log file, refused when it cannot be read or is too large. */
  public static byte[] bytes(Path path) throws LogRefusedException {
    try {
      if (Files.size(path) > SourceText.MAX_BYTES) {
        throw new LogRefusedException(
            path.toString(), "larger than " + SourceText.MAX_BYTES + " bytes; split the log");
      }
      return Files.readAllBytes(path);
    } catch (IOException e) {
      throw new LogRefusedException(path.toString(), "cannot be read: " + e);
    }
  }

  /**
   * Imports the bytes of a log.
   *
   * @param name name shown in messages
   */
  public static RecordedLog parse(byte[] bytes, String name, LogMapping mapping)
      throws LogRefusedException {
    return new LogImport(name, mapping).log(bytes);
  }

  private RecordedLog log(byte[] bytes) throws LogRefusedException {
    String text = SourceText.decode(bytes, file, repairs);
    Layout layout = Layout.find(text, file, mapping);
    ColumnPlan plan = new ColumnPlan(file, layout, mapping, repairs);
    notes.addAll(plan.notes());
    int capacity = RowReader.capacity(text);
    for (ColumnUse use : plan.uses()) {
      columns.add(new CellColumn(use, mapping.ambientKpaAbs(), capacity, repairs));
    }
    RowReader rows = new RowReader(file, layout, plan, mapping, repairs);
    TimeFormat format = rows.survey(text);
    if (rows.timeFormatNote() != null) {
      notes.add(rows.timeFormatNote());
    }
    rows.read(text, format, columns, capacity);
    TimeLine time =
        new TimeLine(
            file,
            rows.nanos(),
            rows.lines(),
            format == TimeFormat.TIME_OF_DAY,
            mapping.pauseSeconds(),
            repairs);
    int[] lines = Arrays.stream(time.kept()).map(i -> rows.lines()[i]).toArray();
    TraceBuilder traces = new TraceBuilder(file, time, mapping.ambientKpaAbs(), notes);
    for (CellColumn column : columns) {
      column.refuseIfUnreadable(file, rows.lines().length);
      traces.add(column);
    }
    if (traces.isEmpty()) {
      throw new LogRefusedException(
          file, "no column holds a value; " + String.join("; ", notes) + "; record the log again");
    }
    return new RecordedLog(
        file,
        time.nanos(),
        lines,
        traces.build(),
        time.pauses(),
        repairs.list(),
        notes,
        plan.unused());
  }
}
