package org.boostwright.rig.electrical;

/**
 * Frequency, duty and polarity of a PWM wire from its edges, and whether it stands still.
 *
 * <p>A period runs from one rising edge to the next; duty is the share of it the wire was high. A
 * wire without edges for {@link #STILL_NANOS} is 0 or 1 by its level.
 */
final class PwmCapture {
  /** Slowest PWM of the bench is 15 Hz; twice its period, ns. */
  static final long STILL_NANOS = 134_000_000L;

  private boolean high;
  private boolean seen;
  private long edgeNanos;
  private long riseNanos;
  private long fallNanos;
  private boolean risen;
  private boolean fallen;
  private double periodNanos = Double.NaN;
  private double dutyFraction = Double.NaN;
  private long periods;

  /** The wire's level before its first edge. */
  void level(boolean nowHigh) {
    high = nowHigh;
  }

  /** One edge. */
  void edge(boolean rising, long nanos) {
    boolean still = seen && nanos - edgeNanos >= STILL_NANOS;
    if (still) {
      risen = false;
      fallen = false;
    }
    if (rising) {
      if (risen && fallen && fallNanos - riseNanos > 0L) {
        periodNanos = nanos - riseNanos;
        dutyFraction = (fallNanos - riseNanos) / periodNanos;
        periods++;
      }
      riseNanos = nanos;
      risen = true;
      fallen = false;
    } else {
      fallNanos = nanos;
      fallen = risen;
    }
    high = rising;
    seen = true;
    edgeNanos = nanos;
  }

  private boolean still(long nowNanos) {
    return !seen || nowNanos - edgeNanos >= STILL_NANOS || Double.isNaN(dutyFraction);
  }

  /** Duty as the wire shows it, 0 to 1. */
  double dutyFraction(long nowNanos) {
    return still(nowNanos) ? (high ? 1.0 : 0.0) : dutyFraction;
  }

  /** Frequency as the wire shows it, Hz; 0 while it stands still. */
  double hertz(long nowNanos) {
    return still(nowNanos) ? 0.0 : 1e9 / periodNanos;
  }

  /** Whole periods so far. */
  long periods() {
    return periods;
  }
}
