package org.boostwright.rig.inject;

/**
 * How much of a fault: what its number means and what it may be.
 *
 * @param words what the number is, for people
 * @param unit its unit
 * @param low lowest that is drawn and accepted
 * @param high highest
 * @param usual taken where none is given
 */
public record Amount(String words, String unit, double low, double high, double usual) {
  /** A fault that is there or not. */
  public static final Amount NONE = new Amount("", "", 0.0, 0.0, 0.0);

  /** True for a fault that has no number. */
  public boolean isNone() {
    return low == high;
  }
}
