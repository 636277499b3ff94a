package org.boostwright.rig.result;

import org.boostwright.core.settings.Settings;
import org.boostwright.core.table.Table2d;

/** The tables of a settings file as tables of a result. */
public final class SettingsTables {
  private SettingsTables() {}

  /** Adds boost target and base duty. */
  public static void add(ResultBuilder result, Settings settings) {
    String rows = settings.demand().id();
    result.add(heat("target", "Boost target", rows, settings.target(), Units.KPA_ABS, 1.0));
    result.add(heat("base_duty", "Base duty", rows, settings.baseDuty(), Units.PERCENT, 100.0));
  }

  /** A table over demand and engine speed, its values times a factor. */
  public static HeatTable heat(
      String id, String title, String rows, Table2d table, String unit, double factor) {
    double[][] values = new double[table.rows().size()][table.columns().size()];
    for (int r = 0; r < values.length; r++) {
      for (int c = 0; c < values[r].length; c++) {
        values[r][c] = factor * table.cell(r, c);
      }
    }
    return new HeatTable(
        id,
        title,
        rows,
        Units.PERCENT,
        table.rows().points(),
        "engine speed",
        Units.RPM,
        table.columns().points(),
        unit,
        values);
  }
}
