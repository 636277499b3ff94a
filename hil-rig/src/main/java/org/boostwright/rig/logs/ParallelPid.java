package org.boostwright.rig.logs;

/**
 * Gains as the controller uses them: {@code C(s) = kp + ki/s + kd*s/(1 + filter*s)}.
 *
 * @param kp proportional gain, output per input
 * @param ki integral gain, output per input and second
 * @param kd derivative gain, output per input per second
 * @param filterSeconds time constant of the derivative's filter, s
 */
public record ParallelPid(double kp, double ki, double kd, double filterSeconds) {

  /**
   * The same law as a series one whose lead is followed by the filter: {@code kp = Kc(1 + (Td -
   * Tf)/Ti)}, {@code ki = Kc/Ti}, {@code kd = Kc(Td - Tf)(1 - Tf/Ti)}, by partial fractions.
   */
  public static ParallelPid of(Simc law, double filterSeconds) {
    double lead = Math.max(0.0, law.derivativeSeconds() - filterSeconds);
    return new ParallelPid(
        law.gain() * (1.0 + lead / law.integralSeconds()),
        law.gain() / law.integralSeconds(),
        law.gain() * lead * Math.max(0.0, 1.0 - filterSeconds / law.integralSeconds()),
        filterSeconds);
  }

  /** The same law with another derivative gain. */
  public ParallelPid withKd(double other) {
    return new ParallelPid(kp, ki, other, filterSeconds);
  }
}
