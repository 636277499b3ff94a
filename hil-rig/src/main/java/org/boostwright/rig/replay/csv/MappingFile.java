package org.boostwright.rig.replay.csv;

import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.EnumMap;
import java.util.List;
import java.util.Map;
import java.util.Set;
import java.util.TreeSet;
import org.boostwright.core.settings.UnitSettings;
import org.jspecify.annotations.Nullable;
import org.tomlj.Toml;
import org.tomlj.TomlArray;
import org.tomlj.TomlParseError;
import org.tomlj.TomlParseResult;
import org.tomlj.TomlPosition;
import org.tomlj.TomlTable;

/** Reads a mapping file (TOML); the format is described in {@code docs/logs.md}. */
public final class MappingFile {
  private static final Set<String> TOP =
      Set.of("separator", "decimal", "header_line", "ambient_kpa_abs", "pause_s", "ignore_columns");
  private static final Set<String> TIME = Set.of("column", "format");
  private static final Set<String> SIGNAL =
      Set.of("column", "unit", "reference", "resolution", "refresh_ms", "noise");

  private final String file;

  private MappingFile(String file) {
    this.file = file;
  }

  /** Reads a mapping file. */
  public static LogMapping read(Path path) throws LogRefusedException {
    String text;
    try {
      text = Files.readString(path);
    } catch (IOException e) {
      throw new LogRefusedException(path.toString(), "cannot be read as UTF-8 text: " + e);
    }
    return parse(text, path.toString());
  }

  /**
   * Reads the text of a mapping file.
   *
   * @param file name shown in messages
   */
  public static LogMapping parse(String text, String file) throws LogRefusedException {
    TomlParseResult toml = Toml.parse(text);
    if (toml.hasErrors()) {
      TomlParseError error = toml.errors().get(0);
      throw refused(file, error.position(), error.getMessage());
    }
    return new MappingFile(file).mapping(toml);
  }

  private LogMapping mapping(TomlTable toml) throws LogRefusedException {
    Set<String> known = new TreeSet<>(TOP);
    known.add("time");
    for (LogSignal signal : LogSignal.values()) {
      known.add(signal.id());
    }
    onlyKnown(toml, known);
    Map<LogSignal, ColumnMapping> signals = new EnumMap<>(LogSignal.class);
    for (LogSignal signal : LogSignal.values()) {
      TomlTable table = table(toml, signal.id());
      if (table != null) {
        onlyKnown(table, SIGNAL);
        signals.put(signal, column(table, signal));
      }
    }
    TomlTable time = table(toml, "time");
    TimeFormat format = null;
    ColumnMapping timeColumn = ColumnMapping.NONE;
    if (time != null) {
      onlyKnown(time, TIME);
      timeColumn = column(time, null);
      format = format(time);
    }
    Double ambient = number(toml, "ambient_kpa_abs", 40.0, 115.0);
    Double pause = number(toml, "pause_s", 0.001, 86_400.0);
    Double header = number(toml, "header_line", 0.0, 1000.0);
    return new LogMapping(
        separator(toml),
        decimalComma(toml),
        header == null ? -1 : header.intValue(),
        ambient == null ? UnitSettings.STANDARD_ATMOSPHERE_KPA : ambient,
        pause == null ? Double.NaN : pause,
        texts(toml, "ignore_columns"),
        timeColumn,
        format,
        signals);
  }

  private ColumnMapping column(TomlTable table, @Nullable LogSignal signal)
      throws LogRefusedException {
    String column = null;
    int number = 0;
    Object named = table.get(List.of("column"));
    if (named instanceof String text) {
      column = text.strip();
    } else if (named instanceof Long place && place >= 1 && place <= 2000) {
      number = place.intValue();
    } else if (named != null) {
      throw refused(table, "column", named + " is neither a header text nor a number from 1");
    }
    if (signal == null) {
      return new ColumnMapping(column, number, null, null, Double.NaN, Double.NaN, Double.NaN);
    }
    LogUnit unit = null;
    Reference reference = reference(table);
    String unitText = text(table, "unit");
    if (unitText != null) {
      UnitText read = UnitText.parse(unitText);
      if (read == null || read.unit().quantity() != signal.quantity()) {
        String fitting = LogUnit.labelsFor(signal.quantity());
        throw refused(table, "unit", "'" + unitText + "' does not fit; known here: " + fitting);
      }
      unit = read.unit();
      if (read.reference() != null) {
        if (reference != null && reference != read.reference()) {
          throw refused(table, "reference", "contradicts the unit '" + unitText + "'");
        }
        reference = read.reference();
      }
    }
    if (reference != null && signal.quantity() != Quantity.PRESSURE) {
      throw refused(table, "reference", "only pressures are absolute or gauge; remove it");
    }
    return new ColumnMapping(
        column,
        number,
        unit,
        reference,
        orNaN(number(table, "resolution", 1e-9, 1e6)),
        orNaN(number(table, "refresh_ms", 0.1, 600_000.0)),
        orNaN(number(table, "noise", 0.0, 1e6)));
  }

