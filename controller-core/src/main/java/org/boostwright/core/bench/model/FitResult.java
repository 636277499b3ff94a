package org.boostwright.core.bench.model;

/**
 * Outcome of a least-squares fit.
 *
 * @param parameters best parameters
 * @param covariance inverse of the normal matrix, for residuals in standard deviations
 * @param chiSquare sum of the squared residuals
 * @param residualCount number of residuals
 * @param iterations steps tried
 * @param converged false when it gave up at the step limit
 */
public record FitResult(
    double[] parameters,
    double[][] covariance,
    double chiSquare,
    int residualCount,
    int iterations,
    boolean converged) {

  /** Standard deviation of a parameter when the residuals' own deviations are right. */
  public double sigma(int parameter) {
    return Math.sqrt(covariance[parameter][parameter]);
  }

  /** Chi-square over degrees of freedom: 1 when the model describes the data. */
  public double reducedChiSquare() {
    int degrees = residualCount - parameters.length;
    return degrees > 0 ? chiSquare / degrees : Double.NaN;
  }
}
