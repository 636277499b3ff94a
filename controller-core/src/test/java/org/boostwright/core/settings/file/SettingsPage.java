package org.boostwright.core.settings.file;

import java.io.IOException;
import java.io.InputStream;
import java.io.InputStreamReader;
import java.nio.charset.StandardCharsets;
import java.util.ArrayList;
import java.util.Arrays;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Locale;
import java.util.Map;
import java.util.Properties;
import java.util.Set;
import java.util.TreeSet;
import java.util.regex.Pattern;
import org.boostwright.core.ladder.Rung;
import org.boostwright.core.ladder.SettingsPart;
import org.boostwright.core.settings.UnitSettings;
import org.boostwright.core.settings.file.KeyNote.Form;

/**
 * The reference of the settings file, written from what the program asks of each key while it reads
 * files: unit, range and default from the reading itself, what a change voids from the ladder. Only
 * the meanings, and defaults that follow from other keys, are prose: settings-words.properties.
 */
final class SettingsPage {
  /** Files that between them make the program ask for every key there is. */
  private static final List<String> FILES =
      List.of(
          "schema = 1\n" + Example.SENSORS_ONLY,
          Example.SENSORS_ONLY + "[converter]\nkind = \"mcp3208\"\nmap = 0\nthrottle = 1\n",
          Example.SENSORS_ONLY
              + "[limits]\nduty_ceiling_pct = 10\n[base_duty]\nexhaust_help = 0.2\n"
              + "[feedback]\nkp_pct_per_kpa = 0\nki_pct_per_kpa_s = 0\nkd_pct_s_per_kpa = 0\n");

  private static final String HEAD =
      "| key | stands for | range | default | meaning | voids from |\n|---|---|---|---|---|---|\n";

  private final Map<String, Map<String, Row>> sections = new LinkedHashMap<>();
  private final Map<String, String> effective = new LinkedHashMap<>();
  private final Properties words = new Properties();
  private final Set<String> used = new TreeSet<>();

  /** One key with every note that was taken of it. */
  private record Row(List<KeyNote> notes) {
    KeyNote note() {
      return notes.get(0);
    }
  }

  SettingsPage() throws IOException {
    try (InputStream in = SettingsPage.class.getResourceAsStream("settings-words.properties")) {
      words.load(new InputStreamReader(in, StandardCharsets.UTF_8));
    }
    for (String file : FILES) {
      SettingsFile.parse("car.toml", file, this::take);
    }
    LoadResult least = Example.parse(Example.SENSORS_ONLY);
    for (CheckReport.Value value : SettingsCheck.report("car.toml", least).values()) {
      if (!value.stated()) {
        String unit = value.unit().isEmpty() ? "" : " " + value.unit();
        boolean everywhere = value.text().endsWith(" everywhere");
        String text = value.text().replace(" everywhere", "") + unit;
        effective.put(
            value.key().replaceAll(" \\(.*", ""), everywhere ? text + " everywhere" : text);
      }
    }
  }

  private void take(KeyNote note) {
    int dot = note.key().lastIndexOf('.');
    String section = dot < 0 ? "" : note.key().substring(0, dot);
    sections
        .computeIfAbsent(section, name -> new LinkedHashMap<>())
        .computeIfAbsent(note.key(), key -> new Row(new ArrayList<>()))
        .notes()
        .add(note);
  }

  /** Every key. */
  Set<String> keys() {
    Set<String> keys = new TreeSet<>();
    sections.values().forEach(section -> keys.addAll(section.keySet()));
    return keys;
  }

  /** Meanings of keys that do not exist. */
  Set<String> unused() {
    Set<String> unused = new TreeSet<>(words.stringPropertyNames());
    unused.removeAll(used);
    return unused;
  }

  /** The tables of all keys, a heading for each section. */
  String tables() {
    StringBuilder page = new StringBuilder();
    sections.forEach(
        (section, rows) -> {
          page.append("\n### ").append(section.isEmpty() ? "Top of the file" : "[" + section + "]");
          page.append("\n\n");
          String about = prose("[" + section + "]");
          page.append(about == null ? "" : about + "\n\n").append(HEAD);
          rows.values().forEach(row -> page.append(line(row)));
        });
    return page.toString();
  }

