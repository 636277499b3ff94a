package org.boostwright.core.settings.file;

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
 * the key is absent or bad. {@link UnknownKeys} then complains about keys nobody asked for.
 */
final class Section {
  /** A key as it stands in the file and how its numbers are read. */
  private record Entry(
      String base, String key, Quantity quantity, @Nullable UnitSettings notation) {}

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
    List<String> words = choices.keySet().stream().sorted().toList();
    String usual = words.stream().filter(w -> fallback.equals(choices.get(w))).findFirst().get();
    note(new KeyNote(dotted(key), KeyNote.Form.CHOICE, null, null, null, usual, words));
    String text = words(key, null);
    if (text == null) {
      return fallback;
    }
    E chosen = choices.get(text);
    if (chosen == null) {
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
    note(new KeyNote(dotted(key), KeyNote.Form.TEXT, null, null, null, fallback, List.of()));
    return words(key, fallback);
  }

  private @Nullable String words(String key, @Nullable String fallback) {
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
    note(new KeyNote(dotted(key), KeyNote.Form.FLAG, null, null, null, fallback, List.of()));
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
    Quantity bare = Quantity.plain("");
    Bounds bounds = new Bounds(low, high);
    note(new KeyNote(dotted(key), KeyNote.Form.WHOLE, null, bare, bounds, fallback, List.of()));
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
    note(
        new KeyNote(dotted(key), KeyNote.Form.NUMBER, null, quantity, bounds, fallback, List.of()));
    return number(new Entry(key, key, quantity, null), fallback, bounds);
  }

  /** A pressure key in any of its spellings; the fallback is in kPa. */
  double pressure(String base, Spelling.Kind kind, double fallback, Bounds bounds) {
    note(base, KeyNote.Form.NUMBER, kind, bounds, fallback);
    Entry entry = entry(base, kind);
    return entry == null ? fallback : number(entry, fallback, bounds);
  }

  private double number(Entry entry, double fallback, Bounds bounds) {
    Object value = take(entry);
    if (value == null) {
      return fallback;
    }
    if (!(value instanceof Number number)) {
      wrongKind(entry.key(), value, "a number");
      reading.spoil(dotted(entry.base()));
      return fallback;
    }
    double inside = entry.quantity().inside(number.doubleValue());
    String complaint = bounds.complaint(inside, entry.quantity(), entry.key());
    if (!complaint.isEmpty()) {
      fail(entry.key(), "out_of_range", complaint);
      reading.spoil(dotted(entry.base()));
      return fallback;
    }
    return inside;
  }

  /** A list of numbers; null when absent or bad. */
  @Nullable Numbers numbers(String key, Quantity quantity, Bounds bounds) {
    note(new KeyNote(dotted(key), KeyNote.Form.LIST, null, quantity, bounds, null, List.of()));
    return numbers(new Entry(key, key, quantity, null), bounds);
  }

  /** A list of pressures in any spelling of its key; null when absent or bad. */
  @Nullable Numbers pressures(String base, Spelling.Kind kind, Bounds bounds) {
    note(base, KeyNote.Form.LIST, kind, bounds, null);
    Entry entry = entry(base, kind);
    return entry == null ? null : numbers(entry, bounds);
  }

  private @Nullable Numbers numbers(Entry entry, Bounds bounds) {
    Object value = take(entry);
    if (value == null) {
      return null;
    }
    Numbers numbers = null;
    if (value instanceof TomlArray array) {
      numbers = Numbers.read(reading, dotted(entry.key()), array, entry.quantity(), bounds);
    } else {
      wrongKind(entry.key(), value, "a list of numbers in brackets: [1, 2, 3]");
    }
    if (numbers == null) {
      reading.spoil(dotted(entry.base()));
    }
    return numbers;
  }

  /** The rows of a table; null when absent or bad. */
  @Nullable List<Numbers> rows(String key, String words, Quantity quantity, Bounds bounds) {
    note(new KeyNote(dotted(key), KeyNote.Form.ROWS, null, quantity, bounds, null, List.of()));
    return rows(new Entry(key, key, quantity, null), words, bounds);
  }

  /** The rows of a table of pressures in any spelling of its key; null when absent or bad. */
  @Nullable List<Numbers> pressureRows(String base, String words, Bounds bounds) {
    note(base, KeyNote.Form.ROWS, Spelling.Kind.LEVEL, bounds, null);
    Entry entry = entry(base, Spelling.Kind.LEVEL);
    return entry == null ? null : rows(entry, words, bounds);
  }

  private @Nullable List<Numbers> rows(Entry entry, String words, Bounds bounds) {
    Object value = take(entry);
    if (value == null) {
      return null;
    }
    List<Numbers> rows = null;
    if (value instanceof TomlArray array) {
      rows = Numbers.readRows(reading, words, array, entry.quantity(), bounds);
    } else {
      wrongKind(entry.key(), value, "a list of rows: [[1, 2], [3, 4]]");
    }
    if (rows == null) {
      reading.spoil(dotted(entry.base()));
    }
    return rows;
  }

  private void note(
      String base,
      KeyNote.Form form,
      Spelling.Kind kind,
      Bounds bounds,
      @Nullable Double fallback) {
    Quantity quantity = Spelling.quantity(kind, UnitSettings.KPA_ABSOLUTE);
    note(new KeyNote(dotted(base), form, kind, quantity, bounds, fallback, List.of()));
  }

  private void note(KeyNote note) {
    reading.notes().take(note);
  }

  /** The one spelling of a pressure key that stands in the file; null when none does. */
  private @Nullable Entry entry(String base, Spelling.Kind kind) {
    Entry found = null;
    offered.add(base);
    for (Spelling spelling : Spelling.of(base, kind, reading.units())) {
      if (!stands(spelling.key())) {
        continue;
      }
      if (found == null) {
        found = new Entry(base, spelling.key(), spelling.quantity(), spelling.notation());
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

  /** The value of a key, noting that it stands in the file; null when it does not. */
  private @Nullable Object take(Entry entry) {
    Object value = value(entry.key());
    if (value != null) {
      state(entry.base(), entry.key(), entry.notation());
    }
    return value;
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
    fail(key, "wrong_kind", "is " + Numbers.kindOf(value) + "; write " + expected);
  }

  private void state(String base, String key, @Nullable UnitSettings notation) {
    reading.state(dotted(base), dotted(key), at(key), notation);
  }

  /** Where a key stands. */
  TomlPosition at(String key) {
    TomlPosition at = table == null ? null : table.inputPositionOf(List.of(key));
    return at == null ? TomlPosition.positionAt(1, 1) : at;
  }

  private @Nullable Object value(String key) {
    offered.add(key);
    return stands(key) && table != null ? table.get(List.of(key)) : null;
  }

  /** Dotted name of the table, empty for the top of the file. */
  String path() {
    return path;
  }

  /** Every key that was asked for, in every spelling. */
  Set<String> known() {
    return known;
  }

  /** Every key that was asked for, without pressure units at the end. */
  Set<String> offered() {
    return offered;
  }

  /** Every key that stands in the file. */
  Set<String> standing() {
    return table == null ? Set.of() : table.keySet();
  }
}
