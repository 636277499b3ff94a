package org.boostwright.core.settings.file;

import java.util.ArrayList;
import java.util.LinkedHashSet;
import java.util.List;
import java.util.Map;
import java.util.Set;
import org.boostwright.core.settings.UnitSettings;
import org.jspecify.annotations.Nullable;
import org.tomlj.TomlArray;
import org.tomlj.TomlPosition;
import org.tomlj.TomlTable;

/**
 * One table of the file, read key by key: each read says what is expected and what stands in when
 * the key is absent or bad. {@link #close} then complains about keys nobody asked for.
 */
final class Section {
  private final Reading reading;
  private final String path;
  private final @Nullable TomlTable table;
  private final @Nullable TomlPosition position;
  private final Set<String> known = new LinkedHashSet<>();
  private final Set<String> offered = new LinkedHashSet<>();

  Section(
      Reading reading, String path, @Nullable TomlTable table, @Nullable TomlPosition position) {
    this.reading = reading;
    this.path = path;
    this.table = table;
    this.position = position;
  }

  Reading reading() {
    return reading;
  }

  /** True when the file has this table. */
  boolean present() {
    return table != null;
  }

  /** Dotted name of a key of this table. */
  String dotted(String key) {
    return path.isEmpty() ? key : path + "." + key;
  }

  /** Where the table begins; null when it is absent. */
  @Nullable TomlPosition position() {
    return position;
  }

  /** True when the key stands in the file. */
  boolean has(String key) {
    offered.add(key);
    return stands(key);
  }

  private boolean stands(String key) {
    known.add(key);
    return table != null && table.contains(List.of(key));
  }

  /** True when the key stands in the file and holds one number. */
  boolean isNumber(String key) {
    return value(key) instanceof Number;
  }

  /** A table inside this one. */
  Section child(String key) {
    Object value = value(key);
    TomlPosition at = value == null ? null : at(key);
    if (value != null && !(value instanceof TomlTable)) {
      wrongKind(key, value, "a table of its own: [" + dotted(key) + "]");
      value = null;
    }
    return new Section(reading, dotted(key), (TomlTable) value, at);
  }

  /** A word out of a few. */
  <E> E choice(String key, E fallback, Map<String, E> choices) {
    String text = text(key, null);
    if (text == null) {
      return fallback;
    }
    E chosen = choices.get(text);
    if (chosen == null) {
      List<String> words = choices.keySet().stream().sorted().toList();
      String near = Words.nearest(text, words);
      fail(
          key,
          "choice_unknown",
          "\"" + text + "\" is not known; write " + quoted(words) + meant(near));
      return fallback;
    }
    return chosen;
  }

  private static String quoted(List<String> words) {
    return "\"" + String.join("\" or \"", words) + "\"";
  }

  private static String meant(@Nullable String near) {
    return near == null ? "" : " (did you mean \"" + near + "\"?)";
  }

  /** Text. */
  @Nullable String text(String key, @Nullable String fallback) {
    Object value = value(key);
    if (value == null) {
      return fallback;
    }
    state(key, key, null);
    if (value instanceof String text) {
      return text;
    }
    wrongKind(key, value, "text in quotes");
    return fallback;
  }

  /** True or false. */
  boolean flag(String key, boolean fallback) {
    Object value = value(key);
    if (value == null) {
      return fallback;
    }
    state(key, key, null);
    if (value instanceof Boolean flag) {
      return flag;
    }
    wrongKind(key, value, "true or false");
    return fallback;
  }

  /** A whole number. */
  int whole(String key, int fallback, int low, int high) {
    Object value = value(key);
    if (value == null) {
      return fallback;
    }
    state(key, key, null);
    if (!(value instanceof Long number)) {
      wrongKind(key, value, "a whole number from " + low + " to " + high);
      return fallback;
    }
    if (!(number >= low && number <= high)) {
      fail(
          key,
          "out_of_range",
          number + " is outside " + low + " to " + high + "; write a whole number in that range");
      return fallback;
    }
    return number.intValue();
  }

  /** A number. */
  double number(String key, double fallback, Quantity quantity, Bounds bounds) {
    return number(key, key, fallback, quantity, bounds, null);
  }

  /** A pressure key in any of its spellings; the fallback is in kPa. */
  double pressure(String base, Spelling.Kind kind, double fallback, Bounds bounds) {
    Spelling spelling = spelling(base, kind);
    return spelling == null
        ? fallback
        : number(base, spelling.key(), fallback, spelling.quantity(), bounds, spelling.notation());
  }

  private double number(
      String base,
      String key,
      double fallback,
      Quantity quantity,
      Bounds bounds,
      @Nullable UnitSettings notation) {
    Object value = value(key);
    if (value == null) {
      return fallback;
    }
    state(base, key, notation);
    if (!(value instanceof Number number)) {
      wrongKind(key, value, "a number");
      reading.spoil(dotted(base));
      return fallback;
    }
    double inside = quantity.inside(number.doubleValue());
    String complaint = bounds.complaint(inside, quantity, key);
    if (!complaint.isEmpty()) {
      fail(key, "out_of_range", complaint);
      reading.spoil(dotted(base));
      return fallback;
    }
    return inside;
  }

  /** A list of numbers; null when absent or bad. */
  @Nullable Numbers numbers(String key, Quantity quantity, Bounds bounds) {
    return numbers(key, key, quantity, bounds, null);
  }

