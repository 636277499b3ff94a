package org.boostwright.rig.link;

/**
 * What came of a fault case.
 *
 * @param id the case
 * @param text the case in words
 * @param verdict what became of it
 * @param reactionMillis time from the fault at the controller's wire to the reaction, ms; NaN when
 *     there was none or none is laid down
 * @param withinMillis longest time allowed, ms; NaN when none is laid down
 * @param peakKpaAbs highest true manifold pressure from injection to the end, kPa absolute
 * @param lateMillis how late the line or the rig was by itself meanwhile, ms
 * @param words what was seen, or why it is invalid
 */
public record CaseOutcome(
    String id,
    String text,
    Verdict verdict,
    double reactionMillis,
    double withinMillis,
    double peakKpaAbs,
    double lateMillis,
    String words) {

  /** What became of a case. Only "passed" is "passed". */
  public enum Verdict {
    PASSED,
    FAILED,
    /**
     * It proves nothing: it could not be brought about, did not take effect, or the line or the rig
     * was so late by itself that what looks wrong may come from that alone.
     */
    INVALID
  }
}
