package org.boostwright.rig.replay.csv;

import java.util.Locale;
import org.jspecify.annotations.Nullable;

/**
 * A unit as people and loggers write it, understood through mangled degree signs and through the
 * words that say absolute or gauge.
 *
 * @param unit the unit
 * @param reference absolute or gauge where the text says so; null where it does not
 * @param mangled true when a degree sign had been turned into other characters
 */
record UnitText(LogUnit unit, @Nullable Reference reference, boolean mangled) {

  private static final String[] ABSOLUTE = {"absolute", "abs", "a"};
  private static final String[] GAUGE = {"gauge", "g"};

  /** Reads a unit; null when the text is none. */
  static @Nullable UnitText parse(String text) {
    boolean mangled = false;
    StringBuilder letters = new StringBuilder();
    for (int i = 0; i < text.length(); i++) {
      char c = text.charAt(i);
      if (c < 128 && c != '?') {
        if (c > ' ' && c != '_' && c != '(' && c != ')' && c != '[' && c != ']' && c != '.') {
          letters.append(c);
        }
      } else if (c != '\u00b0' && c != '\u00ba') {
        mangled = true;
      }
    }
    String key = letters.toString().toLowerCase(Locale.ROOT);
    LogUnit unit = LogUnit.spelled(key);
    if (unit == null) {
      return pressure(key);
    }
    // Only a degree sign is forgiven; any other stray character makes it an unknown unit.
    return mangled && unit.quantity() != Quantity.TEMPERATURE
        ? null
        : new UnitText(unit, null, mangled);
  }

  private static @Nullable UnitText pressure(String key) {
    for (Reference reference : Reference.values()) {
      for (String word : reference == Reference.ABSOLUTE ? ABSOLUTE : GAUGE) {
        if (key.endsWith(word)) {
          LogUnit unit = LogUnit.spelled(key.substring(0, key.length() - word.length()));
          if (unit != null && unit.quantity() == Quantity.PRESSURE) {
            return new UnitText(unit, reference, false);
          }
        }
      }
    }
    return null;
  }
}
