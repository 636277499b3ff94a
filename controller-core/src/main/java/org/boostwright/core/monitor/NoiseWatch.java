package org.boostwright.core.monitor;

/**
 * Fast disturbance of the pressure signal, as the root mean square of its second difference.
 *
 * <p>White noise of standard deviation s gives {@code s*sqrt(6)}. The intake pulsates by itself, 5
 * kPa peak to peak at the firing frequency f; behind a sensor lag of 1 ms and a filter of 50 Hz
 * amplitude a is left, and its second difference at tick T is {@code a*(2 - 2cos(2 pi f
 * T))/sqrt(2)}. The limit allows for three times the rated noise and 1.1 times that pulsation, so
 * that rated noise stays clear of it at every engine speed and five times rated does not.
 */
public final class NoiseWatch {
  /** Share of the limit that is noise, over rated noise. */
  static final double NOISE_FACTOR = 3.0;

  /** Share of the limit that is pulsation, over the expected one. */
  static final double PULSATION_FACTOR = 1.1;

  private static final double PULSATION_AMPLITUDE_KPA = 2.5;
  private static final double FILTER_HZ = 50.0;
  private static final double LAG_SECONDS = 1e-3;
  private static final double TICK_SECONDS = 5e-3;
  private static final double GAIN = 0.02;
  private static final double SQRT_6 = 2.449489742783178;

  private final boolean watched;
  private final double noiseLimitSquared;
  private final double firingHzPerRpm;
  private int held;
  private double last;
  private double beforeLast;
  private double meanSquare;

  /**
   * @param ratedKpa declared noise floor, kPa; 0 switches the watch off
   * @param cylinders number of cylinders of the four-stroke engine
   */
  public NoiseWatch(double ratedKpa, int cylinders) {
    watched = ratedKpa > 0.0;
    double limit = NOISE_FACTOR * SQRT_6 * ratedKpa;
    noiseLimitSquared = limit * limit;
    firingHzPerRpm = cylinders / 120.0;
  }

  /** Forgets the neighbours of the next sample, keeps the mean. */
  public void interrupt() {
    held = 0;
  }

  /** Takes one sample; true when the disturbance is beyond the limit at this engine speed. */
  public boolean excessive(double kpa, double engineRpm) {
    if (held >= 2) {
      double d = kpa - 2.0 * last + beforeLast;
      meanSquare += GAIN * (d * d - meanSquare);
    } else {
      held++;
    }
    beforeLast = last;
    last = kpa;
    return watched && !(meanSquare <= noiseLimitSquared + pulsationSquared(engineRpm));
  }

  private double pulsationSquared(double engineRpm) {
    double hz = engineRpm * firingHzPerRpm;
    double filter = hz / FILTER_HZ;
    double lag = 2.0 * Math.PI * hz * LAG_SECONDS;
    double amplitude =
        PULSATION_AMPLITUDE_KPA / Math.sqrt((1.0 + filter * filter) * (1.0 + lag * lag));
    double second = 2.0 - 2.0 * Math.cos(2.0 * Math.PI * hz * TICK_SECONDS);
    double rms = PULSATION_FACTOR * amplitude * second;
    return 0.5 * rms * rms;
  }
}
