package org.boostwright.rig.bench;

import de.siegmar.fastcsv.reader.CsvReader;
import de.siegmar.fastcsv.reader.NamedCsvRecord;
import java.io.IOException;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.List;
import java.util.Locale;
import java.util.Optional;
import org.boostwright.core.bench.GaugeEntry;
import org.boostwright.core.settings.PressureUnit;

/**
 * Gauge readings in a CSV file: columns frequency_hz, duty_pct, pressure, unit; gauge pressure, as
 * if typed in.
 */
public final class ReadingsFile {
  private static final List<String> COLUMNS =
      List.of("frequency_hz", "duty_pct", "pressure", "unit");
  private static final double HIGHEST_KPA = 400.0;
  private static final double HIGHEST_HZ = 200.0;
  private static final double LOWEST_HZ = 1.0;

  private ReadingsFile() {}

  /**
   * One row.
   *
   * @param line line in the file
   * @param frequencyHz PWM frequency, Hz
   * @param dutyFraction duty, 0 to 1
   * @param kpaGauge pressure, kPa gauge
   * @param resolutionKpa smallest step the way of writing shows, kPa
   */
  public record Row(
      long line, double frequencyHz, double dutyFraction, double kpaGauge, double resolutionKpa) {}

  /** Why a file cannot be used: place, value, limit, what to do. */
  public static final class UnreadableException extends Exception {
    private static final long serialVersionUID = 1L;

    UnreadableException(String message) {
      super(message);
    }
  }

  /** Reads a file. */
  public static List<Row> read(Path file) throws IOException, UnreadableException {
    List<Row> rows = new ArrayList<>();
    try (CsvReader<NamedCsvRecord> reader =
        CsvReader.builder().skipEmptyLines(true).ofNamedCsvRecord(file)) {
      for (NamedCsvRecord csv : reader) {
        rows.add(row(file, csv));
      }
    } catch (RuntimeException e) {
      throw new UnreadableException(file + ": " + e.getMessage());
    }
    if (rows.isEmpty()) {
      throw new UnreadableException(
          file + " holds no readings; it needs the columns " + String.join(", ", COLUMNS));
    }
    return rows;
  }

  private static Row row(Path file, NamedCsvRecord csv) throws UnreadableException {
    long line = csv.getStartingLineNumber();
    double hz = number(file, csv, "frequency_hz");
    double duty = number(file, csv, "duty_pct");
    check(file, line, "frequency_hz", hz, "Hz", LOWEST_HZ, HIGHEST_HZ);
    check(file, line, "duty_pct", duty, "%", 0.0, 100.0);
    String written = field(file, csv, "unit");
    PressureUnit unit = unit(file, line, written);
    GaugeEntry entry = GaugeEntry.parse(field(file, csv, "pressure"), unit);
    if (entry.complaint() != null) {
      throw new UnreadableException(place(file, line) + entry.complaint());
    }
    check(file, line, "pressure", entry.kpaGauge(), "kPa gauge", -15.0, HIGHEST_KPA);
    return new Row(line, hz, duty / 100.0, entry.kpaGauge(), entry.resolutionKpa());
  }

  private static PressureUnit unit(Path file, long line, String written)
      throws UnreadableException {
    String plain =
        written.strip().toLowerCase(Locale.ROOT).replace("gauge", "").replace('_', ' ').strip();
    for (PressureUnit unit : PressureUnit.values()) {
      if (unit.label().toLowerCase(Locale.ROOT).equals(plain)) {
        return unit;
      }
    }
    throw new UnreadableException(
        place(file, line) + "unit '" + written + "' is not kPa, psi or bar (gauge)");
  }

  private static String field(Path file, NamedCsvRecord csv, String name)
      throws UnreadableException {
    Optional<String> value = csv.findField(name);
    if (value.isEmpty()) {
      throw new UnreadableException(
          place(file, csv.getStartingLineNumber())
              + "column "
              + name
              + " is missing; needed are "
              + String.join(", ", COLUMNS));
    }
    return value.get();
  }

  private static double number(Path file, NamedCsvRecord csv, String name)
      throws UnreadableException {
    String text = field(file, csv, name).strip();
    try {
      return Double.parseDouble(text);
    } catch (NumberFormatException e) {
      throw new UnreadableException(
          place(file, csv.getStartingLineNumber()) + name + " '" + text + "' is not a number");
    }
  }

  private static void check(
      Path file, long line, String name, double value, String unit, double low, double high)
      throws UnreadableException {
    if (!(value >= low && value <= high)) {
      throw new UnreadableException(
          place(file, line)
              + String.format(
                  Locale.ROOT,
                  "%s %s %s is outside %s to %s %s",
                  name,
                  value,
                  unit,
                  low,
                  high,
                  unit));
    }
  }

  private static String place(Path file, long line) {
    return file + ":" + line + ": ";
  }
}
