package org.boostwright.rig.wiring.draw;

import org.boostwright.rig.wiring.draw.Label.Anchor;

/**
 * An external gate on the exhaust manifold, plumbed to the effect of a single port: the valve on
 * the port below the diaphragm, which opens it; the port on the spring's side open to the air.
 */
final class ExternalGate {
  /** Height of the port below the diaphragm, grid units. */
  static final double PORT_Y = 16;

  private static final double LEFT = 44;
  private static final double RIGHT = 54;
  private static final double TOP = 9;
  private static final double BOTTOM = 18;
  private static final double MIDDLE = 49;
  private static final double SEAT = 22.5;

  private ExternalGate() {}

  /** Draws it in a panel that begins at x. */
  static void draw(Svg svg, double x, boolean open) {
    double lift = open ? 1.4 : 0;
    double diaphragm = 14 - lift;
    svg.shape(Shape.rectangle(x + LEFT, TOP, x + RIGHT, BOTTOM), 1.4);
    svg.shape(Shape.line(x + LEFT, diaphragm, x + RIGHT, diaphragm), 2.4);
    spring(svg, x + MIDDLE, diaphragm);
    // Stem and poppet on the exhaust pipe, which has a gap where the seat is.
    svg.shape(Shape.line(x + MIDDLE, diaphragm, x + MIDDLE, SEAT - lift), 2.4);
    svg.shape(Shape.line(x + MIDDLE - 2, SEAT - lift, x + MIDDLE + 2, SEAT - lift), 3.6);
    svg.shape(Shape.line(x + 42, SEAT, x + MIDDLE - 1.6, SEAT), 1.4);
    svg.shape(Shape.line(x + MIDDLE + 1.6, SEAT, x + 56, SEAT), 1.4);
    svg.shape(Shape.line(x + 42, 25, x + 56, 25), 1.4);
    svg.label(new Label(x + MIDDLE, 24.2, Anchor.MIDDLE, 1.0, false, "exhaust manifold"));
    // The spring's side breathes: an open port, never a cap.
    svg.shape(Shape.line(x + RIGHT, 10.6, x + RIGHT + 1.6, 10.6), 1.6);
    svg.label(new Label(x + MIDDLE, 8.2, Anchor.MIDDLE, 1.1, true, "external gate"));
    side(svg, x, 10.2, "spring's side:", "open to the air");
    side(svg, x, 14.6, "opens here:", "below diaphragm");
    side(
        svg,
        x,
        20.2,
        open ? "lifted: opens at" : "spring: shut,",
        open ? "spring pressure" : "boost rises");
  }

  private static void side(Svg svg, double x, double y, String first, String second) {
    svg.label(new Label(x + RIGHT + 2.2, y, Anchor.START, 0.95, false, first));
    svg.label(new Label(x + RIGHT + 2.2, y + 1.4, Anchor.START, 0.95, false, second));
  }

  private static void spring(Svg svg, double x, double diaphragm) {
    double step = (diaphragm - TOP) / 8;
    double[] line = new double[18];
    for (int i = 0; i < 9; i++) {
      line[2 * i] = i == 0 || i == 8 ? x : i % 2 == 0 ? x - 1.4 : x + 1.4;
      line[2 * i + 1] = TOP + i * step;
    }
    svg.shape(Shape.line(line), 1.2);
  }
}
