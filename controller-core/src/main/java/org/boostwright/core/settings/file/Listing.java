package org.boostwright.core.settings.file;

import java.util.ArrayList;
import java.util.List;
import java.util.Map;
import org.boostwright.core.settings.PinSettings;
import org.boostwright.core.settings.Settings;
import org.boostwright.core.settings.UnitSettings;
import org.boostwright.core.table.Table2d;

/** Writes every effective value in the units of the file. */
final class Listing implements SettingsVisitor {
  private final Map<String, LoadResult.Stated> stated;
  private final String rows;
  private final List<CheckReport.Value> values = new ArrayList<>();

  private Listing(Settings settings, Map<String, LoadResult.Stated> stated) {
    this.stated = stated;
    this.rows = settings.demand().id();
  }

  static List<CheckReport.Value> of(Settings settings, Map<String, LoadResult.Stated> stated) {
    Listing listing = new Listing(settings, stated);
    new SettingsWalk(settings, listing).all();
    return List.copyOf(listing.values);
  }

  /** What decides the behaviour, in units of choice. */
  static List<CheckReport.Value> behaviour(Settings settings, UnitSettings units) {
    Listing listing = new Listing(settings, Map.of());
    new SettingsWalk(settings, units, listing).behaviour();
    return List.copyOf(listing.values);
  }

  @Override
  public void text(String key, String value) {
    add(key, value, "");
  }

  @Override
  public void remark(String key, String words) {
    values.add(new CheckReport.Value(key, words, "", true));
  }

  @Override
  public void flag(String key, boolean value) {
    add(key, value ? "true" : "false", "");
  }

  @Override
  public void whole(String key, int value) {
    add(key, value == PinSettings.NOT_WIRED ? "not wired" : Integer.toString(value), "");
  }

  @Override
  public void number(String key, double value, Quantity quantity) {
    boolean known = Double.isFinite(value);
    add(key, known ? text(value, quantity) : Words.exact(value), known ? quantity.unit() : "");
  }

  @Override
  public void list(String key, double[] numbers, Quantity quantity) {
    List<String> texts = new ArrayList<>();
    for (double number : numbers) {
      texts.add(text(number, quantity));
    }
    if (texts.isEmpty()) {
      add(key, "none", "");
    } else {
      add(key, String.join(", ", texts), quantity.unit());
    }
  }

  @Override
  public void table(String key, Table2d table, Quantity quantity) {
    if (table.rows().size() == 1 && table.columns().size() == 1) {
      add(key, text(table.cell(0, 0), quantity) + " everywhere", quantity.unit());
      return;
    }
    List<List<String>> grid = new ArrayList<>();
    List<String> head = new ArrayList<>();
    head.add(rows + " % \\ 1/min");
    for (double rpm : table.columns().points()) {
      head.add(Words.exact(rpm));
    }
    grid.add(head);
    for (int row = 0; row < table.rows().size(); row++) {
      List<String> line = new ArrayList<>();
      line.add(Words.exact(table.rows().point(row)));
      for (int column = 0; column < table.columns().size(); column++) {
        line.add(text(table.cell(row, column), quantity));
      }
      grid.add(line);
    }
    add(key, Grid.align(grid), quantity.unit());
  }

  private static String text(double inside, Quantity quantity) {
    return Words.exact(quantity.written(inside));
  }

  private void add(String key, String text, String unit) {
    int note = key.indexOf(" (");
    boolean inFile = stated.containsKey(note < 0 ? key : key.substring(0, note));
    values.add(new CheckReport.Value(key, text, unit, inFile));
  }
}
