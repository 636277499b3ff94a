package org.boostwright.rig.replay;

import ch.randelshofer.fastdoubleparser.JavaDoubleParser;
import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.Arrays;
import java.util.List;
import org.boostwright.core.record.LogFormat;
import org.boostwright.rig.replay.csv.CsvLines;
import org.boostwright.rig.replay.csv.LogRefusedException;

/** The rows of a recorded run as numbers, up to its last whole line. */
public final class RecordRows {
  private RecordRows() {}

  /**
   * Reads a file.
   *
   * @throws LogRefusedException when it is no recorded run, or damaged inside
   */
  public static List<double[]> read(Path file) throws IOException, LogRefusedException {
    byte[] bytes = Files.readAllBytes(file);
    if (!RecordReplay.isRecord(bytes)) {
      throw new LogRefusedException(file.toString(), "not a run recorded by this version");
    }
    CsvLines lines = new CsvLines(withoutZeros(bytes), file.toString());
    lines.next();
    List<double[]> rows = new ArrayList<>();
    while (lines.next()) {
      if (lines.cells() <= LogFormat.COLUMN_COUNT) {
        continue; // cut off while it was written
      }
      double[] row = new double[LogFormat.COLUMN_COUNT];
      for (int column = 0; column < row.length; column++) {
        row[column] = number(file, lines, column);
      }
      rows.add(row);
    }
    if (rows.isEmpty()) {
      throw new LogRefusedException(file.toString(), "a header and no complete row");
    }
    return rows;
  }

  /** After a reset a file may end in zeros: its length was kept, its last bytes were not. */
  static byte[] withoutZeros(byte[] bytes) {
    int end = bytes.length;
    while (end > 0 && bytes[end - 1] == 0) {
      end--;
    }
    return end == bytes.length ? bytes : Arrays.copyOf(bytes, end);
  }

  private static double number(Path file, CsvLines lines, int column) throws LogRefusedException {
    String cell = lines.cell(column);
    try {
      if (LogFormat.isWords(column)) {
        return LogFormat.parseWords(column, cell);
      }
      return cell.isEmpty() ? Double.NaN : JavaDoubleParser.parseDouble(cell);
    } catch (IllegalArgumentException e) {
      throw new LogRefusedException(
          file.toString(),
          lines.line(),
          column + 1,
          "'" + lines.shown(column) + "' is no " + LogFormat.name(column));
    }
  }
}
