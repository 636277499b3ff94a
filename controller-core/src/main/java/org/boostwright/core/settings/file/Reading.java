package org.boostwright.core.settings.file;

import java.util.ArrayList;
import java.util.Comparator;
import java.util.HashSet;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.Set;
import org.boostwright.core.settings.UnitSettings;
import org.jspecify.annotations.Nullable;
import org.tomlj.TomlPosition;

/** What gathers while one file is read: problems, which keys stand in it, which of them are bad. */
final class Reading {
  private static final TomlPosition START = TomlPosition.positionAt(1, 1);

  private final String file;
  private final List<Problem> problems = new ArrayList<>();
  private final Map<String, LoadResult.Stated> stated = new LinkedHashMap<>();
  private final Set<String> bad = new HashSet<>();
  private final KeyNote.Taker notes;
  private UnitSettings units = UnitSettings.KPA_ABSOLUTE;

  Reading(String file, KeyNote.Taker notes) {
    this.file = file;
    this.notes = notes;
  }

  /** Who takes a note of each key that is asked for. */
  KeyNote.Taker notes() {
    return notes;
  }

  /** Units of pressure keys that do not name their own. */
  UnitSettings units() {
    return units;
  }

  void units(UnitSettings declared) {
    units = declared;
  }

  /** Notes that a key stands in the file. */
  void state(
      String base, String written, @Nullable TomlPosition at, @Nullable UnitSettings notation) {
    TomlPosition place = at == null ? START : at;
    stated.put(base, new LoadResult.Stated(written, place.line(), place.column(), notation));
  }

  Map<String, LoadResult.Stated> stated() {
    return stated;
  }

  /** Marks a key as unusable, so that no later check stumbles over its stand-in value. */
  void spoil(String base) {
    bad.add(base);
  }

  /** True when every one of these keys could be read (or is absent). */
  boolean sound(String... bases) {
    for (String base : bases) {
      if (bad.contains(base)) {
        return false;
      }
    }
    return true;
  }

  void error(String code, @Nullable TomlPosition at, String text) {
    add(Severity.ERROR, code, at, text);
  }

  void warning(String code, @Nullable TomlPosition at, String text) {
    add(Severity.WARNING, code, at, text);
  }

  /** A problem at a key; at the start of the file when the key is not in it. */
  void atKey(Severity severity, String code, String base, String text) {
    LoadResult.Stated key = stated.get(base);
    TomlPosition at = key == null ? START : TomlPosition.positionAt(key.line(), key.column());
    add(severity, code, at, written(base) + ": " + text);
  }

  /** The dotted key as it stands in the file, or as it is called when it does not. */
  String written(String base) {
    LoadResult.Stated key = stated.get(base);
    return key == null ? base : key.key();
  }

  /** How a pressure key's number is written in this file. */
  Quantity level(String base) {
    LoadResult.Stated key = stated.get(base);
    return Quantity.level(key == null || key.notation() == null ? units : key.notation());
  }

  /** How a difference of pressures is shown beside a pressure key. */
  Quantity difference(String base) {
    LoadResult.Stated key = stated.get(base);
    UnitSettings notation = key == null ? null : key.notation();
    return Quantity.difference(notation == null ? units.pressure() : notation.pressure());
  }

  private void add(Severity severity, String code, @Nullable TomlPosition at, String text) {
    TomlPosition place = at == null ? START : at;
    problems.add(new Problem(severity, code, file, place.line(), place.column(), printable(text)));
  }

  /** A file may hold escape characters; a terminal that shows its problems must not obey them. */
  private static String printable(String text) {
    return text.replaceAll("\\p{Cntrl}", "?");
  }

  boolean refused() {
    return problems.stream().anyMatch(p -> p.severity() == Severity.ERROR);
  }

  /** Problems, errors first, then in the order of the file. */
  List<Problem> problems() {
    List<Problem> sorted = new ArrayList<>(problems);
    sorted.sort(
        Comparator.comparing(Problem::severity)
            .thenComparingInt(Problem::line)
            .thenComparingInt(Problem::column));
    return List.copyOf(sorted);
  }
}
