package org.boostwright.core.settings.file;

import java.util.Locale;
import org.boostwright.core.AnalogChannel;
import org.boostwright.core.settings.Settings;
import org.boostwright.core.settings.UnitSettings;
import org.boostwright.core.table.Table2d;

/** Do the target and base duty tables fit the limits, the valve and each other? */
final class TableChecks {
  /** Overboost limit over the highest target, kPa (common practice, no source). */
  private static final double MARGIN_LOW_KPA = 15.0;

  private static final double MARGIN_HIGH_KPA = 25.0;
  private static final double ATMOSPHERE = UnitSettings.STANDARD_ATMOSPHERE_KPA;

  private final Reading reading;
  private final Settings settings;
  private final TableReader target;
  private final TableReader baseDuty;

  TableChecks(Reading reading, Settings settings, TableReader target, TableReader baseDuty) {
    this.reading = reading;
    this.settings = settings;
    this.target = target;
    this.baseDuty = baseDuty;
  }

  void run() {
    if (!target.rows().isEmpty() && reading.sound("target.boost")) {
      targetAgainstCutoff();
      peak();
    }
    rowsAlike();
    if (!baseDuty.rows().isEmpty() && reading.sound("base_duty.duty_pct")) {
      dutyAgainstCeiling();
      dutyAgainstWindow();
    }
  }

  private void targetAgainstCutoff() {
    if (!reading.sound("limits.cutoff")) {
      return;
    }
    double cutoff = settings.limits().cutoffKpaAbs();
    Quantity unit = reading.level("target.boost");
    Table2d table = target.table();
    for (int row = 0; row < table.rows().size(); row++) {
      for (int column = 0; column < table.columns().size(); column++) {
        double cell = table.cell(row, column);
        if (cell < cutoff) {
          continue;
        }
        reading.error(
            "target_above_cutoff",
            target.place(row, column),
            "target table, row "
                + (row + 1)
                + ": "
                + unit.words(cell)
                + " is "
                + (cell > cutoff ? "above" : "at")
                + " the overboost limit "
                + unit.words(cutoff)
                + slip(cell, cutoff, unit)
                + "; lower it or raise "
                + reading.written("limits.cutoff"));
      }
    }
  }

  /** Names the mix-up of gauge and absolute when one would explain a target above the limit. */
  private String slip(double cell, double cutoff, Quantity unit) {
    double lower = cell - ATMOSPHERE;
    if (unit.writtenAsGauge() && lower > ATMOSPHERE && lower < cutoff) {
      return " (it looks like absolute pressure in a gauge table)";
    }
    double higher = cutoff + ATMOSPHERE;
    boolean limitIsGauge = !reading.level("limits.cutoff").writtenAsGauge();
    return limitIsGauge && highest(target.table()) < higher && cutoff < 1.6 * ATMOSPHERE
        ? " (the limit looks like gauge pressure written as absolute)"
        : "";
  }

  private void peak() {
    double cutoff = settings.limits().cutoffKpaAbs();
    Quantity unit = reading.level("target.boost");
    double highest = highest(target.table());
    if (highest <= ATMOSPHERE + 5.0) {
      String name = unit.unit().substring(0, unit.unit().indexOf(' ')).toLowerCase(Locale.ROOT);
      reading.atKey(
          Severity.ERROR,
          "target_is_gauge",
          "target.boost",
          "the highest target is "
              + unit.words(highest)
              + ", no boost at all; it is about 101 kPa off and looks like gauge pressure written"
              + " as absolute: "
              + unit.words(highest + ATMOSPHERE)
              + "; write boost_"
              + name
              + "_gauge, or leave the table out to run on the spring");
      return;
    }
    double ratio = settings.limits().pressureRatioMax();
    if (reading.sound("limits.pressure_ratio_max") && highest > ratio * ATMOSPHERE) {
      reading.atKey(
          Severity.WARNING,
          "target_above_ratio",
          "target.boost",
          "the highest target, "
              + unit.words(highest)
              + ", is cut to "
              + unit.words(ratio * ATMOSPHERE)
              + " at sea level by limits.pressure_ratio_max "
              + Words.number(ratio)
              + ", and to less at altitude; lower it or raise the ratio");
    }
    double margin = cutoff - highest;
    Quantity apart = reading.difference("target.boost");
    String good = apart.words(MARGIN_LOW_KPA) + " to " + apart.words(MARGIN_HIGH_KPA);
    if (!reading.sound("limits.cutoff") || !(margin > 0.0)) {
      return;
    }
    if (margin < MARGIN_LOW_KPA) {
      reading.atKey(
          Severity.WARNING,
          "cutoff_close",
          "target.boost",
          "the highest target, "
              + unit.words(highest)
              + ", is only "
              + apart.words(margin)
              + " below the overboost limit "
              + unit.words(cutoff)
              + "; "
              + good
              + " keep a normal overshoot from tripping it");
    } else if (margin > MARGIN_HIGH_KPA) {
      reading.atKey(
          Severity.WARNING,
          "cutoff_far",
          "target.boost",
          "the overboost limit "
              + unit.words(cutoff)
              + " lies "
              + apart.words(margin)
              + " above the highest target, "
              + unit.words(highest)
              + "; "
              + good
              + " protect the engine sooner, lower "
              + reading.written("limits.cutoff"));
    }
  }

