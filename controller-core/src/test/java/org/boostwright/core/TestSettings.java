package org.boostwright.core;

import org.boostwright.core.settings.AnalogSensor;
import org.boostwright.core.settings.OptionalWires;
import org.boostwright.core.settings.Settings;
import org.boostwright.core.table.Axis;
import org.boostwright.core.table.Curve;

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
    TestCar car = new TestCar();
    car.wires = wires;
    car.feedback = feedback;
    return car.build();
  }
}
