package org.boostwright.rig.plant;

/**
 * Flow of air through a pneumatic path of given sonic conductance (ISO 6358-1:2013).
 *
 * <p>{@code m = C*p1*rho0*sqrt(T0/T1)} while {@code p2/p1 <= b}, beyond that times {@code sqrt(1 -
 * ((p2/p1 - b)/(1 - b))^2)}; rho0 = 1.185 kg/m3, T0 = 293.15 K. The root has an infinite slope at
 * equal pressures, so above a ratio of {@link #LINEAR_ABOVE} the flow runs straight to zero.
 */
public final class IsoFlow {
  /** Reference density, kg/m3. */
  public static final double RHO0 = 1.185;

  /** Reference temperature, K. */
  public static final double T0 = 293.15;

  /** Pressure ratio above which the flow is linear in the pressure difference. */
  public static final double LINEAR_ABOVE = 0.999;

  private IsoFlow() {}

  /**
   * Mass flow from side 1 to side 2, kg/s; negative when side 2 is the higher one.
   *
   * @param conductance sonic conductance C, m3/(s Pa)
   * @param criticalRatio b, 0 to below 1
   * @param p1 pressure of side 1, Pa absolute
   * @param p2 pressure of side 2, Pa absolute
   * @param upstreamKelvin temperature of the gas on the higher side, K
   */
  public static double kgPerSecond(
      double conductance, double criticalRatio, double p1, double p2, double upstreamKelvin) {
    double scale = conductance * RHO0 * Math.sqrt(T0 / upstreamKelvin);
    return p1 >= p2
        ? scale * p1 * factor(p2 / p1, criticalRatio)
        : -scale * p2 * factor(p1 / p2, criticalRatio);
  }

  /** Flow over choked flow for a pressure ratio of 0 to 1. */
  static double factor(double ratio, double b) {
    if (ratio <= b) {
      return 1.0;
    }
    if (ratio > LINEAR_ABOVE) {
      return (1.0 - ratio) / (1.0 - LINEAR_ABOVE) * root(LINEAR_ABOVE, b);
    }
    return root(ratio, b);
  }

  /** Derivative of {@link #factor} over the pressure ratio. */
  static double slope(double ratio, double b) {
    if (ratio <= b) {
      return 0.0;
    }
    if (ratio > LINEAR_ABOVE) {
      return -root(LINEAR_ABOVE, b) / (1.0 - LINEAR_ABOVE);
    }
    double x = (ratio - b) / (1.0 - b);
    return -x / ((1.0 - b) * Math.sqrt(1.0 - x * x));
  }

  private static double root(double ratio, double b) {
    double x = (ratio - b) / (1.0 - b);
    return Math.sqrt(1.0 - x * x);
  }
}
