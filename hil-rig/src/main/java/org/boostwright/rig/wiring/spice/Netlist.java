package org.boostwright.rig.wiring.spice;

import java.util.List;
import java.util.Locale;
import org.boostwright.core.settings.WiringSettings;
import org.boostwright.rig.wiring.Block;
import org.boostwright.rig.wiring.Part;
import org.boostwright.rig.wiring.Part.Pin;
import org.boostwright.rig.wiring.Si;
import org.boostwright.rig.wiring.Symbol;
import org.boostwright.rig.wiring.block.Blocks;

/** Writes sheets as SPICE lines. Net names stay as they are; ground is node 0. */
public final class Netlist {
  private Netlist() {}

  /** The netlist of one sheet, on its own. */
  public static String of(Block block, WiringSettings settings) {
    return "* "
        + block.title()
        + "\n* Generated from the circuit description; sheet wiring/drawing/"
        + block.id()
        + ".svg\n"
        + lines(block, settings);
  }

  /** The element lines of one sheet. */
  static String lines(Block block, WiringSettings settings) {
    StringBuilder out = new StringBuilder("* --- " + block.id() + "\n");
    for (Part part : block.parts()) {
      String line = line(part, settings);
      if (!line.isEmpty()) {
        out.append(line).append('\n');
      }
    }
    return out.toString();
  }

  private static String line(Part part, WiringSettings settings) {
    if (part.symbol() == Symbol.TERMINAL) {
      return "";
    }
    if (!part.fitted()) {
      return "* " + part.ref() + " not fitted";
    }
    String ref = part.ref();
    String nodes = nodes(part.pins());
    String model = part.partClass().model();
    return switch (part.symbol()) {
      case RESISTOR, CAPACITOR, POLAR_CAPACITOR, INDUCTOR ->
          ref + nodes + " " + Si.spice(part.value());
      case FUSE -> "R" + ref + nodes + " 40m";
      case SWITCH, LINK -> "R" + ref + nodes + " 5m";
      case DIODE, ZENER, SCHOTTKY, TVS -> ref + nodes + " " + model;
      case NMOS -> "M" + ref + ordered(part, "D", "G", "S") + " " + model;
      case PMOS -> "M" + ref + ordered(part, "D", "G", "S") + " " + model;
      case VALVE_COIL -> coil(part, settings);
      case OPAMP, SCHMITT, OPTO, RELAY -> "X" + ref + nodes + " " + model;
      case BOX -> model.isEmpty() ? "* " + ref + nodes + " (no model)" : box(part, model);
      case TERMINAL -> "";
    };
  }

  private static String box(Part part, String model) {
    return "X" + part.ref() + nodes(part.pins()) + " " + model;
  }

  private static String coil(Part part, WiringSettings settings) {
    String middle = part.ref() + "_MID";
    String first = node(part.pins().get(0).net());
    String second = node(part.pins().get(1).net());
    return "L"
        + part.ref()
        + " "
        + first
        + " "
        + middle
        + " "
        + Si.spice(settings.coil().henries())
        + "\nR"
        + part.ref()
        + " "
        + middle
        + " "
        + second
        + " "
        + Si.spice(Blocks.COIL_OHMS);
  }

  private static String nodes(List<Pin> pins) {
    StringBuilder out = new StringBuilder();
    for (Pin pin : pins) {
      out.append(' ').append(node(pin.net()));
    }
    return out.toString();
  }

  private static String ordered(Part part, String... names) {
    StringBuilder out = new StringBuilder();
    for (String name : names) {
      out.append(' ').append(node(part.net(name)));
    }
    return out.toString();
  }

  private static String node(String net) {
    return net.equals("GND") ? "0" : net.toLowerCase(Locale.ROOT);
  }
}
