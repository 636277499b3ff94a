package org.boostwright.core.settings;

import org.boostwright.core.table.Curve;

/**
 * One analogue sensor: how volts become a value, and what the monitor may expect of it.
 *
 * @param calibration value over volts at the converter, piecewise linear, strictly monotone
 * @param validLowVolts below this the wire counts as open or shorted, V
 * @param validHighVolts above this the wire counts as shorted to supply, V
 * @param stepVolts smallest step of the source, V: one converter code, or the declared coarser
 *     resolution of a recorded signal
 * @param noiseVolts declared noise floor, standard deviation, V; 0 when unknown. A source whose
 *     noise does not exceed one step, or that is slower than the control tick, is exempt from the
 *     frozen watch
 * @param refreshMillis time between fresh samples, ms; the stale watch allows three of them
 * @param maxRatePerSecond fastest change of the value that is possible without throttle movement,
 *     value units per second; infinite when not watched
 */
public record AnalogSensor(
    Curve calibration,
    double validLowVolts,
    double validHighVolts,
    double stepVolts,
    double noiseVolts,
    double refreshMillis,
    double maxRatePerSecond) {

  /** Slowest refresh at which identical samples for 50 ms are too many to be chance, ms. */
  public static final double FROZEN_REFRESH_MILLIS = 5.0;

  /** True when identical samples for 50 ms prove that the reading is frozen. */
  public boolean frozenIsWatched() {
    return noiseVolts > stepVolts && refreshMillis <= FROZEN_REFRESH_MILLIS;
  }
}
