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
import org.jspecify.annotations.Nullable;

/**
 * A test car to be changed in one place before it is built: change a field, then {@link #build}.
 */
public final class TestCar {
  public final @Nullable AnalogSensor[] channels = new @Nullable AnalogSensor[AnalogChannel.COUNT];
  public MapLocation mapLocation = MapLocation.INTAKE_MANIFOLD;
  public double lifeChangeKpa = 20.0;
  public double mapNoiseKpa = 0.3;
  public double assumedAmbientKpaAbs = 100.0;
  public double roadPulsesPerKm = 4000.0;
  public double[] gearRpmPerKmh = new double[0];
  public boolean guest;
  public double[] gearTargetKpaAbs = new double[0];
  public double lowBoostKpaAbs = 180.0;
  public double pressureRatioMax = 2.5;
  public Curve targetFactorOverIntakeC = Curve.constant(1.0);
  public double springOnlyIntakeC = 75.0;
  public Curve dutyCeiling = Curve.constant(1.0);
  public boolean engineCut = true;
  public boolean feedback = true;
  public double frequencyHz = 30.0;
  public SpoolSettings spool = new SpoolSettings(false, 0.3, 3.0, 10.0);
  public OptionalWires wires = new OptionalWires(false, false, false, false, false);

  /** MAP and throttle only, nothing optional wired. */
  public TestCar() {
    channels[AnalogChannel.MAP.ordinal()] = TestSettings.mapSensor();
    channels[AnalogChannel.THROTTLE.ordinal()] = TestSettings.throttleSensor();
  }

  /** Fits a sensor. */
  public TestCar fit(AnalogChannel channel, AnalogSensor sensor) {
    channels[channel.ordinal()] = sensor;
    return this;
  }

  /**
   * Fits a sensor of 0.5 V = {@code low} to 4.5 V = {@code high}, without noise or rate watch.
   *
   * @param refreshMillis time between fresh samples
   */
  public TestCar fit(AnalogChannel channel, double low, double high, double refreshMillis) {
    return fit(
        channel,
        new AnalogSensor(
            new Curve(new Axis(0.5, 4.5), low, high),
            0.2,
            4.8,
            187.5e-6,
            0.0,
            refreshMillis,
            Double.POSITIVE_INFINITY));
  }

  /** Settings as the fields say: target 180 kPa, base duty 40 %, limit 200 kPa. */
  public Settings build() {
    return new Settings(
        new CarSettings("test car", 4, 2.0, 6800.0, 500.0, roadPulsesPerKm, gearRpmPerKmh),
        UnitSettings.KPA_ABSOLUTE,
        new SensorSettings(channels, mapLocation, lifeChangeKpa, mapNoiseKpa, assumedAmbientKpaAbs),
        new ValveSettings(frequencyHz, 0.1, 0.8, new Curve(new Axis(0.0, 1.0), 0.1, 0.8), 30.0),
        Table2d.constant(180.0),
        Table2d.constant(0.4),
        new LimitSettings(
            TestSettings.LIMIT_KPA,
            pressureRatioMax,
            dutyCeiling,
            0.1,
            targetFactorOverIntakeC,
            springOnlyIntakeC,
            gearTargetKpaAbs,
            lowBoostKpaAbs,
            1500.0,
            30.0,
            engineCut,
            guest),
        new FeedbackSettings(
            feedback,
            Curve.constant(0.01),
            Curve.constant(0.01),
            Curve.constant(0.0),
            0.5,
            0.03,
            10.0),
        spool,
        wires);
  }
}
