package org.boostwright.rig.logs.correct;

/**
 * What became of one cell of the base duty table.
 *
 * @param demandPct row, percent
 * @param rpm column, 1/min
 * @param oldDuty duty before, fraction
 * @param newDuty duty after, fraction
 * @param seconds settled time that speaks for it, weighted, s
 * @param visits visits that speak for it
 * @param shortKpa mean of target less pressure around it, kPa; NaN where nothing was seen
 * @param confidence 0 nothing known to 1 well known
 * @param expectedKpa expected change of pressure, kPa
 * @param reason why, in words
 */
public record CellChange(
    double demandPct,
    double rpm,
    double oldDuty,
    double newDuty,
    double seconds,
    int visits,
    double shortKpa,
    double confidence,
    double expectedKpa,
    CellReason reason) {

  /** Change, fraction, free of the last bits of a subtraction. */
  public double change() {
    return Math.rint((newDuty - oldDuty) * 1e6) / 1e6;
  }

  /** Seen in the logs. */
  public boolean visited() {
    return reason != CellReason.NEVER_VISITED && reason != CellReason.AT_REST;
  }
}
