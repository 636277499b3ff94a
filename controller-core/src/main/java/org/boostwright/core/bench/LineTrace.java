package org.boostwright.core.bench;

import java.util.Arrays;

/**
 * The line's pressure since the present stretch of driving began: decides from the signal itself
 * whether it has settled, and averages over whole PWM periods.
 *
 * <p>Settled: the mean of the last quarter of the time since the start differs from the mean of the
 * quarter before by less than the tolerance. This asks nothing about how fast the line is.
 */
final class LineTrace {
  private static final double TOLERANCE_KPA = 0.15;
  private static final double NOISE_FACTOR = 3.0;
  private static final int FEWEST_PERIODS = 8;

  private double periodSeconds;
  private double[] times = new double[4096];
  private double[] values = new double[4096];
  private int samples;

  /** Integral of pressure up to the end of each whole period, kPa s. */
  private double[] periodIntegrals = new double[1024];

  private int periods;
  private double integral;

  void begin(double frequencyHz) {
    periodSeconds = 1.0 / frequencyHz;
    samples = 0;
    periods = 0;
    integral = 0.0;
  }

  void add(double seconds, double kpaAbs) {
    if (samples == times.length) {
      times = Arrays.copyOf(times, 2 * samples);
      values = Arrays.copyOf(values, 2 * samples);
    }
    double fromTime = samples == 0 ? 0.0 : times[samples - 1];
    double fromValue = samples == 0 ? kpaAbs : values[samples - 1];
    double span = seconds - fromTime;
    while (span > 0.0 && (periods + 1) * periodSeconds <= seconds) {
      double end = (periods + 1) * periodSeconds;
      double atEnd = fromValue + (kpaAbs - fromValue) * (end - fromTime) / span;
      if (periods == periodIntegrals.length) {
        periodIntegrals = Arrays.copyOf(periodIntegrals, 2 * periods);
      }
      periodIntegrals[periods++] = integral + 0.5 * (fromValue + atEnd) * (end - fromTime);
    }
    integral += 0.5 * (fromValue + kpaAbs) * span;
    times[samples] = seconds;
    values[samples++] = kpaAbs;
  }

  int samples() {
    return samples;
  }

  double seconds() {
    return samples == 0 ? 0.0 : times[samples - 1];
  }

  double time(int sample) {
    return times[sample];
  }

  double value(int sample) {
    return values[sample];
  }

  private double mean(int fromPeriod, int toPeriod) {
    double from = fromPeriod == 0 ? 0.0 : periodIntegrals[fromPeriod - 1];
    return (periodIntegrals[toPeriod - 1] - from) / ((toPeriod - fromPeriod) * periodSeconds);
  }

  private double sigmaOfMean(int spanPeriods, double noiseKpa) {
    double samplesPerPeriod = samples / (seconds() / periodSeconds);
    return noiseKpa / Math.sqrt(Math.max(1.0, spanPeriods * samplesPerPeriod));
  }

  boolean settled(double measureSeconds, double noiseKpa) {
    if (periods < FEWEST_PERIODS || 0.5 * periods * periodSeconds < measureSeconds) {
      return false;
    }
    int quarter = periods / 4;
    double last = mean(periods - quarter, periods);
    double before = mean(periods - 2 * quarter, periods - quarter);
    double noise = NOISE_FACTOR * 1.4 * sigmaOfMean(quarter, noiseKpa);
    return Math.abs(last - before) <= Math.max(TOLERANCE_KPA, noise);
  }

  Reading reading(double dutyFraction, boolean settled, double noiseKpa) {
    int from = periods / 2;
    if (periods < 2) {
      double mean = samples == 0 ? Double.NaN : integral / seconds();
      return new Reading(
          1.0 / periodSeconds, dutyFraction, false, seconds(), mean, noiseKpa, mean, mean, 0, 0);
    }
    double mean = mean(from, periods);
    int half = (periods - from) / 2;
    double drift =
        half == 0
            ? 0.0
            : (mean(periods - half, periods) - mean(periods - 2 * half, periods - half))
                / (half * periodSeconds);
    double[] sums = new double[Reading.BINS];
    int[] counts = new int[Reading.BINS];
    for (int i = samples - 1; i >= 0 && times[i] >= from * periodSeconds; i--) {
      double phase = times[i] / periodSeconds;
      int bin = (int) ((phase - Math.floor(phase)) * Reading.BINS);
      sums[Math.min(bin, Reading.BINS - 1)] += values[i];
      counts[Math.min(bin, Reading.BINS - 1)]++;
    }
    double low = Double.POSITIVE_INFINITY;
    double high = Double.NEGATIVE_INFINITY;
    int fewest = Integer.MAX_VALUE;
    for (int bin = 0; bin < Reading.BINS; bin++) {
      if (counts[bin] > 0) {
        low = Math.min(low, sums[bin] / counts[bin]);
        high = Math.max(high, sums[bin] / counts[bin]);
        fewest = Math.min(fewest, counts[bin]);
      }
    }
    return new Reading(
        1.0 / periodSeconds,
        dutyFraction,
        settled,
        seconds(),
        mean,
        sigmaOfMean(periods - from, noiseKpa),
        low,
        high,
        noiseKpa / Math.sqrt(fewest),
        drift);
  }

  /** Mean of the samples between two times, kPa; the last sample when there is none. */
  double meanBetween(double fromSeconds, double toSeconds) {
    double sum = 0.0;
    int count = 0;
    for (int i = 0; i < samples; i++) {
      if (times[i] >= fromSeconds && times[i] <= toSeconds) {
        sum += values[i];
        count++;
      }
    }
    return count == 0 ? values[samples - 1] : sum / count;
  }

  /** Standard deviation of the samples around their mean since the middle of the stretch, kPa. */
  double spreadKpa() {
    int from = samples / 2;
    int n = samples - from;
    if (n < 2) {
      return 0.0;
    }
    double sum = 0.0;
    for (int i = from; i < samples; i++) {
      sum += values[i];
    }
    double mean = sum / n;
    double squares = 0.0;
    for (int i = from; i < samples; i++) {
      squares += (values[i] - mean) * (values[i] - mean);
    }
    return Math.sqrt(squares / (n - 1));
  }

  /**
   * First time the pressure, averaged over five samples, has gone a share of the way from one level
   * to another, s; NaN when it never does.
   */
  double timeToShare(double fromKpa, double toKpa, double share) {
    double goal = fromKpa + share * (toKpa - fromKpa);
    double sign = Math.signum(toKpa - fromKpa);
    for (int i = 2; i + 2 < samples; i++) {
      double smooth =
          (values[i - 2] + values[i - 1] + values[i] + values[i + 1] + values[i + 2]) / 5.0;
      if (sign * (smooth - goal) >= 0.0) {
        return times[i];
      }
    }
    return Double.NaN;
  }
}
