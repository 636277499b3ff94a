package org.boostwright.rig.wiring.draw;

import java.util.ArrayList;
import java.util.List;
import org.boostwright.rig.wiring.Block;
import org.boostwright.rig.wiring.Block.Mark;
import org.boostwright.rig.wiring.Block.Wire;
import org.boostwright.rig.wiring.Part;
import org.boostwright.rig.wiring.Point;
import org.boostwright.rig.wiring.Symbol;

/** Proves that a drawn sheet can be read: no text on a text, a symbol or a wire. */
public final class SheetOverlaps {
  private record Thing(String name, String owner, Room room) {}

  private SheetOverlaps() {}

  /** What lies on what, in words; empty when the sheet can be read. */
  public static List<String> problems(Block block) {
    List<Thing> texts = new ArrayList<>();
    for (Label label : SchematicLayout.outside(block)) {
      texts.add(new Thing("text '" + label.text() + "'", "", label.room()));
    }
    for (Label label : SchematicLayout.inside(block)) {
      texts.add(new Thing("pin name '" + label.text() + "'", "inside", label.room()));
    }
    List<Thing> solid = new ArrayList<>();
    for (Part part : block.parts()) {
      solid.addAll(solid(part));
    }
    for (Mark mark : block.marks()) {
      Room room = SchematicSvg.room(mark);
      solid.add(new Thing("mark " + mark.net() + " at " + mark.at(), "", room));
    }
    List<Thing> lines = lines(block);
    List<String> problems = new ArrayList<>();
    pairs(texts, problems);
    pairs(solid, problems);
    for (Thing text : texts) {
      for (Thing thing : solid) {
        boolean pinNameInItsBox = text.owner().equals("inside") && thing.owner().equals("box");
        if (!pinNameInItsBox) {
          collide(text, thing, problems);
        }
      }
      for (Thing line : lines) {
        collide(text, line, problems);
      }
    }
    for (Thing thing : solid) {
      for (Thing line : lines) {
        collide(thing, line, problems);
      }
    }
    return problems;
  }

  /** What a part covers: its body, a little smaller so that its own pins may touch it. */
  private static List<Thing> solid(Part part) {
    Room b = SchematicLayout.body(part);
    if (part.symbol() == Symbol.OPAMP || part.symbol() == Symbol.SCHMITT) {
      // A triangle: its left half reaches further up and down than its right half.
      double x = part.at().x();
      double y = part.at().y();
      double width = b.right() - b.left();
      double half = (b.bottom() - b.top()) / 2;
      return List.of(
          new Thing(
              part.ref(), "", new Room(b.left() + 0.1, y - half + 0.3, x + 1.6, y + half - 0.3)),
          new Thing(
              part.ref() + " tip",
              "",
              new Room(x + 1.6, y - half * 0.3, b.left() + width * 0.68, y + half * 0.3)));
    }
    String owner = part.symbol() == Symbol.BOX ? "box" : "";
    return List.of(
        new Thing(
            part.ref(),
            owner,
            new Room(b.left() + 0.1, b.top() + 0.1, b.right() - 0.1, b.bottom() - 0.1)));
  }

  private static List<Thing> lines(Block block) {
    List<Thing> lines = new ArrayList<>();
    double half = 0.08;
    for (Wire wire : block.wires()) {
      for (int i = 1; i < wire.points().size(); i++) {
        Point a = wire.points().get(i - 1);
        Point b = wire.points().get(i);
        lines.add(
            new Thing(
                "wire " + wire.net(),
                "",
                new Room(
                    Math.min(a.x(), b.x()) - half,
                    Math.min(a.y(), b.y()) - half,
                    Math.max(a.x(), b.x()) + half,
                    Math.max(a.y(), b.y()) + half)));
      }
    }
    return lines;
  }

  private static void pairs(List<Thing> things, List<String> problems) {
    for (int i = 0; i < things.size(); i++) {
      for (int j = i + 1; j < things.size(); j++) {
        collide(things.get(i), things.get(j), problems);
      }
    }
  }

  private static void collide(Thing a, Thing b, List<String> problems) {
    // The ends of a mark and of a wire meet where they join.
    boolean joined = a.name().startsWith("mark") && b.name().startsWith("wire");
    if (!joined && a.room().overlaps(b.room())) {
      problems.add(a.name() + " lies on " + b.name());
    }
  }
}
