package org.boostwright.core.settings.file;

import java.util.ArrayList;
import java.util.Arrays;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.TreeSet;
import org.boostwright.core.ladder.SettingsPart;
import org.boostwright.core.settings.Settings;
import org.boostwright.core.settings.UnitSettings;
import org.jspecify.annotations.Nullable;

/** How two settings differ in what they say, value by value; comments and order do not count. */
public final class SettingsDiff {
  private static final String NOTHING = "not stated";

  private SettingsDiff() {}

  /**
   * One value that differs.
   *
   * @param key key of the file, without a pressure unit at its end
   * @param before in words, with its unit
   * @param after in words, with its unit
   * @param part what proofs depend on with it; null where it only changes how things are shown
   */
  public record Line(String key, String before, String after, @Nullable SettingsPart part) {}

  /** Every difference, in the order of the file and in the units of {@code after}. */
  public static List<Line> of(Settings before, Settings after) {
    Map<String, CheckReport.Value> old = values(before, after.units());
    Map<String, CheckReport.Value> fresh = values(after, after.units());
    List<Line> lines = new ArrayList<>();
    shown(lines, "units", before.units().label(), after.units().label());
    shown(lines, "car.name", before.car().name(), after.car().name());
    TreeSet<String> gone = new TreeSet<>(old.keySet());
    fresh.forEach(
        (key, value) -> {
          gone.remove(key);
          line(lines, key, old.get(key), value);
        });
    gone.forEach(key -> line(lines, key, old.get(key), null));
    return List.copyOf(lines);
  }

  private static Map<String, CheckReport.Value> values(Settings settings, UnitSettings units) {
    Map<String, CheckReport.Value> values = new LinkedHashMap<>();
    Listing.behaviour(settings, units).forEach(value -> values.put(value.key(), value));
    return values;
  }

  private static void shown(List<Line> lines, String key, String before, String after) {
    if (!before.equals(after)) {
      lines.add(new Line(key, before, after, null));
    }
  }

  private static void line(
      List<Line> lines,
      String key,
      CheckReport.@Nullable Value before,
      CheckReport.@Nullable Value after) {
    String was = before == null ? NOTHING : before.text();
    String is = after == null ? NOTHING : after.text();
    if (was.equals(is)) {
      return;
    }
    SettingsPart part = SettingsPart.of(key);
    String unit = after != null ? after.unit() : before != null ? before.unit() : "";
    if (was.indexOf('\n') < 0 && is.indexOf('\n') < 0) {
      lines.add(new Line(key, with(was, unit), with(is, unit), part));
      return;
    }
    String cells = cells(was, is, unit);
    lines.add(new Line(key, "a table", cells.isEmpty() ? "a table of another shape" : cells, part));
  }

  private static String with(String text, String unit) {
    return unit.isEmpty() || text.equals(NOTHING) ? text : text + " " + unit;
  }

  /** Differing cells in words; empty when the axes differ. */
  private static String cells(String was, String is, String unit) {
    String[][] old = grid(was);
    String[][] fresh = grid(is);
    boolean axes = old.length == fresh.length && Arrays.equals(old[0], fresh[0]);
    int count = 0;
    int differing = 0;
    double most = 0.0;
    String where = "";
    for (int r = 1; axes && r < old.length; r++) {
      axes = old[r].length == fresh[r].length && old[r][0].equals(fresh[r][0]);
      for (int c = 1; axes && c < old[r].length; c++) {
        count++;
        double change = number(fresh[r][c]) - number(old[r][c]);
        if (change != 0.0) {
          differing++;
        }
        if (Math.abs(change) > Math.abs(most)) {
          most = change;
          // The head row begins with words, its numbers stand at its end.
          String rpm = fresh[0][fresh[0].length - fresh[r].length + c];
          where = "%s %% at %s rpm %s -> %s".formatted(old[r][0], rpm, old[r][c], fresh[r][c]);
        }
      }
    }
    return axes
        ? "%d of %d cells differ, most %s %s".formatted(differing, count, where, unit).strip()
        : "";
  }

  private static String[][] grid(String text) {
    return text.lines().map(line -> line.strip().split("\\s+")).toArray(String[][]::new);
  }

  private static double number(String text) {
    return Double.parseDouble(text.replace(",", ""));
  }
}
