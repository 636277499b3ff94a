package org.boostwright.rig.logs.pulls;

/**
 * A pressure freed of pulsation and noise: centred mean, and rate by least squares.
 *
 * <p>The windows reach the same way back and ahead, so that neither is late.
 */
final class Smoothed {
  private static final double MEAN_SECONDS = 0.1;
  private static final double RATE_SECONDS = 0.3;
  private static final double RATE_READINGS = 5.0;

  private final double[] seconds;
  private final double[] values;
  private final double meanHalf;
  private final double rateHalf;

  Smoothed(double[] seconds, double[] values, double refreshSeconds) {
    this.seconds = seconds;
    this.values = values;
    meanHalf = 0.5 * Math.max(MEAN_SECONDS, refreshSeconds);
    rateHalf = 0.5 * Math.max(RATE_SECONDS, RATE_READINGS * refreshSeconds);
  }

  /** Mean around a row; NaN where nothing is known. */
  double mean(int row) {
    double sum = 0.0;
    int n = 0;
    for (int i = first(row, meanHalf); i < values.length && within(i, row, meanHalf); i++) {
      if (!Double.isNaN(values[i])) {
        sum += values[i];
        n++;
      }
    }
    return n == 0 ? Double.NaN : sum / n;
  }

  /** Least-squares rate around a row, per second; NaN where it cannot be found. */
  double rate(int row) {
    double n = 0.0;
    double t1 = 0.0;
    double t2 = 0.0;
    double y1 = 0.0;
    double ty = 0.0;
    for (int i = first(row, rateHalf); i < values.length && within(i, row, rateHalf); i++) {
      if (!Double.isNaN(values[i])) {
        double t = seconds[i] - seconds[row];
        n++;
        t1 += t;
        t2 += t * t;
        y1 += values[i];
        ty += t * values[i];
      }
    }
    double spread = n * t2 - t1 * t1;
    return spread > 0.0 ? (n * ty - t1 * y1) / spread : Double.NaN;
  }

  private boolean within(int i, int row, double half) {
    return seconds[i] - seconds[row] <= half;
  }

  private int first(int row, double half) {
    int i = row;
    while (i > 0 && seconds[row] - seconds[i - 1] <= half) {
      i--;
    }
    return i;
  }
}
