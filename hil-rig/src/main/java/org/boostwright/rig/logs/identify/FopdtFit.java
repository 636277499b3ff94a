package org.boostwright.rig.logs.identify;

/** First-order answers with dead time from recorded steps. */
public final class FopdtFit {
  private static final double LOW_CROSSING = 0.283;
  private static final double HIGH_CROSSING = 0.632;
  private static final double TAU_FACTOR = 1.5;
  private static final double SHORTEST_TAU_SECONDS = 1e-3;
  private static final double FIRST_SHARE = 0.9;
  private static final double SECOND_SHARE = 0.5;

  private FopdtFit() {}

  /**
   * Two-point method for one step at the first time: {@code tau = 1.5*(t63.2 - t28.3)}, {@code dead
   * = t63.2 - tau} (textbook rule, from memory: Smith and Corripio, <i>Principles and Practice of
   * Automatic Process Control</i>).
   *
   * @param seconds rising times from the step on, s
   * @param output output, deviation from where it was before
   * @param step height of the input's step
   * @param end output it settles at
   */
  public static Fopdt twoPoint(double[] seconds, double[] output, double step, double end) {
    double low = crossing(seconds, output, LOW_CROSSING * end);
    double high = crossing(seconds, output, HIGH_CROSSING * end);
    double tau = TAU_FACTOR * (high - low);
    return new Fopdt(end / step, tau, high - tau - seconds[0]);
  }

  private static double crossing(double[] seconds, double[] output, double level) {
    double sign = Math.signum(level);
    for (int i = 1; i < output.length; i++) {
      if (sign * output[i] >= sign * level) {
        double f = (level - output[i - 1]) / (output[i] - output[i - 1]);
        return seconds[i - 1] + f * (seconds[i] - seconds[i - 1]);
      }
    }
    return Double.NaN;
  }

  /**
   * Least squares on any input, gain, time constant, dead time and the output's rest level together;
   * 95 % intervals from the linearised covariance (Seber and Wild, <i>Nonlinear Regression</i>,
   * Wiley 1989, section 5.1).
   *
   * @param seconds rising times, s
   * @param input input from each time on, deviation from rest
   * @param output measured output
   * @param start where to begin, such as the two-point model
   */
  public static FopdtEstimate leastSquares(
      double[] seconds, double[] input, double[] output, Fopdt start) {
    double[] first = {
      start.gain(),
      Math.log(Math.max(SHORTEST_TAU_SECONDS, start.tauSeconds())),
      Math.max(0.0, start.deadSeconds()),
      output[0]
    };
    AnswerFit fit = AnswerFit.of(output, first, x -> outputs(seconds, input, x));
    double[] half = fit.half();
    Fopdt found = of(fit.point());
    return new FopdtEstimate(found, half[0], found.tauSeconds() * half[1], half[2], fit.rms());
  }

  /**
   * The same for two lags, without intervals.
   *
   * @param start first-order answer to begin with
   */
  public static Sopdt secondOrder(
      double[] seconds, double[] input, double[] output, Fopdt start) {
    double[] first = {
      start.gain(),
      Math.log(FIRST_SHARE * start.tauSeconds()),
      Math.log(SECOND_SHARE * start.tauSeconds()),
      Math.max(0.0, start.deadSeconds() - SECOND_SHARE * start.tauSeconds()),
      output[0]
    };
    AnswerFit fit =
        AnswerFit.of(output, first, x -> raised(second(x).answer(seconds, input), x[4]));
    return second(fit.point());
  }

  private static Sopdt second(double[] x) {
    double one = Math.exp(x[1]);
    double other = Math.exp(x[2]);
    return new Sopdt(x[0], Math.max(one, other), Math.min(one, other), x[3]);
  }

  private static Fopdt of(double[] x) {
    return new Fopdt(x[0], Math.exp(x[1]), x[2]);
  }

  private static double[] outputs(double[] seconds, double[] input, double[] x) {
    return raised(of(x).answer(seconds, input), x[3]);
  }

  private static double[] raised(double[] y, double level) {
    for (int i = 0; i < y.length; i++) {
      y[i] += level;
    }
    return y;
  }
}
