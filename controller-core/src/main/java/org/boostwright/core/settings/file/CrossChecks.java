package org.boostwright.core.settings.file;

import org.boostwright.core.settings.AnalogSensor;
import org.boostwright.core.settings.Settings;
import org.jspecify.annotations.Nullable;

/** Checks between keys of different tables, made when each could be read for itself. */
final class CrossChecks {
  /** The overboost limit stays this share of the calibrated span below the sensor's top. */
  static final double SENSOR_TOP_MARGIN = 0.10;

  private CrossChecks() {}

  /** Makes all of them. */
  static void run(Reading reading, Settings settings, TableReader target, TableReader baseDuty) {
    new SensorChecks(reading, settings).run();
    new LimitChecks(reading, settings, target).run();
    new TableChecks(reading, settings, target, baseDuty).run();
    new WireChecks(reading, settings).run();
    new WiringChecks(reading, settings).run();
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
}
