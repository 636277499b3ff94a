package org.boostwright.rig.plant;

/**
 * Coil of the valve and the clamp across it: {@code di/dt = (V - R*i)/L}.
 *
 * <p>The current rises towards V/R while driven and falls against the clamp voltage afterwards. The
 * spool begins to travel when the current passes {@code pullInAmps} and begins to return when it
 * falls below {@code releaseAmps}; a soft clamp therefore makes the valve slow to release.
 *
 * @param ohms resistance, ohm
 * @param henries inductance, H
 * @param clampVolts voltage across the coil while the current decays, V: 0.8 for a plain diode
 * @param pullInAmps current that moves the spool, A; 0 = the spool delays count from the edge
 * @param releaseAmps current below which it returns, A; infinite = the delays count from the edge
 */
public record CoilParams(
    double ohms, double henries, double clampVolts, double pullInAmps, double releaseAmps) {

  /** 30 ohm, 100 mH, 24 V clamp, and spool delays that already contain the electrical part. */
  public static final CoilParams TIMED =
      new CoilParams(30.0, 0.1, 24.0, 0.0, Double.POSITIVE_INFINITY);

  /** The same coil with another clamp. */
  public CoilParams withClampVolts(double volts) {
    return new CoilParams(ohms, henries, volts, pullInAmps, releaseAmps);
  }

  /** The same coil with currents that decide about the spool. */
  public CoilParams withThresholds(double pullIn, double release) {
    return new CoilParams(ohms, henries, clampVolts, pullIn, release);
  }

  /** Time constant L/R, s. */
  public double timeConstantSeconds() {
    return henries / ohms;
  }
}
