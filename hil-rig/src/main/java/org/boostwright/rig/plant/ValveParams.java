package org.boostwright.rig.plant;

/**
 * A three-port valve: at rest it joins supply and actuator, energised it joins actuator and vent.
 *
 * @param supplyConductance sonic conductance of the supply path, m3/(s Pa)
 * @param ventConductance sonic conductance of the vent path, m3/(s Pa)
 * @param criticalRatio ISO 6358 critical pressure ratio b, 0.2 to 0.5
 * @param onDelaySeconds from pull-in current to the spool reaching its energised end, s
 * @param offDelaySeconds from release current to the spool back at rest, s
 * @param coil coil and clamp
 */
public record ValveParams(
    double supplyConductance,
    double ventConductance,
    double criticalRatio,
    double onDelaySeconds,
    double offDelaySeconds,
    CoilParams coil) {

  /** Assumption A-01: 0.9e-8 m3/(s Pa) both ways, b = 0.3, 3.5 ms on, 7.5 ms off. */
  public static final ValveParams DEFAULT =
      new ValveParams(0.9e-8, 0.9e-8, 0.3, 3.5e-3, 7.5e-3, CoilParams.TIMED);

  /** The same valve with other conductances. */
  public ValveParams withConductances(double supply, double vent) {
    return new ValveParams(supply, vent, criticalRatio, onDelaySeconds, offDelaySeconds, coil);
  }

  /** The same valve with other spool delays. */
  public ValveParams withDelays(double onSeconds, double offSeconds) {
    return new ValveParams(
        supplyConductance, ventConductance, criticalRatio, onSeconds, offSeconds, coil);
  }

  /** The same valve with another critical ratio. */
  public ValveParams withCriticalRatio(double b) {
    return new ValveParams(
        supplyConductance, ventConductance, b, onDelaySeconds, offDelaySeconds, coil);
  }

  /** The same valve with another coil. */
  public ValveParams withCoil(CoilParams other) {
    return new ValveParams(
        supplyConductance, ventConductance, criticalRatio, onDelaySeconds, offDelaySeconds, other);
  }
}
