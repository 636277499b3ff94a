package org.boostwright.core.monitor;

/**
 * Fast disturbance of the pressure signal, as the root mean square of its second difference.
 *
 * <p>White noise of standard deviation s gives {@code s*sqrt(6)}; the intake's own pulsation gives
 * at most about 2.2 kPa behind the sensor's filter, whatever the engine speed. The limit is four
 * times the rated noise, so that rated noise with pulsation stays clear of it and five times rated
 * does not.
 */
public final class NoiseWatch {
  /** Limit over rated noise. */
  static final double LIMIT_FACTOR = 4.0;

  private static final double GAIN = 0.02;
  private static final double SQRT_6 = 2.449489742783178;

  private final double limitSquared;
  private int held;
  private double last;
  private double beforeLast;
  private double meanSquare;

  /**
   * @param ratedKpa declared noise floor, kPa; 0 switches the watch off
   */
  public NoiseWatch(double ratedKpa) {
    double limit = LIMIT_FACTOR * SQRT_6 * ratedKpa;
    limitSquared = ratedKpa > 0.0 ? limit * limit : Double.POSITIVE_INFINITY;
  }

  /** Forgets the neighbours of the next sample, keeps the mean. */
  public void interrupt() {
    held = 0;
  }

  /** Takes one sample; true when the disturbance is beyond the limit. */
  public boolean excessive(double kpa) {
    if (held >= 2) {
      double d = kpa - 2.0 * last + beforeLast;
      meanSquare += GAIN * (d * d - meanSquare);
    } else {
      held++;
    }
    beforeLast = last;
    last = kpa;
    return !(meanSquare <= limitSquared);
  }
}