  private void rowsAlike() {
    if (!target.rows().isEmpty()
        && !baseDuty.rows().isEmpty()
        && target.demand() != baseDuty.demand()) {
      reading.error(
          "rows_differ",
          baseDuty.place(0, 0),
          "base duty table: its rows are "
              + baseDuty.demand().id()
              + " but the target table's are "
              + target.demand().id()
              + "; use the same for both");
    }
    if (settings.demand() == AnalogChannel.PEDAL
        && settings.sensors().channel(AnalogChannel.PEDAL) == null) {
      reading.error(
          "pedal_missing",
          target.rows().isEmpty() ? baseDuty.place(0, 0) : target.place(0, 0),
          "the tables' rows are pedal but there is no pedal sensor; write [sensors.pedal] or use"
              + " throttle_pct");
    }
  }

  private void dutyAgainstCeiling() {
    if (!reading.sound("limits.duty_ceiling_pct", "limits.duty_ceiling_rpm")) {
      return;
    }
    Table2d table = baseDuty.table();
    int above = 0;
    int first = 0;
    for (int i = 0; i < table.values().length; i++) {
      if (table.values()[i] > ceilingOver(i)) {
        first = above == 0 ? i : first;
        above++;
      }
    }
    if (above > 0) {
      warnCell(
          "duty_above_ceiling",
          first,
          above,
          "is above the duty ceiling "
              + Quantity.SHARE.words(ceilingOver(first))
              + " at this engine speed, and the ceiling wins; lower it or raise"
              + " limits.duty_ceiling_pct");
    }
  }

  private double ceilingOver(int cell) {
    Table2d table = baseDuty.table();
    double rpm = table.columns().point(cell % table.columns().size());
    return settings.limits().dutyCeiling().at(rpm);
  }

  private void dutyAgainstWindow() {
    double low = settings.valve().windowLowDuty();
    double high = settings.valve().windowHighDuty();
    double[] cells = baseDuty.table().values();
    int below = 0;
    int firstBelow = 0;
    int above = 0;
    int firstAbove = 0;
    for (int i = 0; i < cells.length; i++) {
      if (cells[i] > 0.0 && cells[i] < low) {
        firstBelow = below == 0 ? i : firstBelow;
        below++;
      } else if (cells[i] > high) {
        firstAbove = above == 0 ? i : firstAbove;
        above++;
      }
    }
    if (below > 0) {
      warnCell(
          "duty_below_window",
          firstBelow,
          below,
          "is below the usable window, which begins at "
              + Quantity.SHARE.words(low)
              + ": the valve never vents there; write 0 or more than that");
    }
    if (above > 0) {
      warnCell(
          "duty_above_window",
          firstAbove,
          above,
          "is above the usable window, which ends at "
              + Quantity.SHARE.words(high)
              + ": the wastegate is held shut there; lower it");
    }
  }

  private void warnCell(String code, int cell, int count, String text) {
    int columns = baseDuty.table().columns().size();
    String more = count == 1 ? "" : " (and " + (count - 1) + " more like it)";
    reading.warning(
        code,
        baseDuty.place(cell / columns, cell % columns),
        "base duty table, row "
            + (cell / columns + 1)
            + ": "
            + Quantity.SHARE.words(baseDuty.table().values()[cell])
            + " "
            + text
            + more);
  }

  static double highest(Table2d table) {
    double highest = Double.NEGATIVE_INFINITY;
    for (double cell : table.values()) {
      highest = Math.max(highest, cell);
    }
    return highest;
  }
}
