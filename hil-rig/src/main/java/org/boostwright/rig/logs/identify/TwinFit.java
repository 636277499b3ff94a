package org.boostwright.rig.logs.identify;

import java.util.ArrayList;
import java.util.List;
import org.boostwright.rig.logs.pulls.Pull;
import org.boostwright.rig.plant.PlantParams;
import org.hipparchus.exception.MathRuntimeException;
import org.hipparchus.linear.Array2DRowRealMatrix;
import org.hipparchus.linear.ArrayRealVector;
import org.hipparchus.linear.CholeskyDecomposition;
import org.hipparchus.linear.MatrixUtils;
import org.hipparchus.linear.RealMatrix;
import org.hipparchus.linear.RealVector;
import org.hipparchus.optim.nonlinear.vector.leastsquares.LeastSquaresBuilder;
import org.hipparchus.optim.nonlinear.vector.leastsquares.LeastSquaresOptimizer;
import org.hipparchus.optim.nonlinear.vector.leastsquares.GaussNewtonOptimizer;
import org.hipparchus.optim.nonlinear.vector.leastsquares.MultivariateJacobianFunction;
import org.hipparchus.util.Pair;

/**
 * Fits the virtual car's main parameters to recorded pulls by least squares, with what was believed
 * before as further equations (maximum a posteriori; covariance of the linearised problem, as in
 * Gelman et al., <i>Bayesian Data Analysis</i>, CRC 2013, section 4.1).
 *
 * <p>Works on closed loop data as well: the recorded duty leads the car, so the feedback that made
 * it does not matter.
 */
public final class TwinFit {
  /** Most pulls used; more add time and little knowledge. */
  private static final int MOST_PULLS = 2;

  // Model errors last longer than one point, so each counts less than the sensor's noise alone.
  private static final double FIRST_POINT_KPA = 2.0;
  private static final double LEAST_POINT_KPA = 0.5;
  private static final double OF_RMS = 1.5;
  private static final double DIFFERENCE = 0.05;
  private static final int MOST_STEPS = 25;
  private static final double GOOD_ENOUGH = 0.02;

  private final PlantParams start;
  private final List<Pull> pulls;
  private final double[] recorded;
  private double pointKpa = FIRST_POINT_KPA;

  private TwinFit(PlantParams start, List<Pull> pulls) {
    this.start = start;
    this.pulls = pulls;
    List<double[]> parts = new ArrayList<>();
    pulls.forEach(pull -> parts.add(RecordedDrive.recorded(pull)));
    recorded = joined(parts);
  }

  /**
   * Fits.
   *
   * @param start car to begin with
   * @param pulls pulls with recorded duty that lasted at least a second; at least one
   * @throws IllegalArgumentException when there is none
   */
  public static CarTwin fit(PlantParams start, List<Pull> pulls) {
    List<Pull> used = new ArrayList<>();
    for (Pull pull : pulls) {
      if (pull.log().controlled() && RecordedDrive.points(pull) >= 10 && used.size() < MOST_PULLS) {
        used.add(pull);
      }
    }
    if (used.isEmpty()) {
      throw new IllegalArgumentException("a fit needs at least one pull with recorded duty");
    }
    return new TwinFit(start, used).fit();
  }

  /** Fits, then fits again with each point weighed by how well the first fit met them. */
  private CarTwin fit() {
    try {
      return twice();
    } catch (MathRuntimeException e) {
      // No car near the start explains the pulls; the caller sees it from the distance.
      int n = TwinParameters.COUNT;
      double[] nowhere = new double[n];
      double[][] root = MatrixUtils.createRealIdentityMatrix(n).getData();
      return new CarTwin(start, nowhere, root, rmsKpa(nowhere), pulls.size());
    }
  }

  private CarTwin twice() {
    double[] first = optimum(new double[TwinParameters.COUNT]).getPoint().toArray();
    pointKpa = Math.max(LEAST_POINT_KPA, Math.min(FIRST_POINT_KPA, OF_RMS * rmsKpa(first)));
    LeastSquaresOptimizer.Optimum best = optimum(first);
    double[] point = best.getPoint().toArray();
    RealMatrix information = best.getJacobian().transpose().multiply(best.getJacobian());
    RealMatrix covariance = MatrixUtils.inverse(information);
    double[][] root = new CholeskyDecomposition(covariance, 1e-6, 1e-12).getL().getData();
    return new CarTwin(start, point, root, rmsKpa(point), pulls.size());
  }

  private LeastSquaresOptimizer.Optimum optimum(double[] from) {
    return new GaussNewtonOptimizer()
        .optimize(
            new LeastSquaresBuilder()
                .start(from)
                .model(jacobianFunction())
                .target(new double[recorded.length + from.length])
                .checker(
                    (iteration, before, now) ->
                        Math.abs(before.getRMS() - now.getRMS()) < GOOD_ENOUGH * now.getRMS())
                .lazyEvaluation(false)
                .maxIterations(MOST_STEPS)
                .maxEvaluations(MOST_STEPS)
                .build());
  }

  private double rmsKpa(double[] x) {
    double square = 0.0;
    double[] residual = residuals(x);
    for (int i = 0; i < recorded.length; i++) {
      square += residual[i] * residual[i];
    }
    return pointKpa * Math.sqrt(square / recorded.length);
  }

  private MultivariateJacobianFunction jacobianFunction() {
    return point -> {
      double[] x = point.toArray();
      double[] at = residuals(x);
      double[][] jacobian = new double[at.length][x.length];
      for (int j = 0; j < x.length; j++) {
        double[] beside = x.clone();
        beside[j] += DIFFERENCE;
        double[] other = residuals(beside);
        for (int i = 0; i < at.length; i++) {
          jacobian[i][j] = (other[i] - at[i]) / DIFFERENCE;
        }
      }
      return new Pair<RealVector, RealMatrix>(
          new ArrayRealVector(at, false), new Array2DRowRealMatrix(jacobian, false));
    };
  }

  /** Modelled minus recorded pressures, then the point itself: distance from the prior belief. */
  private double[] residuals(double[] x) {
    PlantParams car = TwinParameters.apply(start, x);
    List<double[]> parts = new ArrayList<>();
    pulls.forEach(pull -> parts.add(RecordedDrive.driven(car, pull)));
    double[] all = java.util.Arrays.copyOf(joined(parts), recorded.length + x.length);
    for (int i = 0; i < recorded.length; i++) {
      all[i] = (all[i] - recorded[i]) / pointKpa;
    }
    System.arraycopy(x, 0, all, recorded.length, x.length);
    return all;
  }

  private static double[] joined(List<double[]> parts) {
    return parts.stream().flatMapToDouble(java.util.Arrays::stream).toArray();
  }
}
