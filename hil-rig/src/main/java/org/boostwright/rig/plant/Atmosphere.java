package org.boostwright.rig.plant;

/**
 * The air around the car.
 *
 * @param kpaAbs pressure, kPa absolute
 * @param kelvin temperature, K
 */
public record Atmosphere(double kpaAbs, double kelvin) {
  /** Ambient of the published engine and of the reference files: 101.3 kPa, 293 K. */
  public static final Atmosphere REFERENCE = new Atmosphere(101.3, 293.0);

  /**
   * Pressure of the standard atmosphere at a geopotential altitude of -500 to 11,000 m, kPa: {@code
   * 101.325*(1 - 0.0065*H/288.15)^5.25588} (ISO 2533:1975).
   */
  public static double standardKpaAbs(double altitudeM) {
    return 101.325 * Math.pow(1.0 - 0.0065 * altitudeM / 288.15, 5.25588);
  }

  /** Standard pressure at an altitude (m) with air of its own temperature (degC). */
  public static Atmosphere at(double altitudeM, double airC) {
    return new Atmosphere(standardKpaAbs(altitudeM), airC + 273.15);
  }
}
