package org.boostwright.rig.logs.identify;

import java.util.function.UnaryOperator;
import org.hipparchus.distribution.continuous.TDistribution;
import org.hipparchus.linear.Array2DRowRealMatrix;
import org.hipparchus.linear.ArrayRealVector;
import org.hipparchus.linear.RealMatrix;
import org.hipparchus.linear.RealVector;
import org.hipparchus.optim.nonlinear.vector.leastsquares.LeastSquaresBuilder;
import org.hipparchus.optim.nonlinear.vector.leastsquares.LeastSquaresOptimizer;
import org.hipparchus.optim.nonlinear.vector.leastsquares.LevenbergMarquardtOptimizer;
import org.hipparchus.util.Pair;

/**
 * Least squares with central differences and the 95 % intervals of the linearised problem (Seber and
 * Wild, <i>Nonlinear Regression</i>, Wiley 1989, section 5.1).
 *
 * @param point best parameters
 * @param half half widths of their 95 % intervals
 * @param rms residual, root mean square over the degrees of freedom
 */
@SuppressWarnings("ArrayRecordComponent") // stays inside the package
record AnswerFit(double[] point, double[] half, double rms) {
  private static final double STEP = 1e-4;
  private static final double INTERVAL = 0.975;
  private static final int MOST_EVALUATIONS = 300;

  /** Fits outputs of a model to measured ones. */
  static AnswerFit of(double[] measured, double[] start, UnaryOperator<double[]> model) {
    LeastSquaresOptimizer.Optimum best =
        new LevenbergMarquardtOptimizer()
            .optimize(
                new LeastSquaresBuilder()
                    .start(start)
                    .model(point -> linearised(point.toArray(), model))
                    .target(measured)
                    .lazyEvaluation(false)
                    .maxEvaluations(MOST_EVALUATIONS)
                    .maxIterations(MOST_EVALUATIONS)
                    .build());
    int free = measured.length - start.length;
    double variance = best.getCost() * best.getCost() / free;
    RealMatrix covariance = best.getCovariances(1e-14);
    double t = new TDistribution(free).inverseCumulativeProbability(INTERVAL);
    double[] half = new double[start.length];
    for (int i = 0; i < half.length; i++) {
      half[i] = t * Math.sqrt(variance * covariance.getEntry(i, i));
    }
    return new AnswerFit(best.getPoint().toArray(), half, Math.sqrt(variance));
  }

  private static Pair<RealVector, RealMatrix> linearised(
      double[] x, UnaryOperator<double[]> model) {
    double[] at = model.apply(x);
    double[][] jacobian = new double[at.length][x.length];
    for (int j = 0; j < x.length; j++) {
      double step = STEP * Math.max(1.0, Math.abs(x[j]));
      double[] up = x.clone();
      double[] down = x.clone();
      up[j] += step;
      down[j] -= step;
      double[] high = model.apply(up);
      double[] low = model.apply(down);
      for (int i = 0; i < at.length; i++) {
        jacobian[i][j] = (high[i] - low[i]) / (2.0 * step);
      }
    }
    return new Pair<>(new ArrayRealVector(at, false), new Array2DRowRealMatrix(jacobian, false));
  }
}
