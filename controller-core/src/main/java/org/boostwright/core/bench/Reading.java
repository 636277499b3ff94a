package org.boostwright.core.bench;

/**
 * What the line did during one stretch of driving.
 *
 * @param frequencyHz PWM frequency, Hz
 * @param dutyFraction duty
 * @param settled false when the time limit came first
 * @param seconds length of the stretch, s
 * @param meanKpaAbs mean over whole PWM periods once settled, kPa absolute
 * @param meanSigmaKpa standard deviation of that mean from the sensor's noise, kPa
 * @param lowKpaAbs lowest of the pressure averaged by place in the period, kPa absolute
 * @param highKpaAbs highest, kPa absolute
 * @param binSigmaKpa standard deviation of one of those places, kPa
 * @param driftKpaPerSecond slope over the averaged stretch, kPa/s
 */
public record Reading(
    double frequencyHz,
    double dutyFraction,
    boolean settled,
    double seconds,
    double meanKpaAbs,
    double meanSigmaKpa,
    double lowKpaAbs,
    double highKpaAbs,
    double binSigmaKpa,
    double driftKpaPerSecond) {

  /** Places of a period the ripple is resolved into. */
  static final int BINS = 32;

  // Expected range of BINS standard normal numbers (Tippett 1925, from memory).
  private static final double RANGE_OF_NOISE = 4.1;

  /** Peak-to-peak ripple with the noise's own share taken out, kPa. */
  public double rippleKpa() {
    double range = highKpaAbs - lowKpaAbs;
    double noise = RANGE_OF_NOISE * binSigmaKpa;
    return range > noise ? Math.sqrt(range * range - noise * noise) : 0.0;
  }
}
