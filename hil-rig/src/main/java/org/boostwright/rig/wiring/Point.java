package org.boostwright.rig.wiring;

/**
 * A place on a sheet, in grid units; y grows downwards.
 *
 * @param x grid units to the right
 * @param y grid units down
 */
public record Point(int x, int y) {
  /** This point moved by another. */
  public Point plus(Point by) {
    return new Point(x + by.x, y + by.y);
  }
}
