package org.boostwright.rig.logs.identify;

import org.hipparchus.distribution.continuous.TDistribution;
import org.hipparchus.linear.Array2DRowRealMatrix;
import org.hipparchus.linear.ArrayRealVector;
import org.hipparchus.linear.RealMatrix;
import org.hipparchus.linear.RealVector;
import org.hipparchus.optim.nonlinear.vector.leastsquares.LeastSquaresBuilder;
import org.hipparchus.optim.nonlinear.vector.leastsquares.LeastSquaresOptimizer;
import org.hipparchus.optim.nonlinear.vector.leastsquares.LevenbergMarquardtOptimizer;
import org.hipparchus.util.Pair;

/** First-order answers with dead time from recorded steps. */
public final class FopdtFit {
  private static final double LOW_CROSSING = 0.283;
  private static final double HIGH_CROSSING = 0.632;
  private static final double TAU_FACTOR = 1.5;
  private static final int PARAMETERS = 4;
  private static final double SHORTEST_TAU_SECONDS = 1e-3;
  private static final int MOST_EVALUATIONS = 300;

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
    LeastSquaresOptimizer.Optimum best =
        new LevenbergMarquardtOptimizer()
            .optimize(
                new LeastSquaresBuilder()
                    .start(first)
                    .model(point -> model(seconds, input, point.toArray()))
                    .target(output)
                    .lazyEvaluation(false)
                    .maxEvaluations(MOST_EVALUATIONS)
                    .maxIterations(MOST_EVALUATIONS)
                    .build());
    double[] point = best.getPoint().toArray();
    int free = output.length - PARAMETERS;
    double variance = best.getCost() * best.getCost() / free;
    RealMatrix covariance = best.getCovariances(1e-14);
    double t = new TDistribution(free).inverseCumulativeProbability(0.975);
    double tau = Math.exp(point[1]);
    return new FopdtEstimate(
        of(point),
        t * Math.sqrt(variance * covariance.getEntry(0, 0)),
        t * tau * Math.sqrt(variance * covariance.getEntry(1, 1)),
        t * Math.sqrt(variance * covariance.getEntry(2, 2)),
        Math.sqrt(variance));
  }

  private static Fopdt of(double[] x) {
    return new Fopdt(x[0], Math.exp(x[1]), x[2]);
  }

  private static Pair<RealVector, RealMatrix> model(
      double[] seconds, double[] input, double[] x) {
    double[] at = outputs(seconds, input, x);
    double[][] jacobian = new double[at.length][PARAMETERS];
    double[] steps = {1e-4 * Math.max(1e-6, Math.abs(x[0])), 1e-4, 1e-4, 1e-3};
    for (int j = 0; j < PARAMETERS; j++) {
      double[] up = x.clone();
      double[] down = x.clone();
      up[j] += steps[j];
      down[j] -= steps[j];
      double[] high = outputs(seconds, input, up);
      double[] low = outputs(seconds, input, down);
      for (int i = 0; i < at.length; i++) {
        jacobian[i][j] = (high[i] - low[i]) / (2.0 * steps[j]);
      }
    }
    return new Pair<>(
        new ArrayRealVector(at, false), new Array2DRowRealMatrix(jacobian, false));
  }

  private static double[] outputs(double[] seconds, double[] input, double[] x) {
    double[] y = of(x).answer(seconds, input);
    for (int i = 0; i < y.length; i++) {
      y[i] += x[3];
    }
    return y;
  }
}
