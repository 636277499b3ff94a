package org.boostwright.rig.plant;

/**
 * Hose and actuator chamber as one volume: {@code dp/dt = n*R*T/V*(m_in - m_out) - n*p*dV/dt/V}.
 *
 * @param volumeM3 volume at zero lift, hose included, m3
 * @param polytropicExponent n: 1 isothermal to 1.4 adiabatic
 * @param gasKelvin temperature of the gas in hose and chamber, K
 */
public record ChamberParams(double volumeM3, double polytropicExponent, double gasKelvin) {
  /** Gas constant of dry air, J/(kg K) (ISO 2533:1975). */
  public static final double GAS_CONSTANT = 287.05287;

  /** Volume of a hose of 4 mm bore, m3 per metre. */
  public static final double HOSE_M3_PER_M = Math.PI / 4 * 0.004 * 0.004;

  /** Assumption A-01: 60 cm3, isothermal at 293.15 K. */
  public static final ChamberParams DEFAULT = new ChamberParams(60e-6, 1.0, 293.15);

  /** The same chamber with another volume. */
  public ChamberParams withVolume(double m3) {
    return new ChamberParams(m3, polytropicExponent, gasKelvin);
  }

  /** The same chamber with so much more 4 mm hose, m. */
  public ChamberParams withMoreHose(double metres) {
    return withVolume(volumeM3 + metres * HOSE_M3_PER_M);
  }

  /** The same chamber with another polytropic exponent. */
  public ChamberParams withPolytropicExponent(double n) {
    return new ChamberParams(volumeM3, n, gasKelvin);
  }

  /** The same chamber at another temperature. */
  public ChamberParams withGasKelvin(double kelvin) {
    return new ChamberParams(volumeM3, polytropicExponent, kelvin);
  }
}
