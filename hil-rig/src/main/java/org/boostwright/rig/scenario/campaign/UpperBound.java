package org.boostwright.rig.scenario.campaign;

/**
 * Upper bound of a rate from a count, at 95 % confidence, one-sided.
 *
 * <p>The bound p solves {@code P(at most k of n | p) = 0.05} (Clopper and Pearson, Biometrika 26,
 * 1934, 404-413). For k = 0 that is {@code 1 - 0.05^(1/n)}, close to 3/n (Hanley and Lippman-Hand,
 * JAMA 249, 1983, 1743-1745).
 */
public final class UpperBound {
  private static final double LEFT_OVER = 0.05;
  private static final int HALVINGS = 100;

  private UpperBound() {}

  /**
   * The bound.
   *
   * @param count how often it happened
   * @param trials out of how many
   * @return 0 to 1; 1 without trials
   */
  public static double at95(long count, long trials) {
    if (trials <= 0 || count >= trials) {
      return 1.0;
    }
    double low = (double) count / trials;
    double high = 1.0;
    for (int i = 0; i < HALVINGS; i++) {
      double middle = 0.5 * (low + high);
      if (atMost(count, trials, middle) > LEFT_OVER) {
        low = middle;
      } else {
        high = middle;
      }
    }
    return high;
  }

  /** Probability of at most {@code count} out of {@code trials} at a rate. */
  private static double atMost(long count, long trials, double rate) {
    double term = trials * Math.log1p(-rate);
    double sum = Math.exp(term);
    for (long i = 0; i < count; i++) {
      term += Math.log((double) (trials - i) / (i + 1)) + Math.log(rate) - Math.log1p(-rate);
      sum += Math.exp(term);
    }
    return sum;
  }
}
