package org.boostwright.rig.wiring;

import java.util.ArrayList;
import java.util.List;
import org.boostwright.rig.wiring.Symbol.BoxShape;
import org.jspecify.annotations.Nullable;

/**
 * One part on one sheet.
 *
 * @param ref designator, unique in the circuit; a terminal's is connector and pin, {@code J2.3}
 * @param symbol how it is drawn and which pins it has
 * @param partClass what the part must be able to do
 * @param value in ohm, farad, henry; NaN where the text says all
 * @param text shown beside the designator
 * @param at origin on the sheet
 * @param turn how the symbol is turned
 * @param pins the pins with their nets, in the symbol's order
 * @param box shape of a {@link Symbol#BOX}
 * @param label where designator and text stand
 * @param fitted false for a place that is left empty unless the user decides otherwise
 */
public record Part(
    String ref,
    Symbol symbol,
    PartClass partClass,
    double value,
    String text,
    Point at,
    Turn turn,
    List<Pin> pins,
    @Nullable BoxShape box,
    Label label,
    boolean fitted) {

  /** Where a part's text stands. */
  public enum Label {
    /** Above and below a lying part, to the right of a standing one. */
    AUTO,
    LEFT,
    RIGHT,
    ABOVE,
    BELOW
  }

  /**
   * A pin on its sheet.
   *
   * @param name name in the symbol
   * @param net the net it belongs to
   * @param at place on the sheet
   */
  public record Pin(String name, String net, Point at) {}

  /** The pin with this name. */
  public Pin pin(String name) {
    for (Pin pin : pins) {
      if (pin.name().equals(name)) {
        return pin;
      }
    }
    throw new IllegalArgumentException(ref + " has no pin " + name);
  }

  /** Net of the pin with this name. */
  public String net(String pinName) {
    return pin(pinName).net();
  }

  /** This part with another value, as a wrong part in the right place. */
  public Part withValue(double ohmFaradHenry) {
    return new Part(
        ref, symbol, partClass, ohmFaradHenry, text, at, turn, pins, box, label, fitted);
  }

  /** This part of another class. */
  public Part withClass(PartClass other) {
    return new Part(ref, symbol, other, value, text, at, turn, pins, box, label, fitted);
  }

  /** This part with its place filled or left empty. */
  public Part withFitted(boolean isFitted) {
    return new Part(ref, symbol, partClass, value, text, at, turn, pins, box, label, isFitted);
  }

  /** This part the wrong way round: the nets of its first two pins exchanged. */
  public Part reversed() {
    List<Pin> swapped = new ArrayList<>(pins);
    swapped.set(0, new Pin(pins.get(0).name(), pins.get(1).net(), pins.get(0).at()));
    swapped.set(1, new Pin(pins.get(1).name(), pins.get(0).net(), pins.get(1).at()));
    return new Part(
        ref, symbol, partClass, value, text, at, turn, List.copyOf(swapped), box, label, fitted);
  }

  /** This part with one pin on another net. */
  public Part rewired(String pinName, String net) {
    List<Pin> moved = new ArrayList<>();
    for (Pin pin : pins) {
      moved.add(pin.name().equals(pinName) ? new Pin(pin.name(), net, pin.at()) : pin);
    }
    return new Part(
        ref, symbol, partClass, value, text, at, turn, List.copyOf(moved), box, label, fitted);
  }
}
