package org.boostwright.rig.replay.csv;

import java.util.ArrayList;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;

/** Counts repairs by kind and column while a log is read. */
final class RepairLog {
  private static final int EXAMPLE_LENGTH = 40;

  private record Key(RepairKind kind, String column) {}

  private final Map<Key, Repair> byKey = new LinkedHashMap<>();

  void add(RepairKind kind, String column, int line, String example) {
    Key key = new Key(kind, column);
    Repair old = byKey.get(key);
    byKey.put(
        key,
        old == null
            ? new Repair(kind, column, 1, line, line, shorten(example))
            : new Repair(
                kind,
                column,
                old.count() + 1,
                Math.min(old.firstLine(), line),
                Math.max(old.lastLine(), line),
                old.example()));
  }

  int count(RepairKind kind, String column) {
    Repair repair = byKey.get(new Key(kind, column));
    return repair == null ? 0 : repair.count();
  }

  List<Repair> list() {
    return new ArrayList<>(byKey.values());
  }

  /** Text cut to a length that fits a message, control characters shown as '?'. */
  static String shorten(String text) {
    String cut = text.length() <= EXAMPLE_LENGTH ? text : text.substring(0, EXAMPLE_LENGTH) + "...";
    StringBuilder clean = new StringBuilder(cut.length());
    for (int i = 0; i < cut.length(); i++) {
      char c = cut.charAt(i);
      clean.append(Character.isISOControl(c) ? '?' : c);
    }
    return clean.toString();
  }
}
