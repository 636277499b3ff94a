package org.boostwright.core.settings.file;

import java.io.IOException;
import java.nio.ByteBuffer;
import java.nio.charset.CharacterCodingException;
import java.nio.charset.StandardCharsets;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.Arrays;
import java.util.List;
import org.boostwright.core.settings.UnitSettings;
import org.boostwright.core.table.Table2d;
import org.jspecify.annotations.Nullable;
import org.tomlj.MutableTomlArray;
import org.tomlj.Toml;
import org.tomlj.TomlArray;
import org.tomlj.TomlParseError;
import org.tomlj.TomlParseResult;

/**
 * Changes values in a settings file the way its writer would: in place. Comments, order, blanks and
 * the columns of tables stay as they are; what is not changed stays to the byte.
 *
 * <p>Nothing is written before the changed text has been read back and found good.
 */
public final class SettingsEdit {
  private final String name;
  private byte @Nullable [] original;
  private final String mark;
  private String text;

  private SettingsEdit(String name, String text, byte @Nullable [] original) {
    this.name = name;
    this.mark = text.startsWith(SettingsFile.BYTE_ORDER_MARK) ? SettingsFile.BYTE_ORDER_MARK : "";
    this.text = text.substring(mark.length());
    this.original = original;
  }

  /**
   * Starts from a file.
   *
   * @throws IOException when it cannot be read
   * @throws IllegalArgumentException when it is not TOML in UTF-8
   */
  public static SettingsEdit open(Path path) throws IOException {
    byte[] bytes = Files.readAllBytes(path);
    String name = SettingsFile.fileName(path);
    try {
      String text = StandardCharsets.UTF_8.newDecoder().decode(ByteBuffer.wrap(bytes)).toString();
      SettingsEdit edit = new SettingsEdit(name, text, bytes);
      edit.parse();
      return edit;
    } catch (CharacterCodingException e) {
      throw new IllegalArgumentException(
          Utf8Fault.locate(name, bytes).problems().get(0).toString());
    }
  }

  /**
   * Starts from text, for a run with other values and for tests.
   *
   * @throws IllegalArgumentException when it is not TOML
   */
  public static SettingsEdit of(String name, String text) {
    SettingsEdit edit = new SettingsEdit(name, text, null);
    edit.parse();
    return edit;
  }

  /** The text as it now stands. */
  public String text() {
    return mark + text;
  }

  /** Reads the text as it now stands. */
  public LoadResult load() {
    return SettingsFile.parse(name, text);
  }

  /** Sets a number. A pressure that stands in the file in another unit is converted to that. */
  public SettingsEdit set(String key, double value) {
    Other other = otherSpelling(key);
    if (other != null) {
      double inside = other.asked().quantity().inside(value);
      return put(other.key(), number(other.standing().quantity().written(inside)));
    }
    return put(key, number(value));
  }

  /** Sets a switch. */
  public SettingsEdit set(String key, boolean value) {
    return put(key, value);
  }

  /** Sets text. */
  public SettingsEdit set(String key, String value) {
    return put(key, value);
  }

  /** Sets a list of numbers. */
  public SettingsEdit set(String key, double... values) {
    return setRows(key, new double[][] {values}, false);
  }

  /** Sets a table of numbers, row by row. */
  public SettingsEdit set(String key, double[][] rows) {
    return setRows(key, rows, true);
  }

  /**
   * Sets a value given as text, as on a command line: {@code 180}, {@code true}, {@code [1, 2]} or
   * plain words.
   */
  public SettingsEdit setText(String key, String value) {
    TomlParseResult parsed = Toml.parse("v = " + value);
    Object literal = parsed.hasErrors() ? value : parsed.get("v");
    if (literal instanceof Number number) {
      return set(key, number.doubleValue());
    }
    return put(key, literal == null ? value : literal);
  }

  /** Sets base duty, 0 to 1 over throttle or pedal percent and 1/min, to the tenth of a percent. */
  public SettingsEdit setBaseDuty(Table2d table) {
    return setTable("base_duty", "duty_pct", table, Quantity.SHARE, 0.1);
  }

  /**
   * Sets the boost target, kPa absolute over throttle or pedal percent and 1/min, to the tenth of a
   * kPa or the hundredth of a psi.
   */
  public SettingsEdit setTarget(Table2d table) {
    LoadResult.Stated stated = load().stated().get("target.boost");
    UnitSettings notation = stated == null ? null : stated.notation();
    if (stated == null || notation == null) {
      Quantity kpa = Quantity.level(UnitSettings.KPA_ABSOLUTE);
      return setTable("target", "boost_kpa_abs", table, kpa, 0.1);
    }
    String key = stated.key().substring("target.".length());
    double step = Math.pow(10.0, -1.0 - Math.ceil(Math.log10(notation.pressure().toKpa(1.0))));
    return setTable("target", key, table, Quantity.level(notation), step);
  }

