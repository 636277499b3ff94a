package org.boostwright.core.bench.model;

import java.util.Arrays;

/**
 * Small dense nonlinear least squares after Levenberg and Marquardt, with the scaling of the normal
 * equations by their diagonal.
 *
 * <p>Marquardt, <i>J. SIAM</i> 11, 1963, 431-441; Nielsen's update of the damping (IMM-REP-1999-05,
 * from memory). Jacobian by central differences. NaN residuals count as a refused step.
 */
public final class LeastSquares {
  private static final int MAX_ITERATIONS = 200;
  private static final double STEP_TOLERANCE = 1e-9;
  private static final double COST_TOLERANCE = 1e-8;
  private static final double RELATIVE_DIFFERENCE = 1e-3;

  private final Residuals residuals;
  private final int count;

  /**
   * @param residuals function to make small
   * @param count number of residuals
   */
  public LeastSquares(Residuals residuals, int count) {
    this.residuals = residuals;
    this.count = count;
  }

  /**
   * Fits from a starting point.
   *
   * @param start first guess, finite
   * @param scale typical size of each parameter, above 0: sets the step of the differences
   */
  public FitResult fit(double[] start, double[] scale) {
    int n = start.length;
    double[] x = start.clone();
    double[] r = new double[count];
    residuals.evaluate(x, r);
    double cost = sumOfSquares(r);
    double[][] jacobian = new double[count][n];
    double[][] normal = new double[n][n];
    double[] gradient = new double[n];
    double[] trial = new double[n];
    double[] trialResiduals = new double[count];
    double damping = 1e-3;
    double growth = 2.0;
    boolean converged = false;
    int iteration = 0;
    normalEquations(x, scale, r, jacobian, normal, gradient);
    while (!converged && iteration < MAX_ITERATIONS) {
      iteration++;
      double[] step = dampedStep(normal, gradient, damping);
      double relative = 0.0;
      double expected = 0.0;
      for (int i = 0; i < n; i++) {
        trial[i] = x[i] + step[i];
        relative = Math.max(relative, Math.abs(step[i]) / (Math.abs(x[i]) + scale[i]));
        expected += step[i] * (damping * normal[i][i] * step[i] - gradient[i]);
      }
      residuals.evaluate(trial, trialResiduals);
      double trialCost = sumOfSquares(trialResiduals);
      if (trialCost <= cost) {
        double gain = (cost - trialCost) / Math.max(expected, Double.MIN_NORMAL);
        converged = cost - trialCost <= COST_TOLERANCE * cost || relative < STEP_TOLERANCE;
        System.arraycopy(trial, 0, x, 0, n);
        System.arraycopy(trialResiduals, 0, r, 0, count);
        cost = trialCost;
        normalEquations(x, scale, r, jacobian, normal, gradient);
        damping *= Math.max(1.0 / 3.0, 1.0 - Math.pow(2.0 * gain - 1.0, 3));
        growth = 2.0;
      } else {
        converged = relative < STEP_TOLERANCE || damping > 1e16;
        damping *= growth;
        growth *= 2.0;
      }
    }
    return new FitResult(x, inverse(normal), cost, count, iteration, converged);
  }

  private void normalEquations(
      double[] x,
      double[] scale,
      double[] r,
      double[][] jacobian,
      double[][] normal,
      double[] gradient) {
    int n = x.length;
    double[] moved = x.clone();
    double[] above = new double[count];
    double[] below = new double[count];
    for (int j = 0; j < n; j++) {
      double h = RELATIVE_DIFFERENCE * scale[j];
      moved[j] = x[j] + h;
      residuals.evaluate(moved, above);
      moved[j] = x[j] - h;
      residuals.evaluate(moved, below);
      moved[j] = x[j];
      for (int i = 0; i < count; i++) {
        jacobian[i][j] = (above[i] - below[i]) / (2.0 * h);
      }
    }
    for (int j = 0; j < n; j++) {
      double g = 0.0;
      for (int i = 0; i < count; i++) {
        g += jacobian[i][j] * r[i];
      }
      gradient[j] = g;
      for (int k = j; k < n; k++) {
        double sum = 0.0;
        for (int i = 0; i < count; i++) {
          sum += jacobian[i][j] * jacobian[i][k];
        }
        normal[j][k] = sum;
        normal[k][j] = sum;
      }
    }
  }

  private static double[] dampedStep(double[][] normal, double[] gradient, double damping) {
    int n = gradient.length;
    double[][] damped = new double[n][];
    double[] right = new double[n];
    for (int i = 0; i < n; i++) {
      damped[i] = normal[i].clone();
      damped[i][i] += damping * normal[i][i];
      right[i] = -gradient[i];
    }
    return solve(damped, right);
  }

  private static double sumOfSquares(double[] r) {
    double sum = 0.0;
    for (double v : r) {
      sum += v * v;
    }
    return Double.isFinite(sum) ? sum : Double.POSITIVE_INFINITY;
  }

  /** Solves by Gaussian elimination with partial pivoting; a column without effect gets 0. */
  static double[] solve(double[][] matrix, double[] right) {
    int n = right.length;
    double[] x = right.clone();
    for (int column = 0; column < n; column++) {
      int pivot = column;
      for (int row = column + 1; row < n; row++) {
        if (Math.abs(matrix[row][column]) > Math.abs(matrix[pivot][column])) {
          pivot = row;
        }
      }
      double[] swapped = matrix[column];
      matrix[column] = matrix[pivot];
      matrix[pivot] = swapped;
      double held = x[column];
      x[column] = x[pivot];
      x[pivot] = held;
      if (matrix[column][column] == 0.0) {
        continue;
      }
      for (int row = column + 1; row < n; row++) {
        double factor = matrix[row][column] / matrix[column][column];
        for (int k = column; k < n; k++) {
          matrix[row][k] -= factor * matrix[column][k];
        }
        x[row] -= factor * x[column];
      }
    }
    for (int row = n - 1; row >= 0; row--) {
      double sum = x[row];
      for (int k = row + 1; k < n; k++) {
        sum -= matrix[row][k] * x[k];
      }
      x[row] = matrix[row][row] == 0.0 ? 0.0 : sum / matrix[row][row];
    }
    return x;
  }

  /** Inverse of a symmetric positive matrix, scaled to unit diagonal first. */
  static double[][] inverse(double[][] matrix) {
    int n = matrix.length;
    double[] scale = new double[n];
    for (int i = 0; i < n; i++) {
      scale[i] = matrix[i][i] > 0.0 ? 1.0 / Math.sqrt(matrix[i][i]) : 0.0;
    }
    double[][] result = new double[n][n];
    for (int column = 0; column < n; column++) {
      double[][] scaled = new double[n][n];
      double[] unit = new double[n];
      unit[column] = 1.0;
      for (int i = 0; i < n; i++) {
        for (int k = 0; k < n; k++) {
          scaled[i][k] = matrix[i][k] * scale[i] * scale[k];
        }
      }
      double[] solved = solve(scaled, unit);
      for (int i = 0; i < n; i++) {
        result[i][column] = solved[i] * scale[i] * scale[column];
      }
      if (scale[column] == 0.0) {
        Arrays.fill(result[column], 0.0);
        result[column][column] = Double.POSITIVE_INFINITY;
      }
    }
    return result;
  }
}
