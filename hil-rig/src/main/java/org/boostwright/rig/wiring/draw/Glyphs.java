package org.boostwright.rig.wiring.draw;

import static org.boostwright.rig.wiring.draw.Shape.bow;
import static org.boostwright.rig.wiring.draw.Shape.circle;
import static org.boostwright.rig.wiring.draw.Shape.dashed;
import static org.boostwright.rig.wiring.draw.Shape.filled;
import static org.boostwright.rig.wiring.draw.Shape.line;
import static org.boostwright.rig.wiring.draw.Shape.outline;
import static org.boostwright.rig.wiring.draw.Shape.rectangle;

import java.util.ArrayList;
import java.util.List;
import org.boostwright.rig.wiring.Part;
import org.boostwright.rig.wiring.Symbol;
import org.boostwright.rig.wiring.Symbol.Body;
import org.boostwright.rig.wiring.Symbol.BoxShape;

/** The strokes of each symbol, after IEC 60617 (from memory). */
final class Glyphs {
  private Glyphs() {}

  /** Strokes of a part in place. */
  static List<Shape> of(Part part) {
    List<Shape> placed = new ArrayList<>();
    BoxShape box = part.box();
    List<Shape> raw = box == null ? of(part.symbol()) : box(box);
    for (Shape shape : raw) {
      placed.add(shape.placed(part.turn(), part.at().x(), part.at().y()));
    }
    if (part.symbol() == Symbol.LINK && part.fitted()) {
      placed.add(line(1.8, 0, 2.2, 0).placed(part.turn(), part.at().x(), part.at().y()));
    }
    return placed;
  }

  private static List<Shape> of(Symbol symbol) {
    return switch (symbol) {
      case RESISTOR -> List.of(leads(1), rightLead(3), rectangle(1, -0.5, 3, 0.5));
      case CAPACITOR ->
          List.of(leads(1.75), rightLead(2.25), line(1.75, -1, 1.75, 1), line(2.25, -1, 2.25, 1));
      case POLAR_CAPACITOR ->
          List.of(
              leads(1.6),
              rightLead(2.4),
              rectangle(1.6, -1, 1.9, 1),
              filled(2.1, -1, 2.4, -1, 2.4, 1, 2.1, 1),
              line(0.8, -0.8, 1.3, -0.8),
              line(1.05, -1.05, 1.05, -0.55));
      case INDUCTOR ->
          List.of(
              leads(0.5),
              rightLead(3.5),
              bow(0.5, 1.25, 0),
              bow(1.25, 2, 0),
              bow(2, 2.75, 0),
              bow(2.75, 3.5, 0));
      case FUSE -> List.of(line(0, 0, 4, 0), rectangle(1, -0.4, 3, 0.4));
      case SWITCH ->
          List.of(
              leads(1),
              rightLead(3),
              circle(1.1, 0, 0.12),
              circle(2.9, 0, 0.12),
              line(1.2, -0.05, 2.85, -1));
      case LINK ->
          List.of(
              leads(1), rightLead(3), rectangle(1, -0.4, 1.8, 0.4), rectangle(2.2, -0.4, 3, 0.4));
      case DIODE -> diode(line(2.8, -0.8, 2.8, 0.8));
      case ZENER -> diode(line(2.4, -0.8, 2.8, -0.8, 2.8, 0.8));
      case SCHOTTKY -> diode(line(2.4, -0.5, 2.4, -0.8, 2.8, -0.8, 2.8, 0.8, 3.2, 0.8, 3.2, 0.5));
      case TVS -> diode(line(2.4, -0.8, 2.8, -0.8, 2.8, 0.8, 3.2, 0.8));
      case VALVE_COIL ->
          List.of(
              line(0, 0, 0.5, 0),
              line(4.5, 0, 5, 0),
              rectangle(0.5, -1, 4.5, 1),
              bow(0.9, 1.7, 0.3),
              bow(1.7, 2.5, 0.3),
              bow(2.5, 3.3, 0.3),
              bow(3.3, 4.1, 0.3),
              line(0.5, 0, 0.9, 0, 0.9, 0.3),
              line(4.5, 0, 4.1, 0, 4.1, 0.3));
      case NMOS -> mosfet(true);
      case PMOS -> mosfet(false);
      case OPAMP ->
          List.of(
              outline(1, -4, 7, 0, 1, 4),
              line(0, -2, 1, -2),
              line(0, 2, 1, 2),
              line(7, 0, 8, 0),
              line(4, -4, 4, -2),
              line(4, 4, 4, 2),
              line(1.4, -2, 2.2, -2),
              line(1.8, -2.4, 1.8, -1.6),
              line(1.4, 2, 2.2, 2));
      case SCHMITT ->
          List.of(
              outline(1, -2.5, 5, 0, 1, 2.5),
              line(0, 0, 1, 0),
              line(5, 0, 6, 0),
              line(3, -3, 3, -1.25),
              line(3, 3, 3, 1.25),
              line(1.4, 0.5, 2.4, 0.5, 2.4, -0.5, 3, -0.5),
              line(1.9, 0.5, 1.9, -0.5, 2.4, -0.5));
      case OPTO -> opto();
      case RELAY ->
          List.of(
              line(0, -3, 0, -1.5),
              line(0, 3, 0, 1.5),
              rectangle(-1.2, -1.5, 1.2, 1.5),
              line(-1.2, 0.8, 1.2, -0.8),
              line(6, -3, 6, -1.2),
              line(6, 3, 6, 1.1, 4.9, -1),
              dashed(1.2, 0, 5.4, 0));
      case TERMINAL -> List.of(circle(-0.35, 0, 0.35));
      case BOX -> List.of();
    };
  }

