package org.boostwright.core;

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

/** Settings of a small car for unit tests; the rig's tests use the shipped example file. */
public final class TestSettings {
  /** Overboost limit of {@link #car()}, kPa absolute. */
  public static final double LIMIT_KPA = 200.0;

  private TestSettings() {}

  /** MAP 0.5 V = 20, 4.5 V = 300 kPa absolute. */
  public static AnalogSensor mapSensor() {
    return new AnalogSensor(
        new Curve(new Axis(0.5, 4.5), 20.0, 300.0), 0.2, 4.8, 187.5e-6, 4.3e-3, 5.0, 3000.0);
  }

  /** Throttle 0.5 V = 0, 4.5 V = 100 %. */
  public static AnalogSensor throttleSensor() {
    return new AnalogSensor(
        new Curve(new Axis(0.5, 4.5), 0.0, 100.0),
        0.2,
        4.8,
        187.5e-6,
        0.0,
        5.0,
        Double.POSITIVE_INFINITY);
  }

  /** Volts for a pressure on {@link #mapSensor()}. */
  public static double mapVolts(double kpaAbs) {
    return 0.5 + 4.0 * (kpaAbs - 20.0) / 280.0;
  }

  /** Volts for a throttle on {@link #throttleSensor()}. */
  public static double throttleVolts(double pct) {
    return 0.5 + 4.0 * pct / 100.0;
  }

  /** MAP and throttle only, nothing optional wired, target 180 kPa, base duty 40 %. */
  public static Settings car() {
    return car(new OptionalWires(false, false, false, false, false), true);
  }

  /** Like {@link #car()} with chosen wires and feedback. */
  public static Settings car(OptionalWires wires, boolean feedback) {
    AnalogSensor[] channels = new AnalogSensor[AnalogChannel.COUNT];
    channels[AnalogChannel.MAP.ordinal()] = mapSensor();
    channels[AnalogChannel.THROTTLE.ordinal()] = throttleSensor();
    return new Settings(
        new CarSettings("test car", 4, 2.0, 6800.0, 500.0, 4000.0, new double[0]),
        UnitSettings.KPA_ABSOLUTE,
        new SensorSettings(channels, MapLocation.INTAKE_MANIFOLD, 20.0, 0.3, 100.0),
        new ValveSettings(30.0, 0.1, 0.8, new Curve(new Axis(0.0, 1.0), 0.1, 0.8), 30.0),
        Table2d.constant(180.0),
        Table2d.constant(0.4),
        new LimitSettings(
            LIMIT_KPA,
            2.5,
            Curve.constant(1.0),
            0.1,
            Curve.constant(1.0),
            75.0,
            new double[0],
            180.0,
            1500.0,
            30.0,
            true),
        new FeedbackSettings(
            feedback,
            Curve.constant(0.01),
            Curve.constant(0.01),
            Curve.constant(0.0),
            0.5,
            0.03,
            10.0),
        new SpoolSettings(false, 0.3, 3.0, 10.0),
        wires);
  }
}
