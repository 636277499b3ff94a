package org.boostwright.rig.result;

/**
 * One measured number with the limits it was judged against.
 *
 * @param id dotted snake_case name, stable, ends in its unit, for example {@code pull.peak_map_kpa}
 * @param text what it is, in words for people, for example "highest manifold pressure"
 * @param value the number; NaN when it could not be measured
 * @param unit see {@link Units}
 * @param low lowest value that passes, NaN when there is none
 * @param high highest value that passes, NaN when there is none
 * @param judgement what became of it
 */
public record Measurement(
    String id,
    String text,
    double value,
    String unit,
    double low,
    double high,
    Judgement judgement) {

  /** A measurement judged against its limits; NaN limits are no limits. */
  public static Measurement judged(
      String id, String text, double value, String unit, double low, double high) {
    return new Measurement(id, text, value, unit, low, high, judge(value, low, high));
  }

  /** A measurement without limits. */
  public static Measurement plain(String id, String text, double value, String unit) {
    return judged(id, text, value, unit, Double.NaN, Double.NaN);
  }

  static Judgement judge(double value, double low, double high) {
    if (Double.isNaN(low) && Double.isNaN(high)) {
      return Judgement.NOT_JUDGED;
    }
    if (Double.isNaN(value)) {
      return Judgement.NOT_MEASURED;
    }
    boolean aboveLow = Double.isNaN(low) || value >= low;
    boolean belowHigh = Double.isNaN(high) || value <= high;
    return aboveLow && belowHigh ? Judgement.PASSED : Judgement.FAILED;
  }
}
