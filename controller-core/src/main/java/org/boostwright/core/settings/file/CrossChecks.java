package org.boostwright.core.settings.file;

import org.boostwright.core.AnalogChannel;
import org.boostwright.core.settings.AnalogSensor;
import org.boostwright.core.settings.Settings;
import org.boostwright.core.settings.UnitSettings;
import org.boostwright.core.table.Table2d;
import org.jspecify.annotations.Nullable;

/** Checks between keys of different tables, made when each could be read for itself. */
final class CrossChecks {
  /** The overboost limit stays this share of the calibrated span below the sensor's top. */
  static final double SENSOR_TOP_MARGIN = 0.10;

  /** Overboost limit over the highest target, kPa (common practice, no source). */
  private static final double MARGIN_LOW_KPA = 15.0;

  private static final double MARGIN_HIGH_KPA = 25.0;

  private final Reading reading;
  private final Settings settings;
  private final TableReader target;
  private final TableReader baseDuty;

  CrossChecks(Reading reading, Settings settings, TableReader target, TableReader baseDuty) {
    this.reading = reading;
    this.settings = settings;
    this.target = target;
    this.baseDuty = baseDuty;
  }

  /** Highest overboost limit a pressure sensor can watch, kPa absolute; infinite without one. */
  static double highestCutoffKpaAbs(@Nullable AnalogSensor map) {
    if (map == null) {
      return Double.POSITIVE_INFINITY;
    }
    double first = map.calibration().value(0);
    double last = map.calibration().value(map.calibration().axis().size() - 1);
    return Math.max(first, last) - SENSOR_TOP_MARGIN * Math.abs(last - first);
  }

  void run() {
    sensorTop();
    targetAgainstCutoff();
    levelAgainstCutoff();
    gearCount();
    demand();
    spring();
    dutyAgainstLimits();
    speeds();
    watches();
  }

  private void sensorTop() {
    AnalogSensor map = settings.sensors().channel(AnalogChannel.MAP);
    double highest = highestCutoffKpaAbs(map);
    double cutoff = settings.limits().cutoffKpaAbs();
    if (reading.sound("limits.cutoff") && !(cutoff <= highest)) {
      Quantity unit = reading.level("limits.cutoff");
      reading.atKey(
          Severity.ERROR,
          "cutoff_above_sensor",
          "limits.cutoff",
          unit.words(cutoff)
              + " is above "
              + unit.words(highest)
              + ", the top of the pressure sensor less 10 % of its span; lower the limit or fit a"
              + " sensor that reads higher");
    }
  }

  private void targetAgainstCutoff() {
    if (!reading.sound("limits.cutoff", "target.boost") || target.rows().isEmpty()) {
      return;
    }
    double cutoff = settings.limits().cutoffKpaAbs();
    Quantity unit = reading.level("target.boost");
    Table2d table = target.table();
    double highest = 0.0;
    boolean above = false;
    int peakRow = 0;
    int peakColumn = 0;
    for (int row = 0; row < table.rows().size(); row++) {
      for (int column = 0; column < table.columns().size(); column++) {
        double cell = table.cell(row, column);
        if (cell > highest) {
          highest = cell;
          peakRow = row;
          peakColumn = column;
        }
        if (!(cell < cutoff)) {
          above = true;
          reading.error(
              "target_above_cutoff",
              target.place(row, column),
              cellName("target table", row, column)
                  + ": "
                  + unit.words(cell)
                  + " is "
                  + (cell > cutoff ? "above" : "at")
                  + " the overboost limit "
                  + unit.words(cutoff)
                  + gaugeSlip(cell, cutoff, unit)
                  + "; lower it or raise "
                  + reading.written("limits.cutoff"));
        }
      }
    }
    double margin = cutoff - highest;
    String peak = cellName("target table", peakRow, peakColumn) + ": ";
    double atmosphere = UnitSettings.STANDARD_ATMOSPHERE_KPA;
    if (highest <= atmosphere + 5.0) {
      reading.error(
          "target_is_gauge",
          target.place(peakRow, peakColumn),
          peak
              + "the highest target is "
              + unit.words(highest)
              + ", no boost at all; it looks like gauge pressure written as absolute: "
              + unit.words(highest + atmosphere)
              + ". Write boost_"
              + gaugeName(unit)
              + ", or leave the table out to run on the spring");
    } else if (!above && margin < MARGIN_LOW_KPA) {
      reading.warning(
          "cutoff_close",
          target.place(peakRow, peakColumn),
          peak
              + "only "
              + Words.number(margin)
              + " kPa below the overboost limit "
              + unit.words(cutoff)
              + "; 15 to 25 kPa keep it from tripping on a normal overshoot");
    } else if (margin > MARGIN_HIGH_KPA) {
      reading.warning(
          "cutoff_far",
          target.place(peakRow, peakColumn),
          peak
              + "the overboost limit "
              + unit.words(cutoff)
              + " lies "
              + Words.number(margin)
              + " kPa above the highest target; 15 to 25 kPa protect the engine sooner, lower "
              + reading.written("limits.cutoff"));
    }
  }

  private static String gaugeName(Quantity unit) {
    return unit.unit().substring(0, unit.unit().indexOf(' ')).toLowerCase(java.util.Locale.ROOT)
        + "_gauge";
  }

  private static String gaugeSlip(double cell, double cutoff, Quantity unit) {
    double other = cell - UnitSettings.STANDARD_ATMOSPHERE_KPA;
    boolean slip =
        unit.writtenAsGauge() && other > UnitSettings.STANDARD_ATMOSPHERE_KPA && other < cutoff;
    return slip ? " (it looks like absolute pressure in a gauge table)" : "";
  }

