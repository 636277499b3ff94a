package org.boostwright.rig.plant;

import org.boostwright.core.table.Axis;
import org.boostwright.core.table.Curve;

/**
 * The project car's sensors as transfer functions, in one place for the virtual car, the tests and
 * the example settings.
 *
 * <p>Parts of no particular make (own assumptions): pressure 0.5 V = 20 kPa to 4.5 V = 300 kPa
 * absolute, throttle 0.5 V = 0 % to 4.5 V = 100 %, thermistors of 2.057 kohm at 25 degC and B =
 * 3500 K under 2.2 kohm to 5 V, supply voltage through a divider by five.
 */
public final class ProjectCar {
  /** Supply of the ratiometric sensors, V. */
  public static final double SENSOR_SUPPLY_VOLTS = 5.0;

  /** Engine-speed pulses per crankshaft revolution. */
  public static final double TACH_PULSES_PER_REV = 2.0;

  /** Road-speed pulses per kilometre. */
  public static final double ROAD_PULSES_PER_KM = 4000.0;

  /** Lowest and highest output of the pressure sensor whatever the pressure, V. */
  public static final double MAP_SATURATED_LOW_VOLTS = 0.25;

  public static final double MAP_SATURATED_HIGH_VOLTS = 4.75;

  private static final double LOW_VOLTS = 0.5;
  private static final double HIGH_VOLTS = 4.5;
  private static final double MAP_LOW_KPA = 20.0;
  private static final double MAP_HIGH_KPA = 300.0;
  private static final double SUPPLY_DIVIDER = 0.2;
  private static final double THERMISTOR_OHMS_25C = 2057.0;
  private static final double THERMISTOR_B_KELVIN = 3500.0;
  private static final double PULL_UP_OHMS = 2200.0;

  private ProjectCar() {}

  /** Volts of the pressure sensor (MAP, and barometer where fitted), before saturation. */
  public static double mapVolts(double kpaAbs) {
    return LOW_VOLTS
        + (kpaAbs - MAP_LOW_KPA) * (HIGH_VOLTS - LOW_VOLTS) / (MAP_HIGH_KPA - MAP_LOW_KPA);
  }

  /** Volts per kPa of the pressure sensor. */
  public static double mapVoltsPerKpa() {
    return (HIGH_VOLTS - LOW_VOLTS) / (MAP_HIGH_KPA - MAP_LOW_KPA);
  }

  /** Volts of the throttle (or pedal) sensor at 0 to 100 percent. */
  public static double throttleVolts(double pct) {
    return LOW_VOLTS + pct * (HIGH_VOLTS - LOW_VOLTS) / 100.0;
  }

  /** Thermistor resistance, ohm: {@code R25*exp(B*(1/T - 1/298.15))}. */
  public static double thermistorOhms(double celsius) {
    return THERMISTOR_OHMS_25C
        * Math.exp(THERMISTOR_B_KELVIN * (1.0 / (celsius + 273.15) - 1.0 / 298.15));
  }

  /** Volts of a thermistor under its pull-up. */
  public static double temperatureVolts(double celsius) {
    double ohms = thermistorOhms(celsius);
    return SENSOR_SUPPLY_VOLTS * ohms / (ohms + PULL_UP_OHMS);
  }

  /** Volts of the supply divider. */
  public static double supplyVolts(double batteryVolts) {
    return batteryVolts * SUPPLY_DIVIDER;
  }

  /** Calibration of the pressure sensor, kPa absolute over volts. */
  public static Curve mapCurve() {
    return new Curve(new Axis(LOW_VOLTS, HIGH_VOLTS), MAP_LOW_KPA, MAP_HIGH_KPA);
  }

  /** Calibration of the throttle sensor, percent over volts. */
  public static Curve throttleCurve() {
    return new Curve(new Axis(LOW_VOLTS, HIGH_VOLTS), 0.0, 100.0);
  }

  /** Calibration of a thermistor, degC over volts, at 120, 100 ... -20 degC. */
  public static Curve temperatureCurve() {
    double[] celsius = {120, 100, 80, 60, 40, 20, 0, -20};
    double[] volts = new double[celsius.length];
    for (int i = 0; i < volts.length; i++) {
      volts[i] = temperatureVolts(celsius[i]);
    }
    return new Curve(new Axis(volts), celsius);
  }

  /** Calibration of the supply divider, V over volts. */
  public static Curve supplyCurve() {
    return new Curve(new Axis(0.0, SENSOR_SUPPLY_VOLTS), 0.0, SENSOR_SUPPLY_VOLTS / SUPPLY_DIVIDER);
  }
}
