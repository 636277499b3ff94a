package org.boostwright.rig.link;

/**
 * What came of a fault case.
 *
 * @param id the case
 * @param text the case in words
 * @param verdict what became of it
 * @param reactionMillis time from injection to the reaction, ms; NaN when there was none
 * @param withinMillis longest time allowed, ms; NaN when none is laid down
 * @param peakKpaAbs highest true manifold pressure from injection to the end, kPa absolute
 * @param words what was seen, or why it is invalid
 */
public record CaseOutcome(
    String id,
    String text,
    Verdict verdict,
    double reactionMillis,
    double withinMillis,
    double peakKpaAbs,
    String words) {

  /** What became of a case. Only "passed" is "passed". */
  public enum Verdict {
    PASSED,
    FAILED,
    /** The wire was late by itself, and that alone may explain what looks wrong. */
    DISTURBED,
    /** It could not be brought about, or did not take effect. */
    INVALID
  }
}
