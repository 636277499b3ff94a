package org.boostwright.rig.wiring.draw;

import org.boostwright.core.settings.ActuatorLayout;
import org.boostwright.rig.wiring.Plumbing;
import org.boostwright.rig.wiring.Plumbing.Hose;
import org.boostwright.rig.wiring.Plumbing.Port;
import org.boostwright.rig.wiring.Plumbing.Position;
import org.boostwright.rig.wiring.draw.Label.Anchor;

/**
 * Draws the hoses for both positions of the valve: the path that carries air is heavy with arrows,
 * what is shut is thin. The valve's own symbol follows ISO 1219-1 (from memory).
 */
public final class PlumbingSvg {
  private static final double PANEL_WIDTH = 66;
  private static final double HEAVY = 3.6;
  private static final double THIN = 1.2;

  private PlumbingSvg() {}

  /** The drawing for a way in which the gate is moved. */
  public static String of(ActuatorLayout layout) {
    Svg svg = new Svg();
    String title =
        layout == ActuatorLayout.EXTERNAL_GATE
            ? "Plumbing of the boost valve, external gate"
            : "Plumbing of the boost valve";
    svg.label(new Label(2, 2.6, Anchor.START, 1.6, true, title));
    double x = 2;
    for (Position position : Position.values()) {
      panel(svg, x, position, layout);
      x += PANEL_WIDTH + 3;
    }
    double y = 49.5;
    svg.label(
        new Label(
            2,
            y,
            Anchor.START,
            1.1,
            false,
            "Heavy line with arrows: air moves here. Thin line: shut. Coil off always means that boost opens the wastegate at spring pressure."));
    svg.label(
        new Label(
            2,
            y + 2,
            Anchor.START,
            1.1,
            false,
            "CAUTION: a hose off the actuator or a blocked hose at SUPPLY leaves the wastegate shut whatever the valve does."));
    return svg.document(new Room(0, 0, x + 0, y + 4), title);
  }

  private static void panel(Svg svg, double x, Position position, ActuatorLayout layout) {
    boolean external = layout == ActuatorLayout.EXTERNAL_GATE;
    svg.shape(Shape.line(x, 4, x + PANEL_WIDTH, 4, x + PANEL_WIDTH, 47, x, 47, x, 4), 1.0);
    svg.label(new Label(x + 2, 6.6, Anchor.START, 1.35, true, position.words()));
    engine(svg, x);
    if (external) {
      ExternalGate.draw(svg, x, position == Position.REST);
    } else {
      actuator(svg, x, position);
    }
    valve(svg, x, position);
    for (Hose hose : Plumbing.HOSES) {
      hose(svg, x, hose, Plumbing.flows(hose, position), position, external);
    }
  }

  /** Air path along the bottom: filter, compressor, cooler, throttle, manifold. */
  private static void engine(Svg svg, double x) {
    double y = 41;
    double[][] boxes = {{2, 9}, {13, 24}, {29, 38}, {42, 50}, {54, 64}};
    String[] names = {"air filter", "compressor", "charge cooler", "throttle", "manifold"};
    for (int i = 0; i < boxes.length; i++) {
      svg.shape(Shape.rectangle(x + boxes[i][0], y - 2, x + boxes[i][1], y + 2), 1.4);
      svg.label(
          new Label(
              x + (boxes[i][0] + boxes[i][1]) / 2, y + 0.4, Anchor.MIDDLE, 1.0, false, names[i]));
      if (i > 0) {
        double from = x + boxes[i - 1][1];
        double to = x + boxes[i][0];
        svg.shape(Shape.line(from, y - 0.8, to, y - 0.8), 1.2);
        svg.shape(Shape.line(from, y + 0.8, to, y + 0.8), 1.2);
      }
    }
    // Pressure sensor on the manifold, with a hose of its own.
    svg.shape(Shape.rectangle(x + 55, 31, x + 63, 34), 1.4);
    svg.label(new Label(x + 59, 32.9, Anchor.MIDDLE, 1.0, false, "sensor"));
    svg.shape(Shape.line(x + 59, 34, x + 59, 39), 1.6);
    svg.label(new Label(x + 58.2, 37.6, Anchor.END, 1.0, false, "own hose, short"));
  }

  private static void actuator(Svg svg, double x, Position position) {
    // Housing with diaphragm and spring; the rod moves out when boost acts.
    boolean open = position == Position.REST;
    double shift = open ? 1.6 : 0;
    svg.shape(Shape.rectangle(x + 44, 10, x + 54, 18), 1.4);
    double diaphragm = x + 47 + shift;
    svg.shape(Shape.line(diaphragm, 10, diaphragm, 18), 2.4);
    double right = x + 54;
    double step = (right - diaphragm) / 8;
    double[] spring = new double[18];
    for (int i = 0; i < 9; i++) {
      spring[2 * i] = diaphragm + i * step;
      spring[2 * i + 1] = i == 0 || i == 8 ? 14 : i % 2 == 0 ? 12.6 : 15.4;
    }
    svg.shape(Shape.line(spring), 1.2);
    svg.shape(Shape.line(right, 14, right + 3 + shift, 14), 2.4);
    svg.label(new Label(x + 49, 8.9, Anchor.MIDDLE, 1.1, true, "actuator"));
    svg.label(
        new Label(
            x + 44,
            20,
            Anchor.START,
            1.05,
            false,
            open ? "rod out: wastegate opens" : "spring: wastegate shut"));
    svg.label(
        new Label(
            x + 44, 21.5, Anchor.START, 1.05, false, open ? "at spring pressure" : "boost rises"));
  }

