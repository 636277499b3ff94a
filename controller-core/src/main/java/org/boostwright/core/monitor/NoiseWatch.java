package org.boostwright.core.monitor;

/**
 * Fast disturbance of the pressure signal, told from the intake's own pulsation.
 *
 * <p>The mean squares of three differences, each of which white noise of standard deviation s
 * brings to s squared: {@code (x0 - 2 x1 + x2)^2/6}, {@code (x0 - x1 - x2 + x3)^2/4} and {@code (x0
 * - x1 - x3 + x4)^2/4}. The smallest of the three counts. All are blind to a ramp; the second is
 * blind to half the sampling rate, where a pulsation would beat with the tick, and the third to a
 * third of it, so that a pulsation of 5 kPa peak to peak never shows as more than about 1.1 kPa
 * whatever the engine speed (filter of 20 to 50 Hz, sampling at 200 Hz), while noise shows at full.
 * A single outlier is capped, so that only a disturbance that lasts is found.
 */
public final class NoiseWatch {
  /** Limit over rated noise: below five times rated, above rated noise with pulsation. */
  static final double LIMIT_FACTOR = 4.2;

  /** Lowest limit, kPa: clear of the pulsation alone, however quiet the sensor. */
  static final double LOWEST_LIMIT_KPA = 1.26;

  private static final double GAIN = 0.02;
  private static final double CAP_OVER_LIMIT_SQUARED = 6.0;

  private final double limitSquared;
  private final double cap;
  private int held;
  private double x1;
  private double x2;
  private double x3;
  private double x4;
  private double second;
  private double third;
  private double fourth;

  /**
   * @param ratedKpa declared noise floor, standard deviation, kPa; above 0
   */
  public NoiseWatch(double ratedKpa) {
    double limit = Math.max(LOWEST_LIMIT_KPA, LIMIT_FACTOR * ratedKpa);
    limitSquared = limit * limit;
    cap = CAP_OVER_LIMIT_SQUARED * limitSquared;
  }

  /** Forgets the neighbours of the next sample, keeps the means. */
  public void interrupt() {
    held = 0;
  }

  /** Takes one sample; true when the disturbance is beyond the limit. */
  public boolean excessive(double kpa) {
    if (held >= 4) {
      second += GAIN * (capped(kpa - 2.0 * x1 + x2, 6.0) - second);
      third += GAIN * (capped(kpa - x1 - x2 + x3, 4.0) - third);
      fourth += GAIN * (capped(kpa - x1 - x3 + x4, 4.0) - fourth);
    } else {
      held++;
    }
    x4 = x3;
    x3 = x2;
    x2 = x1;
    x1 = kpa;
    return !(Math.min(second, Math.min(third, fourth)) <= limitSquared);
  }

  private double capped(double difference, double weights) {
    return Math.min(cap, difference * difference / weights);
  }
}
