package org.boostwright.rig.logs.identify;

/**
 * An answer of two lags with dead time: {@code k*exp(-dead*s)/((tau1*s + 1)(tau2*s + 1))}.
 *
 * @param gain k, output per input
 * @param tau1Seconds larger lag, s
 * @param tau2Seconds smaller lag, s
 * @param deadSeconds dead time, s
 */
public record Sopdt(double gain, double tau1Seconds, double tau2Seconds, double deadSeconds) {

  /** Answer as in {@link Fopdt#answer}; the second lag sees the first one's mean of each sample. */
  double[] answer(double[] seconds, double[] input) {
    double[] first = new Fopdt(gain, tau1Seconds, deadSeconds).answer(seconds, input);
    double[] output = new double[first.length];
    for (int i = 1; i < first.length; i++) {
      double share = -Math.expm1(-(seconds[i] - seconds[i - 1]) / tau2Seconds);
      output[i] = output[i - 1] + share * (0.5 * (first[i - 1] + first[i]) - output[i - 1]);
    }
    return output;
  }
}
