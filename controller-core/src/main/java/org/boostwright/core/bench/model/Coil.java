package org.boostwright.core.bench.model;

/**
 * The valve's coil as resistance and inductance: how long its current takes to die away through a
 * clamp, and how hot it gets.
 *
 * <p>Decay: {@code di/dt = (-Vc - R*i)/L}. Heating: {@code dT/dt = (P - (T - Tambient)/Rth)/Cth}
 * with {@code P = duty*V^2/R(T)} and copper's 0.393 % per kelvin (IEC 60028). Rth and Cth are
 * common practice for a valve of this size, no source.
 *
 * @param ohms resistance at 20 degC, ohm
 * @param henries inductance, H
 * @param volts supply, V
 */
public record Coil(double ohms, double henries, double volts) {
  /** Heating against still air, K/W: 6.5 W end about 65 K warmer. */
  public static final double KELVIN_PER_WATT = 10.0;

  /** Heat the coil and its frame take up, J/K. */
  public static final double JOULE_PER_KELVIN = 30.0;

  /** Copper's rise of resistance, 1/K at 20 degC. */
  public static final double PER_KELVIN = 0.00393;

  /** Insulation class B (IEC 60085), degC. */
  public static final double LIMIT_C = 130.0;

  /** Refuses what is no coil, NaN included. */
  public Coil {
    if (!(ohms > 0.0 && henries > 0.0 && volts > 0.0)) {
      throw new IllegalArgumentException(
          "a coil needs ohm, H and V above 0, not " + ohms + ", " + henries + ", " + volts);
    }
  }

  /**
   * Time for the current to fall to a share of its full value once the driver opens, s.
   *
   * @param clampVolts voltage the flyback path holds against the current: about 0.8 for a plain
   *     diode, a Zener's voltage plus 0.8 in series with a diode
   * @param share current that still holds the spool, over full current, 0 to 1
   */
  public double decaySeconds(double clampVolts, double share) {
    if (!(clampVolts >= 0.0 && share > 0.0 && share <= 1.0)) {
      throw new IllegalArgumentException("clamp " + clampVolts + " V, share " + share);
    }
    double full = volts / ohms;
    double tail = clampVolts / ohms;
    return henries / ohms * Math.log((full + tail) / (share * full + tail));
  }

  /** Heat at a duty and coil temperature, W. */
  public double watts(double dutyFraction, double coilC) {
    return dutyFraction * volts * volts / (ohms * (1.0 + PER_KELVIN * (coilC - 20.0)));
  }

  /** Temperature after a time at a duty, one explicit step, degC. */
  public double warmed(double coilC, double ambientC, double dutyFraction, double seconds) {
    double heat = watts(dutyFraction, coilC) - (coilC - ambientC) / KELVIN_PER_WATT;
    return coilC + heat * seconds / JOULE_PER_KELVIN;
  }

  /** Temperature the coil settles at when a duty is held for ever, degC. */
  public double settledC(double dutyFraction, double ambientC) {
    double cold = dutyFraction * volts * volts / ohms * KELVIN_PER_WATT;
    // T - Ta = cold/(1 + k*(T - 20)): a quadratic in the rise x = T - Ta.
    double a = 1.0 + PER_KELVIN * (ambientC - 20.0);
    double rise = (-a + Math.sqrt(a * a + 4.0 * PER_KELVIN * cold)) / (2.0 * PER_KELVIN);
    return ambientC + rise;
  }
}
