package org.boostwright.rig.logs.identify;

import org.boostwright.core.settings.Settings;
import org.boostwright.core.table.Axis;
import org.boostwright.core.table.Curve;
import org.boostwright.core.table.Table2d;
import org.boostwright.rig.plant.Atmosphere;
import org.boostwright.rig.plant.PlantParams;
import org.boostwright.rig.scenario.SettledPoint;

/**
 * How many kPa one unit of duty is worth over engine speed, at full throttle around the tabled
 * duty.
 *
 * @param kpaPerDuty settled gain over engine speed, kPa per unit of duty (1 = 100 %)
 * @param doubt how far the true gain may be off, as a share
 */
public record LocalGain(Curve kpaPerDuty, double doubt) {
  private static final double STEP = 0.04;
  private static final double FULL_THROTTLE_PCT = 100.0;
  private static final double LOWEST_RPM = 2400.0;
  private static final double SMALLEST = 20.0;
  private static final double DOUBT = 0.2;

  /** Measured on a car by two settled points at each column of the base duty table. */
  public static LocalGain of(PlantParams car, Atmosphere air, Settings settings) {
    SettledPoint point =
        new SettledPoint(car.withPwmHz(settings.valve().frequencyHz()), air);
    Table2d base = settings.baseDuty();
    int n = base.columns().size();
    double[] gains = new double[n];
    double low = settings.valve().windowLowDuty() + STEP;
    double high = settings.valve().windowHighDuty() - STEP;
    for (int i = n - 1; i >= 0; i--) {
      double rpm = base.columns().point(i);
      if (rpm < LOWEST_RPM && i + 1 < n) {
        gains[i] = gains[i + 1]; // the turbo hardly answers down there
        continue;
      }
      double duty = Math.max(low, Math.min(high, base.at(FULL_THROTTLE_PCT, rpm)));
      double rise =
          point.mapKpaAbs(rpm, FULL_THROTTLE_PCT, duty + STEP)
              - point.mapKpaAbs(rpm, FULL_THROTTLE_PCT, duty - STEP);
      gains[i] = Math.max(SMALLEST, rise / (2.0 * STEP));
    }
    return new LocalGain(new Curve(new Axis(base.columns().points()), gains), DOUBT);
  }

  /** Gain at an engine speed, kPa per unit of duty. */
  public double at(double rpm) {
    return kpaPerDuty.at(rpm);
  }

  /** Highest gain that must be reckoned with, kPa per unit of duty. */
  public double highestAt(double rpm) {
    return (1.0 + doubt) * kpaPerDuty.at(rpm);
  }
}
