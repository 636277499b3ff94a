package org.boostwright.rig.wiring.draw;

import java.util.List;
import org.boostwright.rig.wiring.Block;
import org.boostwright.rig.wiring.Block.Mark;
import org.boostwright.rig.wiring.Block.Wire;
import org.boostwright.rig.wiring.Part;
import org.boostwright.rig.wiring.Point;
import org.boostwright.rig.wiring.SheetGeometry;
import org.boostwright.rig.wiring.draw.Label.Anchor;

/** Draws one sheet as SVG. */
public final class SchematicSvg {
  private static final double LINE = 1.4;
  private static final double WIRE = 1.4;

  private SchematicSvg() {}

  /** The drawing of a sheet. */
  public static String of(Block block) {
    Svg svg = new Svg();
    Room room = null;
    for (Wire wire : block.wires()) {
      svg.shape(new Shape(Shape.Kind.LINE, corners(wire)), WIRE);
      for (Point p : wire.points()) {
        room = around(room, new Room(p.x(), p.y(), p.x(), p.y()));
      }
    }
    for (Point p : SheetGeometry.junctions(block)) {
      svg.dot(p.x(), p.y());
    }
    for (Part part : block.parts()) {
      for (Shape shape : Glyphs.of(part)) {
        svg.shape(shape, LINE);
      }
      room = around(room, SchematicLayout.body(part));
    }
    for (Mark mark : block.marks()) {
      for (Shape shape : marks(mark)) {
        svg.shape(shape, LINE);
      }
      room = around(room, room(mark));
    }
    List<Label> outside = SchematicLayout.outside(block);
    for (Label label : outside) {
      svg.label(label);
      room = around(room, label.room());
    }
    SchematicLayout.inside(block).forEach(svg::label);
    if (room == null) {
      throw new IllegalArgumentException(block.id() + " is empty");
    }
    Label title = new Label(room.left(), room.top() - 2, Anchor.START, 1.6, true, block.title());
    svg.label(title);
    svg.label(
        new Label(
            room.left(),
            room.bottom() + 2.2,
            Anchor.START,
            1,
            false,
            "Boostwright wiring: "
                + block.id()
                + ". Netlist: wiring/netlist/"
                + block.id()
                + ".cir"));
    Room page =
        new Room(
            room.left() - 2,
            room.top() - 5,
            Math.max(room.right(), title.room().right()) + 2,
            room.bottom() + 3.5);
    svg.shape(
        Shape.line(
            page.left() + 0.5,
            page.top() + 0.5,
            page.right() - 0.5,
            page.top() + 0.5,
            page.right() - 0.5,
            page.bottom() - 0.5,
            page.left() + 0.5,
            page.bottom() - 0.5,
            page.left() + 0.5,
            page.top() + 0.5),
        1.0);
    return svg.document(page, block.title());
  }

  private static double[] corners(Wire wire) {
    double[] xy = new double[2 * wire.points().size()];
    for (int i = 0; i < wire.points().size(); i++) {
      xy[2 * i] = wire.points().get(i).x();
      xy[2 * i + 1] = wire.points().get(i).y();
    }
    return xy;
  }

  static Room room(Mark mark) {
    double x = mark.at().x();
    double y = mark.at().y();
    return switch (mark.kind()) {
      case GROUND, SENSOR_GROUND -> new Room(x - 1, y, x + 1, y + 1.7);
      case RAIL -> new Room(x - 1, y - 1, x + 1, y);
      case FLAG_LEFT -> new Room(x - 0.7, y - 0.5, x, y + 0.5);
      case FLAG_RIGHT -> new Room(x, y - 0.5, x + 0.7, y + 0.5);
    };
  }

  private static List<Shape> marks(Mark mark) {
    double x = mark.at().x();
    double y = mark.at().y();
    return switch (mark.kind()) {
      case GROUND ->
          List.of(
              Shape.line(x, y, x, y + 0.8),
              Shape.line(x - 1, y + 0.8, x + 1, y + 0.8),
              Shape.line(x - 0.6, y + 1.2, x + 0.6, y + 1.2),
              Shape.line(x - 0.2, y + 1.6, x + 0.2, y + 1.6));
      case SENSOR_GROUND ->
          List.of(
              Shape.line(x, y, x, y + 0.8),
              Shape.outline(x - 0.9, y + 0.8, x + 0.9, y + 0.8, x, y + 1.7));
      case RAIL ->
          List.of(Shape.line(x, y, x, y - 0.9), Shape.line(x - 1, y - 0.9, x + 1, y - 0.9));
      case FLAG_LEFT ->
          List.of(
              Shape.outline(
                  x, y, x - 0.4, y - 0.4, x - 0.7, y - 0.4, x - 0.7, y + 0.4, x - 0.4, y + 0.4));
      case FLAG_RIGHT ->
          List.of(
              Shape.outline(
                  x, y - 0.4, x + 0.3, y - 0.4, x + 0.7, y, x + 0.3, y + 0.4, x, y + 0.4));
    };
  }

  private static Room around(Room room, Room more) {
    return room == null ? more : room.with(more);
  }
}
