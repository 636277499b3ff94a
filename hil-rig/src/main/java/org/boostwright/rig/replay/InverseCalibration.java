package org.boostwright.rig.replay;

import org.boostwright.core.settings.AnalogSensor;
import org.boostwright.core.table.Curve;

/**
 * Volts for a value: the calibration of a sensor read backwards, clipped to what the sensor can
 * show.
 */
public final class InverseCalibration {
  private final double[] values;
  private final double[] volts;
  private final double lowVolts;
  private final double highVolts;

  /** Reads the calibration of a sensor backwards. */
  public InverseCalibration(AnalogSensor sensor) {
    Curve curve = sensor.calibration();
    int n = curve.axis().size();
    values = new double[n];
    volts = new double[n];
    boolean rising = curve.value(n - 1) >= curve.value(0);
    for (int i = 0; i < n; i++) {
      int from = rising ? i : n - 1 - i;
      values[i] = curve.value(from);
      volts[i] = curve.axis().point(from);
    }
    lowVolts = sensor.validLowVolts();
    highVolts = sensor.validHighVolts();
  }

  /** True when the sensor can show this value. */
  boolean covers(double value) {
    return value >= values[0] && value <= values[values.length - 1];
  }

  /** Volts that the calibration turns into the value; at the end of its range outside it. */
  public double volts(double value) {
    int i = 0;
    while (i < values.length - 2 && value >= values[i + 1]) {
      i++;
    }
    double found;
    if (values.length == 1 || !(value > values[0])) {
      found = volts[0];
    } else if (value >= values[values.length - 1]) {
      found = volts[volts.length - 1];
    } else {
      double f = (value - values[i]) / (values[i + 1] - values[i]);
      found = volts[i] + f * (volts[i + 1] - volts[i]);
    }
    return found < lowVolts ? lowVolts : Math.min(found, highVolts);
  }

  /** Largest change of volts that a change of the value by {@code step} makes anywhere. */
  double voltsPerStep(double step) {
    double steepest = 0.0;
    for (int i = 0; i + 1 < values.length; i++) {
      double slope = Math.abs((volts[i + 1] - volts[i]) / (values[i + 1] - values[i]));
      steepest = Math.max(steepest, slope);
    }
    return steepest * step;
  }
}
