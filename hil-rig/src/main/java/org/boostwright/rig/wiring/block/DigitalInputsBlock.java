package org.boostwright.rig.wiring.block;

import static org.boostwright.rig.wiring.block.Nets.COIL_FEED;
import static org.boostwright.rig.wiring.block.Nets.GND;
import static org.boostwright.rig.wiring.block.Nets.P3V3;
import static org.boostwright.rig.wiring.block.Nets.VPROT;

import org.boostwright.rig.wiring.Block;
import org.boostwright.rig.wiring.BlockBuilder;
import org.boostwright.rig.wiring.Part.Label;
import org.boostwright.rig.wiring.PartClasses;
import org.boostwright.rig.wiring.Semiconductors;
import org.boostwright.rig.wiring.Symbol;
import org.boostwright.rig.wiring.Turn;

/**
 * Key, boost selector and spring-only sense as 12 V inputs that read low when a wire is lost, and
 * the warning lamp.
 */
final class DigitalInputsBlock {
  private DigitalInputsBlock() {}

  static Block build() {
    BlockBuilder b =
        new BlockBuilder(
            "digital-inputs", "Key, boost selector, spring-only sense and warning lamp");
    b.terminalLeft("J3.5", "ignition key", 5, 8, "KEY_IN");
    b.terminalLeft("J3.6", "boost selector, 12 V = high", 5, 24, "SELECTOR_IN");
    b.flag(COIL_FEED, 5, 40, false);
    input(b, 8, "KEY_IN", "KEY", 10, "J3.5.1", "A1.15", "GPIO22 key");
    input(b, 24, "SELECTOR_IN", "SELECTOR", 20, "J3.6.1", "A1.16", "GPIO23 boost selector");
    input(b, 40, COIL_FEED, "SPRING", 30, "5,40", "A1.18", "GPIO24 spring-only sense");
    b.terminalLeft("A1.13", "GPIO27 lamp", 55, 20, "LAMP");
    b.part(
        "R1041", Symbol.RESISTOR, PartClasses.RESISTOR, 1000, 57, 20, Turn.NONE, "LAMP", "LAMP_G");
    b.part("R1042", Symbol.RESISTOR, PartClasses.RESISTOR, 10e3, 63, 22, Turn.CW, "LAMP_G", GND)
        .label("R1042", Label.LEFT);
    b.part(
        "Q1041",
        Symbol.NMOS,
        Semiconductors.NMOS_SMALL,
        "",
        64,
        20,
        Turn.NONE,
        "LAMP_G",
        "LAMP_D",
        GND);
    b.part("D1041", Symbol.DIODE, Semiconductors.LED, "LED", 68, 11, Turn.CW, "LAMP_A", "LAMP_D");
    b.part("R1043", Symbol.RESISTOR, PartClasses.RESISTOR, 4700, 68, 5, Turn.CW, VPROT, "LAMP_A");
    b.wire("A1.13.1 -- R1041.1").wire("R1041.2 -- Q1041.G").wire("R1042.1 -- 63,20");
    b.wire("Q1041.D -- D1041.K")
        .wire("D1041.A -- R1043.2")
        .rail("R1043.1")
        .ground("R1042.2", "Q1041.S");
    b.note(53, 32, "The lamp sits in the dashboard: D1041 on J3.11 and J3.12.");
    b.terminalRight("J3.11", "lamp +", 76, 10, "LAMP_A").wire("J3.11.1 -- 68,10");
    b.terminalRight("J3.12", "lamp -", 76, 16, "LAMP_D").wire("J3.12.1 -- 68,16");
    return b.build();
  }

  private static void input(
      BlockBuilder b,
      int y,
      String in,
      String name,
      int base,
      String from,
      String pin,
      String words) {
    String node = name + "_PIN";
    String r1 = "R10" + (base + 1);
    String r2 = "R10" + (base + 2);
    String c = "C10" + (base + 1);
    String d = "D10" + (base + 1);
    b.part(r1, Symbol.RESISTOR, PartClasses.RESISTOR, 22e3, 8, y, Turn.NONE, in, node);
    b.part(r2, Symbol.RESISTOR, PartClasses.RESISTOR, 33e3, 15, y + 2, Turn.CW, node, GND);
    b.part(c, Symbol.CAPACITOR, PartClasses.CAPACITOR, 10e-9, 22, y + 2, Turn.CW, node, GND);
    b.part(d, Symbol.SCHOTTKY, Semiconductors.SCHOTTKY_CLAMP, "", 22, y - 1, Turn.CCW, node, P3V3);
    b.terminalRight(pin, words, 32, y, node);
    b.wire(r1 + ".1 -- " + from).wire(r1 + ".2 -- " + pin + ".1").wire(r2 + ".1 -- 15," + y);
    b.wire(c + ".1 -- 22," + y).wire(d + ".A -- 22," + y);
    b.rail(d + ".K").ground(r2 + ".2", c + ".2");
  }
}
