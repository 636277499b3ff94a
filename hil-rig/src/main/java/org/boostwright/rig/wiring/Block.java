package org.boostwright.rig.wiring;

import java.util.List;

/**
 * One sheet: a part of the circuit that does one job, with everything needed to draw it.
 *
 * @param id file name of its netlist and drawing
 * @param title one line on the sheet
 * @param parts the parts
 * @param wires the drawn wires
 * @param marks ground and rail symbols and flags towards other sheets
 * @param notes text on the sheet
 */
public record Block(
    String id,
    String title,
    List<Part> parts,
    List<Wire> wires,
    List<Mark> marks,
    List<Note> notes) {

  /**
   * A drawn wire.
   *
   * @param net the net it belongs to
   * @param points corners; neighbours share x or y
   */
  public record Wire(String net, List<Point> points) {}

  /**
   * A symbol that joins a net by name.
   *
   * @param kind what is drawn
   * @param net the net
   * @param at where it touches a wire or a pin
   */
  public record Mark(Kind kind, String net, Point at) {
    /** What a mark looks like. */
    public enum Kind {
      GROUND,
      SENSOR_GROUND,
      RAIL,
      FLAG_LEFT,
      FLAG_RIGHT
    }
  }

  /**
   * Text on a sheet.
   *
   * @param at left end of the base line
   * @param text one line
   */
  public record Note(Point at, String text) {}

  /** The part with this designator. */
  public Part part(String ref) {
    for (Part part : parts) {
      if (part.ref().equals(ref)) {
        return part;
      }
    }
    throw new IllegalArgumentException(id + " has no part " + ref);
  }

  /** True when this sheet holds the part. */
  public boolean has(String ref) {
    return parts.stream().anyMatch(part -> part.ref().equals(ref));
  }

  /** This sheet with other parts in the same places. */
  public Block withParts(List<Part> other) {
    return new Block(id, title, List.copyOf(other), wires, marks, notes);
  }
}