  private SettingsEdit setTable(
      String section, String key, Table2d table, Quantity quantity, double step) {
    TomlParseResult parsed = parse();
    String rowKey = parsed.contains(section + ".pedal_pct") ? ".pedal_pct" : ".throttle_pct";
    setAxis(section + rowKey, table.rows().points());
    setAxis(section + ".rpm", table.columns().points());
    int columns = table.columns().size();
    double[][] rows = new double[table.rows().size()][columns];
    for (int row = 0; row < rows.length; row++) {
      for (int column = 0; column < columns; column++) {
        double written = quantity.written(table.cell(row, column));
        rows[row][column] = Math.rint(written / step) * step;
      }
    }
    return set(section + "." + key, rows);
  }

  private void setAxis(String key, double[] points) {
    TomlArray standing = parse().getArray(key);
    if (standing == null || !Arrays.equals(points, numbers(standing))) {
      set(key, points);
    }
  }

  private static double[] numbers(TomlArray array) {
    double[] values = new double[array.size()];
    for (int i = 0; i < values.length; i++) {
      values[i] = array.get(i) instanceof Number number ? number.doubleValue() : Double.NaN;
    }
    return values;
  }

  /**
   * Writes the file, whole or not at all, if the changed text is good settings and the file has not
   * been changed by somebody else meanwhile.
   *
   * @return the result of reading the changed text; when it is not good nothing was written
   * @throws IOException when writing failed, see {@link AtomicFile#write}
   */
  public LoadResult save(Path path) throws IOException {
    return save(path, new RealDisk());
  }

  LoadResult save(Path path, Disk disk) throws IOException {
    LoadResult result = load();
    if (!result.ok()) {
      return result;
    }
    byte[] expected = original;
    if (expected != null && !Arrays.equals(expected, Files.readAllBytes(path))) {
      throw new IOException(
          path + " was changed by somebody else meanwhile; read it again and repeat the change");
    }
    byte[] content = text().getBytes(StandardCharsets.UTF_8);
    AtomicFile.write(disk, path, content);
    original = content;
    return result;
  }

  private TomlParseResult parse() {
    TomlParseResult parsed = Toml.parse(text);
    for (TomlParseError error : parsed.errors()) {
      throw new IllegalArgumentException(
          name
              + ":"
              + error.position().line()
              + ":"
              + error.position().column()
              + ": "
              + error.getMessage());
    }
    return parsed;
  }

  private SettingsEdit put(String key, Object value) {
    try {
      TomlParseResult parsed = parse();
      parsed.set(key, value);
      text = parsed.toToml();
      return this;
    } catch (RuntimeException e) {
      throw new IllegalArgumentException(key + " cannot be set: " + e.getMessage(), e);
    }
  }

  private SettingsEdit setRows(String key, double[][] rows, boolean nested) {
    Other other = otherSpelling(key);
    if (other != null) {
      return setRows(other.key(), converted(rows, other), nested);
    }
    TomlParseResult parsed = parse();
    if (!parsed.isArray(key)) {
      put(key, MutableTomlArray.create());
      parsed = parse();
    }
    text = new ListEdit(text).replace(parsed, key, rows, nested);
    return this;
  }

  private static double[][] converted(double[][] rows, Other other) {
    double[][] fresh = new double[rows.length][];
    for (int row = 0; row < rows.length; row++) {
      fresh[row] = rows[row].clone();
      for (int i = 0; i < fresh[row].length; i++) {
        double inside = other.asked().quantity().inside(fresh[row][i]);
        fresh[row][i] = other.standing().quantity().written(inside);
      }
    }
    return fresh;
  }

  /** A whole number where it is one, so that 180 stays 180. */
  static Number number(double value) {
    if (!Double.isFinite(value)) {
      throw new IllegalArgumentException(value + " cannot stand in a settings file");
    }
    double tidy = Double.parseDouble(Words.exact(value));
    if (tidy == Math.rint(tidy) && Math.abs(tidy) < 1e12) {
      return (long) tidy;
    }
    return tidy;
  }

  private record Other(String key, Spelling asked, Spelling standing) {}

  /** How a pressure key stands in the file, when it is spelled otherwise than asked for. */
  private @Nullable Other otherSpelling(String key) {
    String base = key.replaceAll("_(kpa|psi|bar)(_abs|_gauge|_per_s)?$", "");
    LoadResult result = load();
    LoadResult.Stated stated = result.stated().get(base);
    if (stated == null || stated.notation() == null || stated.key().equals(key)) {
      return null;
    }
    for (Spelling.Kind kind : Spelling.Kind.values()) {
      List<Spelling> spellings = Spelling.of(base, kind, result.units());
      Spelling asked = find(spellings, key);
      Spelling standing = find(spellings, stated.key());
      if (asked != null && standing != null) {
        return new Other(stated.key(), asked, standing);
      }
    }
    return null;
  }

  private static @Nullable Spelling find(List<Spelling> spellings, String key) {
    for (Spelling spelling : spellings) {
      if (spelling.key().equals(key)) {
        return spelling;
      }
    }
    return null;
  }
}