  /** Two squares: left energised, right rest; the one in force stands at the ports. */
  private static void valve(Svg svg, double x, Position position) {
    double top = 24;
    double bottom = 30;
    boolean rest = position == Position.REST;
    double left = rest ? x + 18 : x + 24;
    // Square of the energised position, then of the rest position; the ports stay at x + 24.
    svg.shape(Shape.rectangle(left, top, left + 6, bottom), 1.4);
    svg.shape(Shape.rectangle(left + 6, top, left + 12, bottom), 1.4);
    energisedSquare(svg, left, top, bottom);
    restSquare(svg, left + 6, top, bottom);
    // Coil on the left end, spring on the right end.
    svg.shape(Shape.rectangle(left - 3, top + 1.5, left, bottom - 1.5), 1.4);
    svg.shape(Shape.line(left - 3, bottom - 1.5, left, top + 1.5), 1.2);
    double s = left + 12;
    svg.shape(
        Shape.line(s, 27, s + 0.5, 25.8, s + 1, 28.2, s + 1.5, 25.8, s + 2, 28.2, s + 2.5, 27),
        1.2);
    svg.label(
        new Label(left - 1.5, top - 0.4, Anchor.MIDDLE, 1.05, true, rest ? "coil off" : "coil on"));
    svg.label(new Label(s + 3.2, 27.4, Anchor.START, 1.1, true, "boost valve"));
  }

  private static void energisedSquare(Svg svg, double x, double top, double bottom) {
    arrow(svg, x + 1.5, top, x + 1.5, bottom, 1.4);
    shut(svg, x + 4.5, bottom);
  }

  private static void restSquare(Svg svg, double x, double top, double bottom) {
    arrow(svg, x + 4.5, bottom, x + 1.5, top, 1.4);
    shut(svg, x + 1.5, bottom);
  }

  private static void shut(Svg svg, double x, double y) {
    svg.shape(Shape.line(x, y, x, y - 1.5), 1.4);
    svg.shape(Shape.line(x - 0.7, y - 1.5, x + 0.7, y - 1.5), 1.4);
  }

  private static void hose(
      Svg svg, double x, Hose hose, boolean flows, Position position, boolean external) {
    double port = external ? ExternalGate.PORT_Y : 14;
    double[] way =
        switch (hose.port()) {
          case SUPPLY ->
              new double[] {x + 26.5, 40.2, x + 26.5, 36.5, x + 28.5, 36.5, x + 28.5, 30};
          case ACTUATOR -> new double[] {x + 25.5, 24, x + 25.5, port, x + 44, port};
          case VENT -> new double[] {x + 25.5, 30, x + 25.5, 34, x + 11, 34, x + 11, 40.2};
        };
    boolean backwards = hose.port() == Port.ACTUATOR && position == Position.ENERGISED;
    svg.shape(Shape.line(way), flows ? HEAVY : THIN);
    if (flows) {
      arrowsAlong(svg, way, backwards);
    }
    switch (hose.port()) {
      case SUPPLY -> {
        svg.label(new Label(x + 29.6, 31.6, Anchor.START, 1.05, true, "SUPPLY"));
        svg.label(new Label(x + 30.2, 35.4, Anchor.START, 1.0, false, hose.text()));
      }
      case ACTUATOR -> {
        svg.label(new Label(x + 26.4, 22.6, Anchor.START, 1.05, true, "ACTUATOR"));
        svg.label(new Label(x + 26.4, port - 1.2, Anchor.START, 1.0, false, hose.text()));
      }
      case VENT -> {
        svg.label(new Label(x + 24.4, 31.6, Anchor.END, 1.05, true, "VENT"));
        svg.label(new Label(x + 2, 32.9, Anchor.START, 1.0, false, hose.text()));
      }
    }
  }

  private static void arrowsAlong(Svg svg, double[] way, boolean backwards) {
    for (int i = 2; i < way.length; i += 2) {
      double dx = way[i] - way[i - 2];
      double dy = way[i + 1] - way[i - 1];
      double length = Math.abs(dx) + Math.abs(dy);
      if (length < 4) {
        continue;
      }
      double sign = backwards ? -1 : 1;
      double mx = way[i - 2] + dx * 0.55;
      double my = way[i - 1] + dy * 0.55;
      head(svg, mx, my, sign * dx / length, sign * dy / length, 1.1);
    }
  }

  private static void arrow(Svg svg, double x0, double y0, double x1, double y1, double width) {
    svg.shape(Shape.line(x0, y0, x1, y1), width);
    double length = Math.hypot(x1 - x0, y1 - y0);
    double ux = (x1 - x0) / length;
    double uy = (y1 - y0) / length;
    head(svg, x1 - ux * 0.5, y1 - uy * 0.5, ux, uy, 0.7);
  }

  private static void head(Svg svg, double x, double y, double ux, double uy, double size) {
    svg.shape(
        Shape.filled(
            x + ux * size,
            y + uy * size,
            x - ux * size * 0.6 - uy * size * 0.7,
            y - uy * size * 0.6 + ux * size * 0.7,
            x - ux * size * 0.6 + uy * size * 0.7,
            y - uy * size * 0.6 - ux * size * 0.7),
        1.0);
  }
}
