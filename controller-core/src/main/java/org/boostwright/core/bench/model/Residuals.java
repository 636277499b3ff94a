package org.boostwright.core.bench.model;

/** The weighted differences between model and measurement that a fit makes small. */
@FunctionalInterface
public interface Residuals {
  /**
   * @param parameters present guess
   * @param residuals overwritten whole; each already divided by its standard deviation
   */
  void evaluate(double[] parameters, double[] residuals);
}
