package org.boostwright.rig.logs.pulls;

/**
 * What counts as a pull. A pull begins with the row in which the demand comes to {@code openPct}
 * with the engine running, and ends before the row in which it falls below {@code shutPct} or the
 * recording pauses; a gap of less than {@code mergeSeconds} joins two pulls, with the throttle
 * counted as lifted. What lasts less than {@code leastSeconds} is not listed at all.
 *
 * @param openPct demand that begins a pull, percent
 * @param shutPct demand below which it ends, percent
 * @param mergeSeconds longest lift inside one pull, s
 * @param leastSeconds shortest pull that is listed, s
 */
public record PullRules(double openPct, double shutPct, double mergeSeconds, double leastSeconds) {
  /** Full throttle, 85 % and more (own choice). */
  public static final PullRules FULL_THROTTLE = new PullRules(85.0, 70.0, 0.7, 0.5);

  /**
   * A firm tip-in of an accelerator pedal, for road drives that never see full demand: 45 % and
   * more for a second (own choice).
   */
  public static final PullRules TIP_IN = new PullRules(45.0, 35.0, 0.0, 1.0);
}
