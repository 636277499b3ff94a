package org.boostwright.rig.wiring.draw;

/**
 * An upright rectangle of a drawing, in grid units.
 *
 * @param left left edge
 * @param top upper edge
 * @param right right edge
 * @param bottom lower edge
 */
record Room(double left, double top, double right, double bottom) {
  /** True when the two share more than an edge. */
  boolean overlaps(Room other) {
    double slack = 0.02;
    return left + slack < other.right
        && other.left + slack < right
        && top + slack < other.bottom
        && other.top + slack < bottom;
  }

  /** The smallest rectangle around both. */
  Room with(Room other) {
    return new Room(
        Math.min(left, other.left),
        Math.min(top, other.top),
        Math.max(right, other.right),
        Math.max(bottom, other.bottom));
  }
}
