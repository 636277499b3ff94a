package org.boostwright.rig.plant;

/**
 * Isentropic flow of an ideal gas through a nozzle (any handbook of gas dynamics, e.g. Shapiro,
 * <i>The Dynamics and Thermodynamics of Compressible Fluid Flow</i>, 1953).
 *
 * <p>{@code W = A*p_up/sqrt(R*T_up)*psi(p_down/p_up)}, {@code psi = sqrt(2g/(g-1)*(x^(2/g) -
 * x^((g+1)/g)))}, x held at the critical ratio below it, and psi linear to zero above a ratio of
 * 0.99.
 */
public final class GasFlow {
  /** Pressure ratio above which psi is linear. */
  public static final double LINEAR_ABOVE = 0.99;

  private final double gamma;
  private final double inverseGamma;
  private final double root;
  private final double criticalRatio;
  private final double choked;
  private final double atLinear;

  /** Nozzle function of a gas with this ratio of specific heats. */
  public GasFlow(double gamma) {
    this.gamma = gamma;
    inverseGamma = 1.0 / gamma;
    root = Math.sqrt(2.0 * gamma / (gamma - 1.0));
    criticalRatio = Math.pow(2.0 / (gamma + 1.0), gamma / (gamma - 1.0));
    choked = root * shape(criticalRatio, Math.pow(criticalRatio, inverseGamma));
    atLinear = root * shape(LINEAR_ABOVE, Math.pow(LINEAR_ABOVE, inverseGamma));
  }

  /** Pressure ratio at which the flow chokes. */
  public double criticalRatio() {
    return criticalRatio;
  }

  /** psi for a pressure ratio of 0 to 1. */
  public double psi(double ratio) {
    return ratio > criticalRatio && ratio < LINEAR_ABOVE
        ? psi(ratio, Math.pow(ratio, inverseGamma))
        : psi(ratio, 1.0);
  }

  /**
   * psi where {@code ratio^(1/gamma)} is already known; it is not looked at where psi is choked or
   * linear.
   */
  double psi(double ratio, double ratioToInverseGamma) {
    if (ratio <= criticalRatio) {
      return choked;
    }
    if (ratio >= LINEAR_ABOVE) {
      return atLinear * (1.0 - ratio) / (1.0 - LINEAR_ABOVE);
    }
    return root * shape(ratio, ratioToInverseGamma);
  }

  /** Derivative of psi over the pressure ratio, given psi and {@code ratio^(1/gamma)}. */
  double slope(double ratio, double ratioToInverseGamma, double psi) {
    if (ratio <= criticalRatio) {
      return 0.0;
    }
    if (ratio >= LINEAR_ABOVE) {
      return -atLinear / (1.0 - LINEAR_ABOVE);
    }
    double u = ratioToInverseGamma;
    double inner = 2.0 * u * u / (gamma * ratio) - u - u * inverseGamma;
    return 0.5 * root * root * inner / psi;
  }

  /** True where psi needs {@code ratio^(1/gamma)}. */
  boolean needsPower(double ratio) {
    return ratio > criticalRatio && ratio < LINEAR_ABOVE;
  }

  double inverseGamma() {
    return inverseGamma;
  }

  private static double shape(double ratio, double u) {
    return Math.sqrt(u * u - ratio * u);
  }
}
