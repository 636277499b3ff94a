package org.boostwright.rig.wiring.draw;

import java.util.Arrays;
import org.boostwright.rig.wiring.Turn;

/**
 * A stroke of a symbol, in grid units.
 *
 * @param kind line, closed outline, filled outline or circle
 * @param xy corners as x, y, x, y; a circle is centre and radius
 */
record Shape(Kind kind, double... xy) {
  /** What is stroked. */
  enum Kind {
    LINE,
    OUTLINE,
    FILLED,
    CIRCLE,
    DASHED
  }

  static Shape line(double... xy) {
    return new Shape(Kind.LINE, xy);
  }

  static Shape outline(double... xy) {
    return new Shape(Kind.OUTLINE, xy);
  }

  static Shape filled(double... xy) {
    return new Shape(Kind.FILLED, xy);
  }

  static Shape dashed(double... xy) {
    return new Shape(Kind.DASHED, xy);
  }

  static Shape circle(double x, double y, double radius) {
    return new Shape(Kind.CIRCLE, x, y, radius);
  }

  /** An upright rectangle. */
  static Shape rectangle(double left, double top, double right, double bottom) {
    return outline(left, top, right, top, right, bottom, left, bottom);
  }

  /** A half circle from (x0, y) to (x1, y), bulging upwards, as a fine polyline. */
  static Shape bow(double x0, double x1, double y) {
    int steps = 10;
    double[] xy = new double[2 * (steps + 1)];
    double radius = (x1 - x0) / 2;
    for (int i = 0; i <= steps; i++) {
      double angle = Math.PI * i / steps;
      xy[2 * i] = x0 + radius - radius * Math.cos(angle);
      xy[2 * i + 1] = y - radius * Math.sin(angle);
    }
    return new Shape(Kind.LINE, xy);
  }

  /** This stroke turned about the origin and moved. */
  Shape placed(Turn turn, double dx, double dy) {
    double[] moved = Arrays.copyOf(xy, xy.length);
    int pairs = kind == Kind.CIRCLE ? 1 : xy.length / 2;
    for (int i = 0; i < pairs; i++) {
      moved[2 * i] = turn.x(xy[2 * i], xy[2 * i + 1]) + dx;
      moved[2 * i + 1] = turn.y(xy[2 * i], xy[2 * i + 1]) + dy;
    }
    return new Shape(kind, moved);
  }
}
