package org.boostwright.core.signal;

/**
 * Rate of change by least squares over the last samples.
 *
 * <p>{@code slope = sum((t - tm)(x - xm)) / sum((t - tm)^2)}; exact for a ramp at any spacing of
 * the samples. With {@code n} samples {@code dt} apart the noise of the slope is {@code sigma *
 * sqrt(12/(n(n^2-1)))/dt} and its delay {@code (n-1)dt/2} (textbook least squares).
 */
public final class SlopeEstimate {
  private final double[] values;
  private final long[] nanos;
  private int count;
  private int next;

  /**
   * @param samples number of samples, at least 2
   */
  public SlopeEstimate(int samples) {
    values = new double[samples];
    nanos = new long[samples];
  }

  /** Adds one accepted sample. */
  public void add(double value, long sampleNanos) {
    values[next] = value;
    nanos[next] = sampleNanos;
    next = next + 1 < values.length ? next + 1 : 0;
    if (count < values.length) {
      count++;
    }
  }

  /** Value units per second; 0 with fewer than two samples. */
  public double perSecond() {
    if (count < 2) {
      return 0.0;
    }
    long origin = nanos[next > 0 ? next - 1 : values.length - 1];
    double meanT = 0.0;
    double meanX = 0.0;
    for (int i = 0; i < count; i++) {
      meanT += (nanos[i] - origin) * 1e-9;
      meanX += values[i];
    }
    meanT /= count;
    meanX /= count;
    double top = 0.0;
    double bottom = 0.0;
    for (int i = 0; i < count; i++) {
      double t = (nanos[i] - origin) * 1e-9 - meanT;
      top += t * (values[i] - meanX);
      bottom += t * t;
    }
    return bottom > 0.0 ? top / bottom : 0.0;
  }
}