  private static Shape leads(double to) {
    return line(0, 0, to, 0);
  }

  private static Shape rightLead(double from) {
    return line(from, 0, 4, 0);
  }

  private static List<Shape> diode(Shape bar) {
    return List.of(
        line(0, 0, 1.3, 0), line(2.8, 0, 4, 0), filled(1.3, -0.8, 2.8, 0, 1.3, 0.8), bar);
  }

  /** Enhancement MOSFET with its body diode; N has its drain above, P its source. */
  private static List<Shape> mosfet(boolean n) {
    List<Shape> shapes = new ArrayList<>();
    shapes.add(line(0, 0, 1.7, 0));
    shapes.add(line(1.7, -1.4, 1.7, 1.4));
    shapes.add(line(2.2, -1.7, 2.2, -0.75));
    shapes.add(line(2.2, -0.45, 2.2, 0.45));
    shapes.add(line(2.2, 0.75, 2.2, 1.7));
    shapes.add(line(2.2, -1.2, 4, -1.2, 4, -3));
    shapes.add(line(2.2, 1.2, 4, 1.2, 4, 3));
    shapes.add(line(2.2, 0, 3.2, 0, 3.2, n ? 1.2 : -1.2));
    shapes.add(n ? filled(2.3, 0, 3, -0.3, 3, 0.3) : filled(3.1, 0, 2.4, -0.3, 2.4, 0.3));
    // The body diode conducts towards the drain of an N type's upper end and away from a P type's.
    shapes.add(line(4, -1.2, 5, -1.2, 5, 1.2, 4, 1.2));
    shapes.add(filled(4.6, 0.4, 5.4, 0.4, 5, -0.3));
    shapes.add(line(4.6, -0.3, 5.4, -0.3));
    return shapes;
  }

  private static List<Shape> opto() {
    return List.of(
        rectangle(1, -3, 8, 3),
        line(0, -2, 2.5, -2, 2.5, -0.7),
        filled(1.8, -0.7, 3.2, -0.7, 2.5, 0.6),
        line(1.8, 0.6, 3.2, 0.6),
        line(2.5, 0.6, 2.5, 2, 0, 2),
        line(3.6, -0.5, 4.8, -0.5),
        filled(4.8, -0.5, 4.4, -0.7, 4.4, -0.3),
        line(3.6, 0.4, 4.8, 0.4),
        filled(4.8, 0.4, 4.4, 0.2, 4.4, 0.6),
        line(5.6, -1.2, 5.6, 1.2),
        line(5.6, -0.5, 7, -1.3, 7, -2, 9, -2),
        line(5.6, 0.5, 7, 1.3, 7, 2, 9, 2),
        filled(7, 1.3, 6.5, 0.75, 6.25, 1.2));
  }

  private static List<Shape> box(BoxShape box) {
    List<Shape> shapes = new ArrayList<>();
    Body body = box.body();
    shapes.add(rectangle(body.left(), body.top(), body.right(), body.bottom()));
    for (Symbol.Spot spot : box.spots()) {
      double y = spot.at().y();
      shapes.add(
          spot.at().x() == 0 ? line(0, y, 1, y) : line(box.width() - 1.0, y, box.width(), y));
    }
    return shapes;
  }
}
