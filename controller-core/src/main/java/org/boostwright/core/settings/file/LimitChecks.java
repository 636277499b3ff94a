package org.boostwright.core.settings.file;

import org.boostwright.core.AnalogChannel;
import org.boostwright.core.settings.LimitSettings;
import org.boostwright.core.settings.Settings;
import org.boostwright.core.settings.UnitSettings;

/** Do the limits fit the sensor, the spring, the gears and one another? */
final class LimitChecks {
  private final Reading reading;
  private final Settings settings;
  private final LimitSettings limits;
  private final TableReader target;

  LimitChecks(Reading reading, Settings settings, TableReader target) {
    this.reading = reading;
    this.settings = settings;
    this.limits = settings.limits();
    this.target = target;
  }

  void run() {
    sensorTop();
    below("limits.low_boost", "", limits.lowBoostKpaAbs());
    for (int gear = 0; gear < limits.gearTargets(); gear++) {
      below("limits.gear_target", "gear " + (gear + 1) + ", ", limits.gearTargetKpaAbs(gear));
    }
    gearCount();
    spring();
    speeds();
  }

  private void sensorTop() {
    double highest = CrossChecks.highestCutoffKpaAbs(settings.sensors().channel(AnalogChannel.MAP));
    if (reading.sound("limits.cutoff", "sensors.map.pressure")
        && !(limits.cutoffKpaAbs() <= highest)) {
      Quantity unit = reading.level("limits.cutoff");
      reading.atKey(
          Severity.ERROR,
          "cutoff_above_sensor",
          "limits.cutoff",
          unit.words(limits.cutoffKpaAbs())
              + " is above "
              + unit.words(highest)
              + ", the top of the pressure sensor less 10 % of its span; lower the limit or fit a"
              + " sensor that reads higher");
    }
  }

  private void below(String key, String which, double level) {
    if (reading.sound("limits.cutoff", key) && !(level < limits.cutoffKpaAbs())) {
      Quantity unit = reading.level(key);
      reading.atKey(
          Severity.ERROR,
          "level_above_cutoff",
          key,
          which
              + unit.words(level)
              + " is not below the overboost limit "
              + unit.words(limits.cutoffKpaAbs())
              + "; lower it or raise "
              + reading.written("limits.cutoff"));
    }
  }

  private void gearCount() {
    int gears = settings.car().gears();
    int targets = limits.gearTargets();
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
              + "; write one target for each gear, or leave this out");
    }
  }

  private void spring() {
    double cracks = settings.actuator().springCracksKpaGauge();
    if (Double.isNaN(cracks) || !reading.sound("limits.cutoff", "actuator.spring_cracks")) {
      return;
    }
    double springKpaAbs = cracks + UnitSettings.STANDARD_ATMOSPHERE_KPA;
    if (!(limits.cutoffKpaAbs() > springKpaAbs)) {
      Quantity unit = reading.level("limits.cutoff");
      reading.atKey(
          Severity.ERROR,
          "cutoff_below_spring",
          "limits.cutoff",
          unit.words(limits.cutoffKpaAbs())
              + " is not above "
              + unit.words(springKpaAbs)
              + ", where the spring begins to open the wastegate: the spring alone would trip it;"
              + " raise the limit or fit a softer spring");
    }
    if (target.rows().isEmpty() || !reading.sound("target.boost")) {
      return;
    }
    double ratio =
        (TableChecks.highest(target.table()) - UnitSettings.STANDARD_ATMOSPHERE_KPA) / cracks;
    if (ratio > 2.0) {
      reading.atKey(
          Severity.WARNING,
          "target_far_above_spring",
          "target.boost",
          "the highest target is "
              + Words.number(ratio)
              + " times the spring's gauge pressure; 1.3 to 1.7 times is easy, about 2 the most a"
              + " valve can hold; fit a stiffer spring");
    }
  }

  private void speeds() {
    double redline = settings.car().redlineRpm();
    double running = settings.car().idleRpm();
    double lowest = limits.minControlRpm();
    if (reading.sound("car.redline_rpm", "limits.min_rpm", "car.running_above_rpm")
        && !(lowest < redline && lowest > running)) {
      reading.atKey(
          Severity.ERROR,
          "min_rpm_range",
          "limits.min_rpm",
          Words.number(lowest)
              + " 1/min must lie between car.running_above_rpm, "
              + Words.number(running)
              + " 1/min, and car.redline_rpm, "
              + Words.number(redline)
              + " 1/min; correct it");
    }
  }
}
