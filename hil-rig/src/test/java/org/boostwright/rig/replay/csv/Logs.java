package org.boostwright.rig.replay.csv;

import java.nio.charset.StandardCharsets;
import java.util.List;
import java.util.Locale;

/** Small synthetic logs for tests. */
final class Logs {
  static final String HEADER = "Time [s],MAP [kPa],Engine speed [rpm],Throttle [%]";

  private Logs() {}

  /** Twelve rows 0.1 s apart under {@link #HEADER}. */
  static String plain() {
    StringBuilder text = new StringBuilder(HEADER).append('\n');
    for (int i = 0; i < 12; i++) {
      text.append(row(i)).append('\n');
    }
    return text.toString();
  }

  /** Row {@code i} of {@link #plain}. */
  static String row(int i) {
    return String.format(Locale.ROOT, "%.1f,%d,%d,%.1f", 0.1 * i, 100 + i, 3000 + 10 * i, 50.0 + i);
  }

  /** The plain log with one line (from 1, the header) replaced; several lines with line ends. */
  static String withLine(int line, String replacement) {
    String[] lines = plain().split("\n", -1);
    lines[line - 1] = replacement;
    return String.join("\n", lines);
  }

  static RecordedLog read(String text) throws LogRefusedException {
    return read(text, LogMapping.NONE);
  }

  static RecordedLog read(String text, LogMapping mapping) throws LogRefusedException {
    return LogImport.parse(text.getBytes(StandardCharsets.UTF_8), "log.csv", mapping);
  }

  static LogMapping mapping(String toml) throws LogRefusedException {
    return MappingFile.parse(toml, "map.toml");
  }

  /** The repairs of a kind. */
  static List<Repair> repairs(RecordedLog log, RepairKind kind) {
    return log.repairs().stream().filter(r -> r.kind() == kind).toList();
  }

  static double value(RecordedLog log, LogSignal signal, int row) throws LogRefusedException {
    return log.require(signal).value(row);
  }
}
