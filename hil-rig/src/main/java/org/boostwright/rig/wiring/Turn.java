package org.boostwright.rig.wiring;

/** How a symbol is turned on its sheet; the symbol's origin (its first pin) stays in place. */
public enum Turn {
  /** As the symbol is defined: left to right. */
  NONE(1, 0, 0, 1),
  /** A quarter turn clockwise: top to bottom. */
  CW(0, -1, 1, 0),
  /** Half a turn: right to left. */
  HALF(-1, 0, 0, -1),
  /** A quarter turn anticlockwise: bottom to top. */
  CCW(0, 1, -1, 0),
  /** Mirrored left to right. */
  MIRROR(-1, 0, 0, 1),
  /** Mirrored top to bottom. */
  FLIP(1, 0, 0, -1);

  private final int xx;
  private final int xy;
  private final int yx;
  private final int yy;

  Turn(int xx, int xy, int yx, int yy) {
    this.xx = xx;
    this.xy = xy;
    this.yx = yx;
    this.yy = yy;
  }

  /** Turned place of a pin given relative to the origin. */
  public Point of(Point p) {
    return new Point(xx * p.x() + xy * p.y(), yx * p.x() + yy * p.y());
  }

  /** Horizontal part of a turned stroke end. */
  public double x(double px, double py) {
    return xx * px + xy * py;
  }

  /** Vertical part of a turned stroke end. */
  public double y(double px, double py) {
    return yx * px + yy * py;
  }

  /** True when a symbol defined left to right ends up standing. */
  public boolean upright() {
    return xx == 0;
  }
}
