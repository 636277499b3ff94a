package org.boostwright.core.control;

/**
 * The gear from engine speed over road speed. A ratio within 12 % of a declared one, held for 100
 * ms, is that gear; anything else is unknown (0).
 */
public final class GearFinder {
  static final double TOLERANCE = 0.12;
  static final double HOLD_SECONDS = 0.1;
  static final double MIN_KMH = 5.0;

  private final double[] rpmPerKmh;
  private int candidate;
  private double heldSeconds;

  /**
   * @param rpmPerKmh engine speed over road speed per gear, first gear first; may be empty
   */
  public GearFinder(double[] rpmPerKmh) {
    this.rpmPerKmh = rpmPerKmh.clone();
  }

  /** Gear of this tick, 0 when unknown. */
  public int update(double rpm, double kmh, double dt) {
    int found = 0;
    if (kmh >= MIN_KMH) {
      double ratio = rpm / kmh;
      double best = TOLERANCE;
      for (int i = 0; i < rpmPerKmh.length; i++) {
        double off = Math.abs(ratio / rpmPerKmh[i] - 1.0);
        if (off < best) {
          best = off;
          found = i + 1;
        }
      }
    }
    if (found != candidate) {
      candidate = found;
      heldSeconds = 0.0;
      return 0;
    }
    heldSeconds += dt;
    return heldSeconds >= HOLD_SECONDS ? found : 0;
  }
}
