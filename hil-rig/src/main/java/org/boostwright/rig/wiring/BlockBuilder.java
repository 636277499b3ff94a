package org.boostwright.rig.wiring;

import java.util.ArrayList;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import org.boostwright.rig.wiring.Block.Mark;
import org.boostwright.rig.wiring.Block.Note;
import org.boostwright.rig.wiring.Block.Wire;
import org.boostwright.rig.wiring.Part.Label;
import org.boostwright.rig.wiring.Part.Pin;
import org.boostwright.rig.wiring.Symbol.BoxShape;
import org.boostwright.rig.wiring.Symbol.Spot;
import org.jspecify.annotations.Nullable;

/**
 * Writes one sheet down: parts with their nets and places, then wires as paths between pins.
 *
 * <p>A path is points joined by {@code --} (straight), {@code -|} (across, then down or up) or
 * {@code |-} (down or up, then across). A point is a pin ({@code R201.2}), a place ({@code 12,4})
 * or a step from the point before ({@code +3,0}). The net of a wire is the net of the first pin on
 * it.
 */
public final class BlockBuilder {
  private final String id;
  private final String title;
  private final Map<String, Part> parts = new LinkedHashMap<>();
  private final List<Wire> wires = new ArrayList<>();
  private final List<Mark> marks = new ArrayList<>();
  private final List<Note> notes = new ArrayList<>();

  /** An empty sheet. */
  public BlockBuilder(String id, String title) {
    this.id = id;
    this.title = title;
  }

  /** Adds a part with a value; nets in the order of the symbol's pins. */
  public BlockBuilder part(
      String ref,
      Symbol symbol,
      PartClass cls,
      double value,
      int x,
      int y,
      Turn turn,
      String... nets) {
    String unit =
        switch (symbol) {
          case RESISTOR -> "Ω";
          case CAPACITOR, POLAR_CAPACITOR -> "F";
          case INDUCTOR -> "H";
          case FUSE -> "A";
          default -> throw new IllegalArgumentException(ref + ": a " + symbol + " has no value");
        };
    return add(ref, symbol, cls, value, Si.people(value, unit), x, y, turn, null, nets);
  }

  /** Adds a part whose text says all. */
  public BlockBuilder part(
      String ref,
      Symbol symbol,
      PartClass cls,
      String text,
      int x,
      int y,
      Turn turn,
      String... nets) {
    return add(ref, symbol, cls, Double.NaN, text, x, y, turn, null, nets);
  }

  /** Adds a box with named pins; nets for the left pins from the top, then the right ones. */
  public BlockBuilder box(
      String ref, PartClass cls, String text, int x, int y, BoxShape shape, String... nets) {
    return add(ref, Symbol.BOX, cls, Double.NaN, text, x, y, Turn.NONE, shape, nets);
  }

  /** Adds a terminal whose wire leaves to the right. */
  public BlockBuilder terminalLeft(String ref, String text, int x, int y, String net) {
    return part(ref, Symbol.TERMINAL, PartClasses.TERMINAL, text, x, y, Turn.NONE, net);
  }

  /** Adds a terminal whose wire leaves to the left. */
  public BlockBuilder terminalRight(String ref, String text, int x, int y, String net) {
    return part(ref, Symbol.TERMINAL, PartClasses.TERMINAL, text, x, y, Turn.MIRROR, net);
  }

  private BlockBuilder add(
      String ref,
      Symbol symbol,
      PartClass cls,
      double value,
      String text,
      int x,
      int y,
      Turn turn,
      @Nullable BoxShape box,
      String... nets) {
    List<Spot> spots = box == null ? symbol.spots() : box.spots();
    if (spots.size() != nets.length) {
      throw new IllegalArgumentException(
          ref + " has " + spots.size() + " pins, not " + nets.length);
    }
    Point at = new Point(x, y);
    List<Pin> pins = new ArrayList<>();
    for (int i = 0; i < nets.length; i++) {
      pins.add(new Pin(spots.get(i).name(), nets[i], at.plus(turn.of(spots.get(i).at()))));
    }
    Part part =
        new Part(ref, symbol, cls, value, text, at, turn, List.copyOf(pins), box, Label.AUTO, true);
    if (parts.put(ref, part) != null) {
      throw new IllegalArgumentException(ref + " stands twice on " + id);
    }
    return this;
  }

  /** Moves the text of a part. */
  public BlockBuilder label(String ref, Label side) {
    Part p = known(ref);
    parts.put(
        ref,
        new Part(
            p.ref(),
            p.symbol(),
            p.partClass(),
            p.value(),
            p.text(),
            p.at(),
            p.turn(),
            p.pins(),
            p.box(),
            side,
            p.fitted()));
    return this;
  }

