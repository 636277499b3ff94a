package org.boostwright.core.settings;

/**
 * Units of pressure that people use on a boost gauge.
 *
 * <p>Factors: 1 psi = 6.894757 kPa and 1 bar = 100 kPa (NIST Special Publication 811, 2008,
 * appendix B.8).
 */
public enum PressureUnit {
  KPA("kPa", 1.0),
  PSI("psi", 6.894757293168361),
  BAR("bar", 100.0);

  private final String label;
  private final double kpaPerUnit;

  PressureUnit(String label, double kpaPerUnit) {
    this.label = label;
    this.kpaPerUnit = kpaPerUnit;
  }

  /** As written in files and shown to people. */
  public String label() {
    return label;
  }

  /** kPa for a number in this unit. */
  public double toKpa(double number) {
    return number * kpaPerUnit;
  }

  /** Number in this unit for kPa. */
  public double fromKpa(double kpa) {
    return kpa / kpaPerUnit;
  }
}
