package org.boostwright.rig.logs;

import java.io.BufferedWriter;
import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.List;
import org.boostwright.core.record.LogFormat;

/** Writes log rows as CSV, in the format every part of the project records in. */
public final class LogCsv {
  private LogCsv() {}

  /**
   * Writes a log.
   *
   * @param rows rows of {@link LogFormat}
   * @param settingsDigest fingerprint of the settings, for the first row
   * @param seed seed of the run, for the first row
   */
  public static void write(Path file, List<double[]> rows, String settingsDigest, long seed)
      throws IOException {
    try (BufferedWriter out = Files.newBufferedWriter(file)) {
      StringBuilder line = new StringBuilder(2048);
      LogFormat.appendHeader(line);
      out.append(line.append('\n'));
      String meta = LogFormat.VERSION + " " + settingsDigest + " " + seed;
      for (double[] row : rows) {
        line.setLength(0);
        LogFormat.appendRow(line, row, meta);
        out.append(line.append('\n'));
        meta = "";
      }
    }
  }
}