  /** Marks a place that is left empty unless the user decides otherwise. */
  public BlockBuilder notFitted(String ref) {
    parts.put(ref, known(ref).withFitted(false));
    return this;
  }

  /** Draws a wire along a path, see the class comment. */
  public BlockBuilder wire(String path) {
    String[] words = path.trim().split("\\s+");
    List<Point> points = new ArrayList<>();
    String net = null;
    String link = "";
    for (int i = 0; i < words.length; i++) {
      if (i % 2 == 1) {
        link = words[i];
        continue;
      }
      @Nullable Pin pin = pinOrNull(words[i]);
      Point last = points.isEmpty() ? new Point(0, 0) : points.get(points.size() - 1);
      Point next = pin != null ? pin.at() : place(words[i], last);
      if (pin != null && net == null) {
        net = pin.net();
      }
      if (link.equals("-|")) {
        points.add(new Point(next.x(), last.y()));
      } else if (link.equals("|-")) {
        points.add(new Point(last.x(), next.y()));
      } else if (!link.isEmpty() && !link.equals("--")) {
        throw new IllegalArgumentException(id + ": " + link + " in " + path);
      }
      points.add(next);
    }
    if (net == null) {
      throw new IllegalArgumentException(id + ": no pin on " + path);
    }
    wires.add(new Wire(net, List.copyOf(points)));
    return this;
  }

  /** Ground symbols at pins. */
  public BlockBuilder ground(String... pins) {
    for (String pin : pins) {
      mark(Mark.Kind.GROUND, pin);
    }
    return this;
  }

  /** Sensor-ground symbols at pins. */
  public BlockBuilder sensorGround(String... pins) {
    for (String pin : pins) {
      mark(Mark.Kind.SENSOR_GROUND, pin);
    }
    return this;
  }

  /** A rail symbol at the end of a wire. */
  public BlockBuilder railAt(String net, int x, int y) {
    marks.add(new Mark(Mark.Kind.RAIL, net, new Point(x, y)));
    return this;
  }

  /** A ground symbol at the end of a wire. */
  public BlockBuilder groundAt(String net, int x, int y) {
    marks.add(new Mark(Mark.Kind.GROUND, net, new Point(x, y)));
    return this;
  }

  /** A sensor-ground symbol at the end of a wire. */
  public BlockBuilder sensorGroundAt(String net, int x, int y) {
    marks.add(new Mark(Mark.Kind.SENSOR_GROUND, net, new Point(x, y)));
    return this;
  }

  /** Rail symbols at pins; the rail is the pin's net. */
  public BlockBuilder rail(String... pins) {
    for (String pin : pins) {
      mark(Mark.Kind.RAIL, pin);
    }
    return this;
  }

  /** A flag towards another sheet at a place of the net. */
  public BlockBuilder flag(String net, int x, int y, boolean pointsRight) {
    Mark.Kind kind = pointsRight ? Mark.Kind.FLAG_RIGHT : Mark.Kind.FLAG_LEFT;
    marks.add(new Mark(kind, net, new Point(x, y)));
    return this;
  }

  /** A line of text. */
  public BlockBuilder note(int x, int y, String text) {
    notes.add(new Note(new Point(x, y), text));
    return this;
  }

  /** The finished sheet. */
  public Block build() {
    return new Block(
        id,
        title,
        List.copyOf(parts.values()),
        List.copyOf(wires),
        List.copyOf(marks),
        List.copyOf(notes));
  }

  private void mark(Mark.Kind kind, String pinName) {
    Pin pin = pinOrNull(pinName);
    if (pin == null) {
      throw new IllegalArgumentException(id + ": no pin " + pinName);
    }
    marks.add(new Mark(kind, pin.net(), pin.at()));
  }

  private Part known(String ref) {
    Part part = parts.get(ref);
    if (part == null) {
      throw new IllegalArgumentException(id + " has no part " + ref);
    }
    return part;
  }

  private @Nullable Pin pinOrNull(String word) {
    int dot = word.lastIndexOf('.');
    Part part = dot < 0 ? null : parts.get(word.substring(0, dot));
    return part == null ? null : part.pin(word.substring(dot + 1));
  }

  private Point place(String word, Point from) {
    boolean step = word.startsWith("+");
    String[] xy = (step ? word.substring(1) : word).split(",");
    if (xy.length != 2) {
      throw new IllegalArgumentException(id + ": neither a pin nor a place: " + word);
    }
    Point p = new Point(Integer.parseInt(xy[0]), Integer.parseInt(xy[1]));
    return step ? from.plus(p) : p;
  }
}