  private static String cellName(String table, int row, int column) {
    return table + ", row " + (row + 1) + ", column " + (column + 1);
  }

  private void levelAgainstCutoff() {
    double cutoff = settings.limits().cutoffKpaAbs();
    if (reading.sound("limits.cutoff", "limits.low_boost")
        && !(settings.limits().lowBoostKpaAbs() < cutoff)) {
      Quantity unit = reading.level("limits.low_boost");
      reading.atKey(
          Severity.ERROR,
          "low_boost_above_cutoff",
          "limits.low_boost",
          unit.words(settings.limits().lowBoostKpaAbs())
              + " is not below the overboost limit "
              + unit.words(cutoff)
              + "; lower it");
    }
    for (int gear = 0; gear < settings.limits().gearTargets(); gear++) {
      double level = settings.limits().gearTargetKpaAbs(gear);
      if (reading.sound("limits.cutoff", "limits.gear_target") && !(level < cutoff)) {
        Quantity unit = reading.level("limits.gear_target");
        reading.atKey(
            Severity.ERROR,
            "gear_target_above_cutoff",
            "limits.gear_target",
            "gear "
                + (gear + 1)
                + ", "
                + unit.words(level)
                + ", is not below the overboost limit "
                + unit.words(cutoff)
                + "; lower it");
      }
    }
  }

  private void gearCount() {
    int gears = settings.car().gears();
    int targets = settings.limits().gearTargets();
    if (targets > 0
        && targets != gears
        && reading.sound("limits.gear_target", "car.gear_rpm_per_kmh")) {
      reading.atKey(
          Severity.ERROR,
          "gear_count",
          "limits.gear_target",
          "has "
              + targets
              + " gears but car.gear_rpm_per_kmh has "
              + gears
              + "; write one target for each gear");
    }
  }

  private void demand() {
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

  private void spring() {
    double cracks = settings.actuator().springCracksKpaGauge();
    if (Double.isNaN(cracks) || !reading.sound("limits.cutoff", "actuator.spring_cracks")) {
      return;
    }
    double springKpaAbs = cracks + UnitSettings.STANDARD_ATMOSPHERE_KPA;
    double cutoff = settings.limits().cutoffKpaAbs();
    if (!(cutoff > springKpaAbs)) {
      Quantity unit = reading.level("limits.cutoff");
      reading.atKey(
          Severity.ERROR,
          "cutoff_below_spring",
          "limits.cutoff",
          unit.words(cutoff)
              + " is not above "
              + unit.words(springKpaAbs)
              + ", where the spring begins to open the wastegate: the spring alone would trip it;"
              + " raise the limit or fit a softer spring");
    }
    if (target.rows().isEmpty() || !reading.sound("target.boost")) {
      return;
    }
    double ratio = (highest(target.table()) - UnitSettings.STANDARD_ATMOSPHERE_KPA) / cracks;
    if (ratio > 2.0) {
      reading.atKey(
          Severity.WARNING,
          "target_far_above_spring",
          "target.boost",
          "the highest target is "
              + Words.number(ratio)
              + " times the spring's gauge pressure; 1.3 to 1.7 times is easy, about 2 the most a"
              + " valve can hold. Fit a stiffer spring");
    }
  }

  private static double highest(Table2d table) {
    double highest = Double.NEGATIVE_INFINITY;
    for (double cell : table.values()) {
      highest = Math.max(highest, cell);
    }
    return highest;
  }

  private void dutyAgainstLimits() {
    if (baseDuty.rows().isEmpty()) {
      return;
    }
    boolean ceiling = reading.sound("limits.duty_ceiling_pct", "limits.duty_ceiling_rpm");
    Table2d table = baseDuty.table();
    for (int row = 0; row < table.rows().size(); row++) {
      for (int column = 0; column < table.columns().size(); column++) {
        double duty = table.cell(row, column);
        double most = settings.limits().dutyCeiling().at(table.columns().point(column));
        if (ceiling && duty > most) {
          reading.warning(
              "duty_above_ceiling",
              baseDuty.place(row, column),
              cellName("base duty table", row, column)
                  + ": "
                  + Quantity.SHARE.words(duty)
                  + " is above the duty ceiling "
                  + Quantity.SHARE.words(most)
                  + " at "
                  + Words.number(table.columns().point(column))
                  + " 1/min, which wins; lower it or raise limits.duty_ceiling_pct");
        } else if (duty > 0.0 && duty < settings.valve().windowLowDuty()) {
          reading.warning(
              "duty_below_window",
              baseDuty.place(row, column),
              cellName("base duty table", row, column)
                  + ": "
                  + Quantity.SHARE.words(duty)
                  + " is below the usable window, which begins at "
                  + Quantity.SHARE.words(settings.valve().windowLowDuty())
                  + ": the valve never vents there; write 0 or more than that");
        }
      }
    }
  }

  private void speeds() {
    double redline = settings.car().redlineRpm();
    if (reading.sound("car.redline_rpm", "limits.min_rpm")
        && !(settings.limits().minControlRpm() < redline)) {
      reading.atKey(
          Severity.ERROR,
          "min_rpm_above_redline",
          "limits.min_rpm",
          Words.number(settings.limits().minControlRpm())
              + " 1/min is not below the redline "
              + Words.number(redline)
              + " 1/min; lower it");
    }
  }

  private void watches() {
    AnalogSensor map = settings.sensors().channel(AnalogChannel.MAP);
    if (map != null && !map.frozenIsWatched()) {
      reading.atKey(
          Severity.NOTE,
          "map_frozen_not_watched",
          "sensors.map.noise",
          "the declared noise does not exceed one step of the converter, so a reading that"
              + " freezes in range is not detected; measure the noise of a steady reading and"
              + " write it here");
    }
  }
}