  private @Nullable Reference reference(TomlTable table) throws LogRefusedException {
    String text = text(table, "reference");
    if (text == null) {
      return null;
    }
    for (Reference reference : Reference.values()) {
      if (reference.label().equals(text)) {
        return reference;
      }
    }
    throw refused(table, "reference", "'" + text + "' is neither \"absolute\" nor \"gauge\"");
  }

  private @Nullable TimeFormat format(TomlTable table) throws LogRefusedException {
    String text = text(table, "format");
    if (text == null) {
      return null;
    }
    for (TimeFormat format : TimeFormat.values()) {
      if (format.label().equals(text)) {
        return format;
      }
    }
    throw refused(table, "format", "'" + text + "' is not one of: time_of_day, s, ms, ns");
  }

  private @Nullable Character separator(TomlTable table) throws LogRefusedException {
    String text = text(table, "separator");
    if (text == null) {
      return null;
    }
    return switch (text) {
      case ",", ";", "\t" -> text.charAt(0);
      case "tab" -> '\t';
      default ->
          throw refused(table, "separator", "'" + text + "' is not one of: \",\" \";\" \"tab\"");
    };
  }

  private @Nullable Boolean decimalComma(TomlTable table) throws LogRefusedException {
    String text = text(table, "decimal");
    if (text == null) {
      return null;
    }
    return switch (text) {
      case "," -> true;
      case "." -> false;
      default -> throw refused(table, "decimal", "'" + text + "' is neither \",\" nor \".\"");
    };
  }

  private @Nullable TomlTable table(TomlTable parent, String key) throws LogRefusedException {
    Object value = parent.get(List.of(key));
    if (value == null || value instanceof TomlTable) {
      return (TomlTable) value;
    }
    throw refused(parent, key, "must be a table, written [" + key + "]");
  }

  private @Nullable String text(TomlTable table, String key) throws LogRefusedException {
    Object value = table.get(List.of(key));
    if (value == null || value instanceof String) {
      return (String) value;
    }
    throw refused(table, key, value + " must be text in quotes");
  }

  private List<String> texts(TomlTable table, String key) throws LogRefusedException {
    Object value = table.get(List.of(key));
    List<String> texts = new ArrayList<>();
    if (value == null) {
      return texts;
    }
    if (value instanceof TomlArray array) {
      for (Object each : array.toList()) {
        if (!(each instanceof String text)) {
          throw refused(table, key, each + " must be text in quotes");
        }
        texts.add(text.strip());
      }
      return texts;
    }
    throw refused(table, key, "must be a list of texts in quotes");
  }

  private @Nullable Double number(TomlTable table, String key, double low, double high)
      throws LogRefusedException {
    Object value = table.get(List.of(key));
    if (value == null) {
      return null;
    }
    if (!(value instanceof Number number)) {
      throw refused(table, key, value + " must be a number");
    }
    double read = number.doubleValue();
    if (!(read >= low && read <= high)) {
      throw refused(table, key, value + " is outside " + low + " to " + high);
    }
    return read;
  }

  private static double orNaN(@Nullable Double number) {
    return number == null ? Double.NaN : number;
  }

  private void onlyKnown(TomlTable table, Set<String> known) throws LogRefusedException {
    for (String key : table.keySet()) {
      if (!known.contains(key)) {
        String list = String.join(", ", new TreeSet<>(known));
        throw refused(file, table.inputPositionOf(List.of(key)), unknown(key, list));
      }
    }
  }

  private static String unknown(String key, String known) {
    return "unknown key '" + RepairLog.shorten(key) + "'; known here: " + known;
  }

  private LogRefusedException refused(TomlTable table, String key, String message) {
    return refused(file, table.inputPositionOf(List.of(key)), key + ": " + message);
  }

  private static LogRefusedException refused(
      String file, @Nullable TomlPosition position, String message) {
    return position == null
        ? new LogRefusedException(file, message)
        : new LogRefusedException(file, position.line(), position.column(), message);
  }
}