  private String line(Row row) {
    KeyNote note = row.note();
    String name = note.key().substring(note.key().lastIndexOf('.') + 1);
    String meaning = prose(note.key());
    return "| "
        + String.join(
            " | ",
            "`" + name + "`" + endings(note),
            form(row),
            range(row),
            usual(note),
            meaning == null ? "MISSING" : meaning,
            voids(note.key()))
        + " |\n";
  }

  /** Words of a key, else those that all sensors share; null when there are none. */
  private String prose(String key) {
    for (String name : List.of(key, key.replaceFirst("^sensors\\.[a-z_]+\\.", "sensors.*."))) {
      if (words.containsKey(name)) {
        used.add(name);
        return words.getProperty(name);
      }
    }
    return null;
  }

  private static String endings(KeyNote note) {
    if (note.spelling() == null) {
      return "";
    }
    return switch (note.spelling()) {
      case LEVEL, SPRING -> " P";
      case DIFFERENCE -> " D";
      case RATE -> " R";
    };
  }

  private static String form(Row row) {
    List<String> all = new ArrayList<>();
    for (Form form : new TreeSet<>(row.notes().stream().map(KeyNote::form).toList())) {
      all.add(
          switch (form) {
            case TEXT -> "text";
            case CHOICE -> "word";
            case FLAG -> "true, false";
            case WHOLE -> "whole number";
            case NUMBER -> "number";
            case LIST -> "list";
            case ROWS -> "rows";
          });
    }
    return String.join(" or ", all);
  }

  private String range(Row row) {
    String own = prose(row.note().key() + ".range");
    return own != null
        ? own
        : String.join(", or ", row.notes().stream().map(SettingsPage::range).distinct().toList());
  }

  private static String range(KeyNote note) {
    if (!note.choices().isEmpty()) {
      return String.join(", ", note.choices());
    }
    Bounds bounds = note.bounds();
    if (bounds == null || note.quantity() == null) {
      return "";
    }
    Quantity shown = shown(note);
    String low = Words.number(shown.written(bounds.low()));
    return low + " to " + grouped(shown.words(bounds.high()));
  }

  /** Springs are thought of as gauge pressure, every other level as absolute. */
  private static Quantity shown(KeyNote note) {
    return note.spelling() == Spelling.Kind.SPRING
        ? Quantity.gaugeLevel(new UnitSettings(UnitSettings.KPA_ABSOLUTE.pressure(), true))
        : note.quantity();
  }

  private String usual(KeyNote note) {
    String own = prose(note.key() + ".default");
    if (own != null) {
      return own;
    }
    if (note.fallback() instanceof Double number && note.quantity() != null) {
      return Double.isInfinite(number) || Double.isNaN(number)
          ? Words.number(number)
          : grouped(shown(note).words(number));
    }
    if (note.fallback() instanceof Integer number && note.bounds() != null) {
      // A pin or an input that is not wired.
      return note.bounds().holds(number) ? number.toString() : "none";
    }
    return note.fallback() != null
        ? note.fallback().toString()
        : effective.getOrDefault(note.key(), "none");
  }

  /** With a comma before each three digits of a number above 9999. */
  private static String grouped(String number) {
    return Pattern.compile("^\\d{5,}")
        .matcher(number)
        .replaceFirst(digits -> String.format(Locale.ROOT, "%,d", Long.valueOf(digits.group())));
  }

  /** Lowest rung of the ladder whose proof a change voids. */
  private static String voids(String key) {
    boolean shown = key.matches("schema|car\\.name|(units|project)\\..*");
    if (shown) {
      return "nothing";
    }
    SettingsPart part = SettingsPart.of(key);
    return Arrays.stream(Rung.values())
        .filter(rung -> rung.parts().contains(part))
        .findFirst()
        .map(Rung::words)
        .orElseThrow();
  }
}
