package org.boostwright.rig.replay;

import org.boostwright.core.AnalogChannel;
import org.boostwright.core.settings.AnalogSensor;
import org.boostwright.core.settings.CarSettings;
import org.boostwright.core.settings.FeedbackSettings;
import org.boostwright.core.settings.LimitSettings;
import org.boostwright.core.settings.MapLocation;
import org.boostwright.core.settings.OptionalWires;
import org.boostwright.core.settings.SensorSettings;
import org.boostwright.core.settings.Settings;
import org.boostwright.core.settings.SpoolSettings;
import org.boostwright.core.settings.UnitSettings;
import org.boostwright.core.settings.ValveSettings;
import org.boostwright.core.table.Axis;
import org.boostwright.core.table.Curve;
import org.boostwright.core.table.Table2d;

/** A car whose sensors are all fitted, finer and faster than any log of the tests. */
final class ReplayCar {
  /** Top of the pressure sensor, kPa absolute. */
  static final double MAP_TOP_KPA = 300.0;

  private ReplayCar() {}

  static Settings settings() {
    return withTarget(180.0);
  }

  /** The same car with another target at full throttle, kPa absolute. */
  static Settings withTarget(double fullThrottleKpaAbs) {
    AnalogSensor[] channels = new AnalogSensor[AnalogChannel.COUNT];
    channels[AnalogChannel.MAP.ordinal()] =
        sensor(new Curve(new Axis(0.5, 4.5), 20.0, MAP_TOP_KPA), 4.3e-3, 3000.0);
    channels[AnalogChannel.THROTTLE.ordinal()] = percent();
    channels[AnalogChannel.PEDAL.ordinal()] = percent();
    // Falling, as a thermistor with a pull-up resistor: NTC curve shape, round numbers.
    Curve thermistor = new Curve(new Axis(0.3, 1.0, 2.5, 4.0, 4.7), 150.0, 90.0, 35.0, 0.0, -40.0);
    channels[AnalogChannel.INTAKE_AIR.ordinal()] =
        sensor(thermistor, 0.0, Double.POSITIVE_INFINITY);
    channels[AnalogChannel.COOLANT.ordinal()] = sensor(thermistor, 0.0, Double.POSITIVE_INFINITY);
    channels[AnalogChannel.SUPPLY.ordinal()] =
        sensor(new Curve(new Axis(0.0, 5.0), 0.0, 25.0), 0.0, Double.POSITIVE_INFINITY);
    Axis rpm = new Axis(1000.0, 2000.0, 3000.0, 4000.0);
    Axis throttle = new Axis(0.0, 30.0, 60.0, 100.0);
    return new Settings(
        new CarSettings("replay car", 4, 2.0, 6000.0, 500.0, 4000.0, new double[0]),
        UnitSettings.KPA_ABSOLUTE,
        new SensorSettings(channels, MapLocation.INTAKE_MANIFOLD, 20.0, 0.3, Double.NaN),
        new ValveSettings(30.0, 0.1, 0.8, new Curve(new Axis(0.0, 1.0), 0.1, 0.8), 30.0),
        table(throttle, rpm, 100.0, 120.0, 150.0, fullThrottleKpaAbs),
        table(throttle, rpm, 0.0, 0.2, 0.3, 0.4),
        new LimitSettings(
            250.0,
            2.5,
            Curve.constant(0.9),
            0.1,
            Curve.constant(1.0),
            75.0,
            new double[0],
            180.0,
            1200.0,
            25.0,
            false),
        new FeedbackSettings(
            true,
            Curve.constant(0.002),
            Curve.constant(0.002),
            Curve.constant(0.0),
            0.5,
            0.03,
            10.0),
        new SpoolSettings(false, 0.3, 3.0, 10.0),
        new OptionalWires(false, false, false, false, false));
  }

  private static AnalogSensor percent() {
    return sensor(new Curve(new Axis(0.5, 4.5), 0.0, 100.0), 0.0, Double.POSITIVE_INFINITY);
  }

  private static AnalogSensor sensor(Curve calibration, double noiseVolts, double maxRate) {
    return new AnalogSensor(calibration, 0.15, 4.85, 187.5e-6, noiseVolts, 5.0, maxRate);
  }

  /** One value per row of the table, the same at every engine speed. */
  private static Table2d table(Axis rows, Axis columns, double... perRow) {
    double[] values = new double[rows.size() * columns.size()];
    for (int i = 0; i < values.length; i++) {
      values[i] = perRow[i / columns.size()];
    }
    return new Table2d(rows, columns, values);
  }
}
