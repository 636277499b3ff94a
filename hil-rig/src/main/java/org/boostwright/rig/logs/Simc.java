package org.boostwright.rig.logs;

/**
 * SIMC gains for a process {@code k*exp(-theta*s)/((tau1*s+1)(tau2*s+1))}.
 *
 * <p>{@code Kc = tau1/(k(tc+theta))}, {@code Ti = min(tau1, 4(tc+theta))}, {@code Td = tau2}, in
 * the series form {@code Kc(1+1/(Ti s))(1+Td s)}. Source: Skogestad, <i>Simple analytic rules for
 * model reduction and PID controller tuning</i>, J. Process Control 13, 2003, 291-309.
 *
 * @param gain Kc, output units per input unit
 * @param integralSeconds Ti, s
 * @param derivativeSeconds Td, s; 0 without
 */
public record Simc(double gain, double integralSeconds, double derivativeSeconds) {

  /**
   * Gains for the closed-loop time constant the user chose.
   *
   * @param processGain k, not 0
   * @param tau1Seconds larger lag, s
   * @param tau2Seconds smaller lag, s; 0 for a first-order process
   * @param deadSeconds effective dead time, s
   * @param closedLoopSeconds wanted time constant; equal to the dead time for the brisk setting
   * @throws IllegalArgumentException when a time is negative or the gain is 0
   */
  public static Simc tune(
      double processGain,
      double tau1Seconds,
      double tau2Seconds,
      double deadSeconds,
      double closedLoopSeconds) {
    if (!(Math.abs(processGain) > 0.0
        && tau1Seconds > 0.0
        && tau2Seconds >= 0.0
        && closedLoopSeconds + deadSeconds > 0.0)) {
      throw new IllegalArgumentException("SIMC needs a gain that is not 0 and positive times");
    }
    double sum = closedLoopSeconds + deadSeconds;
    return new Simc(
        tau1Seconds / (processGain * sum), Math.min(tau1Seconds, 4.0 * sum), tau2Seconds);
  }
}