  /** A list of pressures in any spelling of its key; null when absent or bad. */
  @Nullable Numbers pressures(String base, Spelling.Kind kind, Bounds bounds) {
    Spelling spelling = spelling(base, kind);
    return spelling == null
        ? null
        : numbers(base, spelling.key(), spelling.quantity(), bounds, spelling.notation());
  }

  private @Nullable Numbers numbers(
      String base, String key, Quantity quantity, Bounds bounds, @Nullable UnitSettings notation) {
    Object value = value(key);
    if (value == null) {
      return null;
    }
    state(base, key, notation);
    if (!(value instanceof TomlArray array)) {
      wrongKind(key, value, "a list of numbers in brackets: [1, 2, 3]");
      reading.spoil(dotted(base));
      return null;
    }
    Numbers numbers = Numbers.read(reading, dotted(key), array, quantity, bounds);
    if (numbers == null) {
      reading.spoil(dotted(base));
    }
    return numbers;
  }

  /** The rows of a table; null when absent or bad. */
  @Nullable List<Numbers> rows(String key, String words, Quantity quantity, Bounds bounds) {
    return rows(key, key, words, quantity, bounds, null);
  }

  /** The rows of a table of pressures in any spelling of its key; null when absent or bad. */
  @Nullable List<Numbers> pressureRows(String base, String words, Bounds bounds) {
    Spelling spelling = spelling(base, Spelling.Kind.LEVEL);
    return spelling == null
        ? null
        : rows(base, spelling.key(), words, spelling.quantity(), bounds, spelling.notation());
  }

  private @Nullable List<Numbers> rows(
      String base,
      String key,
      String words,
      Quantity quantity,
      Bounds bounds,
      @Nullable UnitSettings notation) {
    Object value = value(key);
    if (value == null) {
      return null;
    }
    state(base, key, notation);
    if (!(value instanceof TomlArray array)) {
      wrongKind(key, value, "a list of rows: [[1, 2], [3, 4]]");
      reading.spoil(dotted(base));
      return null;
    }
    List<Numbers> rows = new ArrayList<>();
    boolean good = true;
    for (int i = 0; i < array.size(); i++) {
      String where = words + ", row " + (i + 1);
      if (!(array.get(i) instanceof TomlArray row)) {
        reading.error(
            "wrong_kind",
            array.inputPositionOf(i),
            where + ": expected a row of numbers in brackets: [1, 2, 3]");
        good = false;
        continue;
      }
      Numbers numbers = Numbers.read(reading, where, row, quantity, bounds);
      if (numbers == null) {
        good = false;
      } else {
        rows.add(numbers);
      }
    }
    if (!good) {
      reading.spoil(dotted(base));
    }
    return good ? rows : null;
  }

  /** The one spelling of a pressure key that stands in the file; null when none does. */
  private @Nullable Spelling spelling(String base, Spelling.Kind kind) {
    Spelling found = null;
    offered.add(base);
    for (Spelling spelling : Spelling.of(base, kind, reading.units())) {
      if (!stands(spelling.key())) {
        continue;
      }
      if (found == null) {
        found = spelling;
      } else {
        fail(
            spelling.key(),
            "key_twice",
            "says the same thing as "
                + found.key()
                + " at line "
                + at(found.key()).line()
                + "; keep one of the two");
      }
    }
    return found;
  }

  /** How a key that may carry a unit stands in the file; the plain key when it does not. */
  String spelled(String base) {
    String written = reading.written(dotted(base));
    return written.substring(written.lastIndexOf('.') + 1);
  }

  /** A problem at one of this table's keys. */
  void fail(String key, String code, String text) {
    reading.error(code, stands(key) ? at(key) : position, dotted(key) + ": " + text);
    reading.spoil(dotted(key));
  }

  private void wrongKind(String key, Object value, String expected) {
    fail(key, "wrong_kind", "expected " + expected + ", found " + kindOf(value));
  }

  static String kindOf(Object value) {
    if (value instanceof String text) {
      return "the text \"" + text + "\"";
    }
    if (value instanceof Boolean || value instanceof Number) {
      return value.toString();
    }
    if (value instanceof TomlArray) {
      return "a list";
    }
    return value instanceof TomlTable ? "a table" : "a date or time";
  }

  private void state(String base, String key, @Nullable UnitSettings notation) {
    reading.state(dotted(base), dotted(key), at(key), notation);
  }

  private TomlPosition at(String key) {
    TomlPosition at = table == null ? null : table.inputPositionOf(List.of(key));
    return at == null ? TomlPosition.positionAt(1, 1) : at;
  }

  private @Nullable Object value(String key) {
    offered.add(key);
    return stands(key) && table != null ? table.get(List.of(key)) : null;
  }

  /** Adds this table's keys to the homes of all keys, for hints about misplaced ones. */
  void offer(Map<String, String> homes) {
    for (String key : known) {
      homes.putIfAbsent(key, path);
    }
  }

  /** Complains about every key nobody asked for. Call when the table has been read. */
  void close(Map<String, String> elsewhere) {
    if (table == null) {
      return;
    }
    for (String key : table.keySet()) {
      if (known.contains(key)) {
        continue;
      }
      String near = Words.nearest(key, known);
      String home = elsewhere.get(key);
      String hint;
      if (home != null && !home.equals(path)) {
        hint =
            home.isEmpty()
                ? "; it belongs at the top of the file"
                : "; it belongs in [" + home + "]";
      } else if (near != null) {
        hint = "; did you mean " + near + "?";
      } else {
        hint = "; known here: " + String.join(", ", offered) + ". Remove or comment it out";
      }
      reading.error("key_unknown", at(key), dotted(key) + " is not known" + hint);
    }
  }
}
