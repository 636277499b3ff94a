package org.boostwright.core.settings.file;

import java.util.HashMap;
import java.util.List;
import java.util.Map;

/** Complains about keys nobody asked for, and says which was probably meant. */
final class UnknownKeys {
  private UnknownKeys() {}

  /** Call when all tables have been read. */
  static void report(List<Section> sections) {
    Map<String, String> homes = new HashMap<>();
    for (Section section : sections) {
      for (String key : section.known()) {
        homes.putIfAbsent(key, section.path());
      }
    }
    for (Section section : sections) {
      report(section, homes);
    }
  }

  private static void report(Section section, Map<String, String> homes) {
    for (String key : section.standing()) {
      if (!section.known().contains(key)) {
        section
            .reading()
            .error(
                "key_unknown",
                section.at(key),
                section.dotted(key) + " is not known" + hint(section, key, homes));
      }
    }
  }

  private static String hint(Section section, String key, Map<String, String> homes) {
    String home = homes.get(key);
    if (home != null) {
      return home.isEmpty()
          ? "; it belongs at the top of the file"
          : "; it belongs in [" + home + "]";
    }
    String near = Words.nearest(key, section.known());
    return near != null
        ? "; did you mean " + near + "?"
        : "; known here: " + String.join(", ", section.offered()) + "; remove it or put # in front";
  }
}
