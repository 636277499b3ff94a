package org.boostwright.rig.wiring.draw;

import java.util.ArrayList;
import java.util.List;
import org.boostwright.rig.wiring.Block;
import org.boostwright.rig.wiring.Block.Mark;
import org.boostwright.rig.wiring.Block.Note;
import org.boostwright.rig.wiring.Part;
import org.boostwright.rig.wiring.Point;
import org.boostwright.rig.wiring.Symbol;
import org.boostwright.rig.wiring.Symbol.Body;
import org.boostwright.rig.wiring.Symbol.BoxShape;
import org.boostwright.rig.wiring.draw.Label.Anchor;

/**
 * Where every text and every body of a sheet stands: for drawing, and to prove nothing overlaps.
 */
final class SchematicLayout {
  private static final double REF_SIZE = 1.15;
  private static final double TEXT_SIZE = 1.1;
  private static final double PIN_SIZE = 1.0;

  private SchematicLayout() {}

  /** Room of a part's body in place. */
  static Room body(Part part) {
    BoxShape box = part.box();
    Body b = box == null ? part.symbol().body() : box.body();
    double ax = part.turn().x(b.left(), b.top()) + part.at().x();
    double ay = part.turn().y(b.left(), b.top()) + part.at().y();
    double bx = part.turn().x(b.right(), b.bottom()) + part.at().x();
    double by = part.turn().y(b.right(), b.bottom()) + part.at().y();
    return new Room(Math.min(ax, bx), Math.min(ay, by), Math.max(ax, bx), Math.max(ay, by));
  }

  /** Texts outside bodies. */
  static List<Label> outside(Block block) {
    List<Label> labels = new ArrayList<>();
    for (Part part : block.parts()) {
      labels.addAll(labels(part));
    }
    for (Mark mark : block.marks()) {
      Label label = label(mark);
      if (label != null) {
        labels.add(label);
      }
    }
    for (Note note : block.notes()) {
      labels.add(text(note.at().x(), note.at().y(), Anchor.START, note.text()));
    }
    return labels;
  }

  /** Pin names inside boxes. */
  static List<Label> inside(Block block) {
    List<Label> labels = new ArrayList<>();
    for (Part part : block.parts()) {
      BoxShape box = part.box();
      if (box == null) {
        continue;
      }
      for (Part.Pin pin : part.pins()) {
        boolean left = pin.at().x() == part.at().x();
        labels.add(
            new Label(
                pin.at().x() + (left ? 1.3 : -1.3),
                pin.at().y() + 0.35,
                left ? Anchor.START : Anchor.END,
                PIN_SIZE,
                false,
                pin.name()));
      }
    }
    return labels;
  }

  private static List<Label> labels(Part part) {
    Room b = body(part);
    String value = part.fitted() ? part.text() : part.text() + " (not fitted)";
    if (part.symbol() == Symbol.TERMINAL) {
      boolean left = part.at().x() > b.left();
      double x = left ? b.left() - 0.3 : b.right() + 0.3;
      Anchor anchor = left ? Anchor.END : Anchor.START;
      return value.isEmpty()
          ? List.of(ref(x, part.at().y() + 0.4, anchor, part.ref()))
          : List.of(
              ref(x, part.at().y() - 0.15, anchor, part.ref()),
              text(x, part.at().y() + 1.05, anchor, value));
    }
    if (part.symbol() == Symbol.OPAMP || part.symbol() == Symbol.SCHMITT) {
      // Above the slope of the triangle, right of its supply.
      double x = part.at().x() + (part.symbol() == Symbol.OPAMP ? 5.2 : 4.2);
      double y = part.at().y() - (part.symbol() == Symbol.OPAMP ? 2.8 : 1.9);
      return List.of(ref(x, y, Anchor.START, part.ref()), text(x, y + 1.15, Anchor.START, value));
    }
    double middleX = (b.left() + b.right()) / 2;
    double middleY = (b.top() + b.bottom()) / 2;
    Part.Label side = part.label();
    if (side == Part.Label.AUTO) {
      boolean beside =
          part.symbol().twoEnded() ? part.turn().upright() : part.symbol() != Symbol.BOX;
      if (part.symbol().twoEnded() && !beside) {
        return List.of(
            ref(middleX, b.top() - 0.35, Anchor.MIDDLE, part.ref()),
            text(middleX, b.bottom() + 1.05, Anchor.MIDDLE, value));
      }
      side = beside ? Part.Label.RIGHT : Part.Label.ABOVE;
    }
    return switch (side) {
      case LEFT ->
          List.of(
              ref(b.left() - 0.35, middleY - 0.2, Anchor.END, part.ref()),
              text(b.left() - 0.35, middleY + 1.05, Anchor.END, value));
      case ABOVE ->
          List.of(
              ref(middleX, b.top() - 1.6, Anchor.MIDDLE, part.ref()),
              text(middleX, b.top() - 0.4, Anchor.MIDDLE, value));
      case BELOW ->
          List.of(
              ref(middleX, b.bottom() + 1.1, Anchor.MIDDLE, part.ref()),
              text(middleX, b.bottom() + 2.3, Anchor.MIDDLE, value));
      case RIGHT, AUTO ->
          List.of(
              ref(b.right() + 0.35, middleY - 0.2, Anchor.START, part.ref()),
              text(b.right() + 0.35, middleY + 1.05, Anchor.START, value));
    };
  }

  private static @org.jspecify.annotations.Nullable Label label(Mark mark) {
    Point at = mark.at();
    return switch (mark.kind()) {
      case GROUND, SENSOR_GROUND -> null;
      case RAIL -> text(at.x(), at.y() - 1.25, Anchor.MIDDLE, mark.net());
      case FLAG_LEFT -> text(at.x() - 0.9, at.y() + 0.38, Anchor.END, mark.net());
      case FLAG_RIGHT -> text(at.x() + 0.9, at.y() + 0.38, Anchor.START, mark.net());
    };
  }

  private static Label ref(double x, double y, Anchor anchor, String text) {
    return new Label(x, y, anchor, REF_SIZE, true, text);
  }

  private static Label text(double x, double y, Anchor anchor, String text) {
    return new Label(x, y, anchor, TEXT_SIZE, false, text);
  }
}
