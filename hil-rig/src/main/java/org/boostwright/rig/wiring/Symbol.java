package org.boostwright.rig.wiring;

import java.util.ArrayList;
import java.util.List;

/**
 * Schematic symbols: their pins and the room their body takes, in grid units, undisturbed by any
 * turn. Shapes follow IEC 60617 (from memory); how they are stroked is the drawing's business.
 */
public enum Symbol {
  RESISTOR(body(0.9, -0.6, 3.1, 0.6), pin("1", 0, 0), pin("2", 4, 0)),
  CAPACITOR(body(1.5, -1, 2.5, 1), pin("1", 0, 0), pin("2", 4, 0)),
  POLAR_CAPACITOR(body(1.3, -1, 2.6, 1), pin("1", 0, 0), pin("2", 4, 0)),
  INDUCTOR(body(0.4, -0.6, 3.6, 0.3), pin("1", 0, 0), pin("2", 4, 0)),
  FUSE(body(0.9, -0.5, 3.1, 0.5), pin("1", 0, 0), pin("2", 4, 0)),
  SWITCH(body(0.8, -1.2, 3.2, 0.3), pin("1", 0, 0), pin("2", 4, 0)),
  /** Two solder pads: a link that is fitted or left open. */
  LINK(body(0.9, -0.5, 3.1, 0.5), pin("1", 0, 0), pin("2", 4, 0)),
  DIODE(body(1.2, -0.9, 2.9, 0.9), pin("A", 0, 0), pin("K", 4, 0)),
  ZENER(body(1.2, -0.9, 2.9, 0.9), pin("A", 0, 0), pin("K", 4, 0)),
  SCHOTTKY(body(1.2, -0.9, 2.9, 0.9), pin("A", 0, 0), pin("K", 4, 0)),
  TVS(body(1.2, -0.9, 2.9, 0.9), pin("A", 0, 0), pin("K", 4, 0)),
  /** The valve's coil: inductance with its winding resistance. */
  VALVE_COIL(body(0.4, -1.1, 4.6, 1.1), pin("1", 0, 0), pin("2", 5, 0)),
  NMOS(body(1.5, -1.8, 5.5, 1.8), pin("G", 0, 0), pin("D", 4, -3), pin("S", 4, 3)),
  PMOS(body(1.5, -1.8, 5.5, 1.8), pin("G", 0, 0), pin("S", 4, -3), pin("D", 4, 3)),
  OPAMP(
      body(1, -4, 7, 4),
      pin("P", 0, -2),
      pin("N", 0, 2),
      pin("O", 8, 0),
      pin("V+", 4, -4),
      pin("V-", 4, 4)),
  SCHMITT(body(1, -2.5, 5, 2.5), pin("A", 0, 0), pin("Y", 6, 0), pin("V+", 3, -3), pin("V-", 3, 3)),
  OPTO(body(1, -3, 8, 3), pin("A", 0, -2), pin("K", 0, 2), pin("C", 9, -2), pin("E", 9, 2)),
  RELAY(
      body(-1.3, -1.6, 6.5, 1.6),
      pin("A1", 0, -3),
      pin("A2", 0, 3),
      pin("11", 6, 3),
      pin("14", 6, -3)),
  /** One place where the sheet meets a connector, a header pin or a device outside. */
  TERMINAL(body(-0.8, -0.4, 0, 0.4), pin("1", 0, 0)),
  /** A rectangle with named pins; the pins come from a {@link BoxShape}. */
  BOX(body(0, 0, 0, 0));

  /**
   * Room taken by a body.
   *
   * @param left grid units
   * @param top grid units
   * @param right grid units
   * @param bottom grid units
   */
  public record Body(double left, double top, double right, double bottom) {}

  /**
   * A pin of the symbol.
   *
   * @param name as in netlists and paths
   * @param at place relative to the origin
   */
  public record Spot(String name, Point at) {}

  private final Body body;
  private final List<Spot> spots;

  Symbol(Body body, Spot... spots) {
    this.body = body;
    this.spots = List.of(spots);
  }

  /** Room the untouched body takes; empty for {@link #BOX}. */
  public Body body() {
    return body;
  }

  /** The pins in netlist order. */
  public List<Spot> spots() {
    return spots;
  }

  /** True for the two-ended symbols that are four or five units long. */
  public boolean twoEnded() {
    return spots.size() == 2;
  }

  private static Body body(double left, double top, double right, double bottom) {
    return new Body(left, top, right, bottom);
  }

  private static Spot pin(String name, int x, int y) {
    return new Spot(name, new Point(x, y));
  }

  /**
   * A box with named pins on its left and right side, two grid units apart.
   *
   * @param left pin names from the top, empty text for a gap
   * @param right pin names from the top, empty text for a gap
   * @param width from the left pins to the right pins, grid units
   */
  public record BoxShape(List<String> left, List<String> right, int width) {
    /** The pins, left side first. */
    public List<Spot> spots() {
      List<Spot> all = new ArrayList<>();
      for (int i = 0; i < left.size(); i++) {
        if (!left.get(i).isEmpty()) {
          all.add(new Spot(left.get(i), new Point(0, 2 * i)));
        }
      }
      for (int i = 0; i < right.size(); i++) {
        if (!right.get(i).isEmpty()) {
          all.add(new Spot(right.get(i), new Point(width, 2 * i)));
        }
      }
      return all;
    }

    /** The room of the rectangle. */
    public Body body() {
      return new Body(1, -1.5, width - 1.0, 2.0 * Math.max(left.size(), right.size()) - 0.5);
    }
  }
}
