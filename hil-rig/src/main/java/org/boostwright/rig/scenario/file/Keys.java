package org.boostwright.rig.scenario.file;

import java.util.ArrayList;
import java.util.LinkedHashSet;
import java.util.List;
import java.util.Locale;
import java.util.Map;
import java.util.Set;
import org.boostwright.core.settings.file.Words;
import org.jspecify.annotations.Nullable;
import org.tomlj.TomlArray;
import org.tomlj.TomlPosition;
import org.tomlj.TomlTable;

/** One table of a scenario file, read key by key; {@link #done} refuses what nobody asked for. */
final class Keys {
  private final String file;
  private final String path;
  private final TomlTable table;
  private final TomlPosition position;
  private final Set<String> known = new LinkedHashSet<>();

  Keys(String file, String path, TomlTable table, TomlPosition position) {
    this.file = file;
    this.path = path;
    this.table = table;
    this.position = position;
  }

  boolean has(String key) {
    known.add(key);
    return table.contains(List.of(key));
  }

  private @Nullable Object value(String key) {
    return has(key) ? table.get(List.of(key)) : null;
  }

  private TomlPosition at(String key) {
    TomlPosition at = table.inputPositionOf(List.of(key));
    return at == null ? position : at;
  }

  /** A refusal at a key, or where the table begins when the key is not there. */
  ScenarioRefusedException refuse(String key, String text) {
    TomlPosition at = has(key) ? at(key) : position;
    return new ScenarioRefusedException(
        file + ":" + at.line() + ":" + at.column() + ": " + dotted(key) + " " + text);
  }

  private String dotted(String key) {
    return path.isEmpty() ? key : path + "." + key;
  }

  String text(String key) throws ScenarioRefusedException {
    Object value = value(key);
    if (value instanceof String text && !text.isBlank()) {
      return text;
    }
    throw refuse(key, "is missing or no text; write " + key + " = \"...\"");
  }

  double number(String key, double fallback, double low, double high)
      throws ScenarioRefusedException {
    Object value = value(key);
    if (value == null) {
      return fallback;
    }
    double number = value instanceof Number n ? n.doubleValue() : Double.NaN;
    if (!(number >= low && number <= high)) {
      throw refuse(
          key,
          String.format(
              Locale.ROOT, "is %s; write a number from %s to %s", value, plain(low), plain(high)));
    }
    return number;
  }

  private static String plain(double value) {
    return value == Math.rint(value) && Math.abs(value) < 1e9
        ? Long.toString((long) value)
        : Double.toString(value);
  }

  double required(String key, double low, double high) throws ScenarioRefusedException {
    if (!has(key)) {
      throw refuse(
          key,
          String.format(
              Locale.ROOT,
              "is missing; write a number from %s to %s",
              plain(low),
              plain(high)));
    }
    return number(key, Double.NaN, low, high);
  }

  boolean flag(String key, boolean fallback) throws ScenarioRefusedException {
    Object value = value(key);
    if (value == null) {
      return fallback;
    }
    if (value instanceof Boolean flag) {
      return flag;
    }
    throw refuse(key, "is " + value + "; write true or false");
  }

  /** A word out of a few; the fallback when the key is absent. */
  <E> E choice(String key, E fallback, Map<String, E> choices) throws ScenarioRefusedException {
    Object value = value(key);
    if (value == null) {
      return fallback;
    }
    return chosen(key, value, choices);
  }

  private <E> E chosen(String key, Object word, Map<String, E> choices)
      throws ScenarioRefusedException {
    E chosen = word instanceof String text ? choices.get(text) : null;
    if (chosen == null) {
      String near = Words.nearest(String.valueOf(word), choices.keySet());
      throw refuse(
          key,
          "\""
              + word
              + "\" is not known"
              + (near != null
                  ? "; did you mean \"" + near + "\"?"
                  : "; known are " + String.join(", ", choices.keySet())));
    }
    return chosen;
  }

  /** Words out of a few; empty when the key is absent. */
  <E> List<E> choices(String key, Map<String, E> choices) throws ScenarioRefusedException {
    List<E> all = new ArrayList<>();
    for (Object word : list(key)) {
      all.add(chosen(key, word, choices));
    }
    return all;
  }

  List<String> texts(String key) throws ScenarioRefusedException {
    List<String> all = new ArrayList<>();
    for (Object word : list(key)) {
      if (!(word instanceof String text)) {
        throw refuse(key, "holds " + word + "; write a list of texts in quotes");
      }
      all.add(text);
    }
    return all;
  }

  List<Long> wholes(String key) throws ScenarioRefusedException {
    List<Long> all = new ArrayList<>();
    for (Object number : list(key)) {
      if (!(number instanceof Long whole)) {
        throw refuse(key, "holds " + number + "; write a list of whole numbers");
      }
      all.add(whole);
    }
    return all;
  }

  private List<?> list(String key) throws ScenarioRefusedException {
    Object value = value(key);
    if (value == null) {
      return List.of();
    }
    if (value instanceof TomlArray array) {
      return array.toList();
    }
    throw refuse(key, "is no list; write " + key + " = [...]");
  }

  /** A table inside this one; an empty one where it is absent. */
  Keys table(String key) throws ScenarioRefusedException {
    Object value = value(key);
    if (value == null) {
      return new Keys(file, dotted(key), org.tomlj.Toml.parse(""), position);
    }
    if (value instanceof TomlTable inner) {
      return new Keys(file, dotted(key), inner, at(key));
    }
    throw refuse(key, "is no table; write [" + key + "]");
  }

  /** The tables of a list of tables; empty when the key is absent. */
  List<Keys> tables(String key) throws ScenarioRefusedException {
    List<Keys> all = new ArrayList<>();
    Object value = value(key);
    if (value == null) {
      return all;
    }
    if (value instanceof TomlArray array) {
      for (int i = 0; i < array.size(); i++) {
        if (array.get(i) instanceof TomlTable inner) {
          all.add(new Keys(file, dotted(key), inner, array.inputPositionOf(i)));
        }
      }
      if (all.size() == array.size()) {
        return all;
      }
    }
    throw refuse(key, "is no list of tables");
  }

  /** Refuses every key that nobody asked for. */
  void done() throws ScenarioRefusedException {
    for (String key : table.keySet()) {
      if (!known.contains(key)) {
        String near = Words.nearest(key, known);
        TomlPosition at = at(key);
        throw new ScenarioRefusedException(
            file
                + ":"
                + at.line()
                + ":"
                + at.column()
                + ": "
                + dotted(key)
                + " is not known"
                + (near != null
                    ? "; did you mean " + near + "?"
                    : "; known here: " + String.join(", ", known)));
      }
    }
  }
}
