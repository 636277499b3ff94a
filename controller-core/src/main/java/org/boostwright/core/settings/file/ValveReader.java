package org.boostwright.core.settings.file;

import org.boostwright.core.settings.ValveSettings;
import org.boostwright.core.table.Axis;
import org.boostwright.core.table.Curve;

/** Reads {@code [valve]}. */
final class ValveReader {
  /** Usable window no wider than about 20 to 80 % duty (common practice, no source). */
  private static final double DEFAULT_LOW = 0.20;

  private static final double DEFAULT_HIGH = 0.80;

  /** Valves of this kind are driven at 26 to 39 Hz (common practice, no source). */
  private static final double DEFAULT_HZ = 30.0;

  private static final Bounds DUTY = new Bounds(0.0, 1.0);

  /** Two duties that are meant to be the same may differ by the last digit somebody wrote. */
  private static final double SAME_DUTY = 1e-4;

  private ValveReader() {}

  static ValveSettings read(Section section) {
    String energised = section.text("energised", "vents_actuator");
    if (energised != null && !energised.equals("vents_actuator")) {
      section.fail(
          "energised",
          "valve_sense",
          "\""
              + energised
              + "\" is not supported: with the coil dead the actuator must see boost, so energised"
              + " must vent it; swap the hoses at the valve and write \"vents_actuator\"");
    }
    double hertz =
        section.number("frequency_hz", DEFAULT_HZ, Quantity.plain("Hz"), new Bounds(10.0, 100.0));
    double low = section.number("window_low_pct", DEFAULT_LOW, Quantity.SHARE, DUTY);
    double high = section.number("window_high_pct", DEFAULT_HIGH, Quantity.SHARE, DUTY);
    Numbers command = CurveReader.axis(section, "command_pct", Quantity.SHARE, DUTY);
    Numbers duty = section.numbers("command_duty_pct", Quantity.SHARE, DUTY);
    double ohms = section.number("coil_ohms", 30.0, Quantity.plain("ohm"), new Bounds(5.0, 200.0));
    Curve straight = new Curve(new Axis(0.0, 1.0), 0.0, 1.0);
    if (!(high - low >= 0.05)) {
      section.fail(
          section.has("window_high_pct") ? "window_high_pct" : "window_low_pct",
          "window_order",
          "the usable duty window runs from "
              + Quantity.SHARE.words(low)
              + " to "
              + Quantity.SHARE.words(high)
              + "; its upper edge must lie at least 5 % above its lower edge");
    } else {
      straight = new Curve(new Axis(0.0, 1.0), low, high);
    }
    Curve curve = straight;
    if (command != null && duty != null) {
      curve = inside(section, command, duty, low, high, straight);
    } else if (section.has("command_pct") != section.has("command_duty_pct")) {
      section.fail(
          section.has("command_pct") ? "command_pct" : "command_duty_pct",
          "axis_missing",
          "command_pct and command_duty_pct belong together; write both or neither");
    }
    return new ValveSettings(hertz, low, high, curve, ohms);
  }

  private static Curve inside(
      Section section, Numbers command, Numbers duty, double low, double high, Curve straight) {
    int last = duty.size() - 1;
    if (command.size() != duty.size() || last < 1) {
      section.fail(
          "command_duty_pct",
          "length_differs",
          "has "
              + duty.size()
              + " entries and command_pct has "
              + command.size()
              + "; give both the same number, two or more");
      return straight;
    }
    if (command.values()[0] != 0.0 || command.values()[last] != 1.0) {
      section.fail(
          "command_pct",
          "command_range",
          "does not run from 0 to 100 %; begin at 0 and end at 100");
      return straight;
    }
    if (!duty.rises(section.reading())) {
      return straight;
    }
    if (!(Math.abs(duty.values()[0] - low) <= SAME_DUTY
        && Math.abs(duty.values()[last] - high) <= SAME_DUTY)) {
      section.fail(
          "command_duty_pct",
          "command_range",
          "runs from "
              + Quantity.SHARE.words(duty.values()[0])
              + " to "
              + Quantity.SHARE.words(duty.values()[last])
              + ", but the usable window from "
              + Quantity.SHARE.words(low)
              + " to "
              + Quantity.SHARE.words(high)
              + "; the ends must be the same");
      return straight;
    }
    double[] duties = duty.values().clone();
    duties[0] = low;
    duties[last] = high;
    return new Curve(new Axis(command.values()), duties);
  }
}
