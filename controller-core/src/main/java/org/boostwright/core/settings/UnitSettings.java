package org.boostwright.core.settings;

/**
 * How pressures without a unit in their key are written and shown.
 *
 * @param pressure the unit
 * @param gauge true for gauge (against 101.325 kPa), false for absolute
 */
public record UnitSettings(PressureUnit pressure, boolean gauge) {
  /** Standard atmosphere, kPa: what gauge pressures in a settings file are counted from. */
  public static final double STANDARD_ATMOSPHERE_KPA = 101.325;

  /** kPa absolute, the default. */
  public static final UnitSettings KPA_ABSOLUTE = new UnitSettings(PressureUnit.KPA, false);

  /** Number in these units for a pressure in kPa absolute. */
  public double fromKpaAbs(double kpaAbs) {
    return pressure.fromKpa(gauge ? kpaAbs - STANDARD_ATMOSPHERE_KPA : kpaAbs);
  }

  /** Pressure in kPa absolute for a number in these units. */
  public double toKpaAbs(double number) {
    double kpa = pressure.toKpa(number);
    return gauge ? kpa + STANDARD_ATMOSPHERE_KPA : kpa;
  }

  /** The unit as always shown beside a number, for example {@code psi gauge}. */
  public String label() {
    return pressure.label() + (gauge ? " gauge" : " absolute");
  }
}
