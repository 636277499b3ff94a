package org.boostwright.core.control;

/**
 * High or low boost. Low at once; high only after the input has asked for it for a second without a
 * break, so that a loose contact or a switch that chatters is low. A lost input reads low.
 */
public final class BoostSelector {
  /** High has to be asked for this long, ns. */
  static final long STEADY_NANOS = 1_000_000_000L;

  private boolean asked;
  private long sinceNanos;

  /** Low. */
  public BoostSelector() {}

  /**
   * Judges one tick.
   *
   * @param highAsked the input asks for high boost
   * @return true for high boost
   */
  public boolean high(long nowNanos, boolean highAsked) {
    if (!highAsked || !asked) {
      asked = highAsked;
      sinceNanos = nowNanos;
      return false;
    }
    if (nowNanos - sinceNanos < STEADY_NANOS) {
      return false;
    }
    // Keeps the age from rolling over in a run of many years.
    sinceNanos = nowNanos - STEADY_NANOS;
    return true;
  }
}
