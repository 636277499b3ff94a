package org.boostwright.rig.wiring.block;

import static org.boostwright.rig.wiring.block.Nets.GND;
import static org.boostwright.rig.wiring.block.Nets.P3V3;
import static org.boostwright.rig.wiring.block.Nets.TACH_PIN;
import static org.boostwright.rig.wiring.block.Nets.VPROT;

import org.boostwright.rig.wiring.Block;
import org.boostwright.rig.wiring.BlockBuilder;
import org.boostwright.rig.wiring.PartClasses;
import org.boostwright.rig.wiring.Semiconductors;
import org.boostwright.rig.wiring.Symbol;
import org.boostwright.rig.wiring.Turn;

/**
 * Pulse inputs: 5 to 12 V square pulses of a tach or speed output, and the primary of an ignition
 * coil with its 200 to 400 V spikes behind an optocoupler.
 */
final class PulseInputBlock {
  private PulseInputBlock() {}

  static Block tach() {
    BlockBuilder b =
        new BlockBuilder("tach-input", "Engine speed from a tach output, 5 or 12 V pulses");
    square(b, "J3.1", "tach output", "TACH", 810);
    b.part("JP812", Symbol.LINK, PartClasses.LINK, "tach", 48, 18, Turn.NONE, "TACH_OUT", TACH_PIN);
    b.terminalRight("A1.29", "GPIO5 engine speed", 56, 18, TACH_PIN);
    b.wire("R815.2 -- JP812.1").wire("JP812.2 -- A1.29.1");
    b.note(
        3,
        30,
        "JP811 only for a tach output that pulls to ground and needs a pull-up. Fit JP812 or JP822, never both.");
    return b.build();
  }

  static Block road() {
    BlockBuilder b = new BlockBuilder("road-input", "Road speed from 5 or 12 V pulses (optional)");
    square(b, "J3.4", "road speed", "ROAD", 830);
    b.terminalRight("A1.31", "GPIO6 road speed", 50, 18, "ROAD_OUT");
    b.wire("R835.2 -- A1.31.1");
    return b.build();
  }

  private static void square(BlockBuilder b, String pin, String words, String net, int base) {
    String in = net + "_IN";
    String node = net + "_RC";
    String out = net + "_OUT";
    String r = "R" + (base + 1);
    String jp = "JP" + (base + 1);
    String series = "R" + (base + 2);
    String shunt = "R" + (base + 3);
    String c = "C" + (base + 1);
    String d = "D" + (base + 1);
    String u = "U" + (base + 1);
    String end = "R" + (base + 5);
    b.terminalLeft(pin, words, 3, 18, in);
    b.part(r, Symbol.RESISTOR, PartClasses.RESISTOR, 10e3, 7, 4, Turn.CW, VPROT, net + "_PULL");
    b.part(jp, Symbol.LINK, PartClasses.LINK, "link", 7, 10, Turn.CW, net + "_PULL", in)
        .notFitted(jp);
    b.part(series, Symbol.RESISTOR, PartClasses.RESISTOR, 22e3, 12, 18, Turn.NONE, in, node);
    b.part(shunt, Symbol.RESISTOR, PartClasses.RESISTOR, 33e3, 18, 20, Turn.CW, node, GND);
    b.part(c, Symbol.CAPACITOR, PartClasses.CAPACITOR, 4.7e-9, 25, 20, Turn.CW, node, GND);
    b.part(d, Symbol.SCHOTTKY, Semiconductors.SCHOTTKY_CLAMP, "", 25, 16, Turn.CCW, node, P3V3);
    b.part(
        u,
        Symbol.SCHMITT,
        Semiconductors.SCHMITT,
        "3.3 V",
        33,
        18,
        Turn.NONE,
        node,
        net + "_SQUARE",
        P3V3,
        GND);
    b.part(
        end, Symbol.RESISTOR, PartClasses.RESISTOR, 1000, 41, 18, Turn.NONE, net + "_SQUARE", out);
    b.wire(pin + ".1 -- " + series + ".1").wire(r + ".2 -- " + jp + ".1").wire(jp + ".2 -- 7,18");
    b.wire(series + ".2 -- " + u + ".A").wire(shunt + ".1 -- 18,18").wire(c + ".1 -- 25,18");
    b.wire(d + ".A -- 25,18").wire(u + ".Y -- " + end + ".1");
    b.rail(r + ".1", d + ".K", u + ".V+").ground(shunt + ".2", c + ".2", u + ".V-");
  }

  static Block coil() {
    BlockBuilder b =
        new BlockBuilder(
            "tach-coil", "Engine speed from the primary of an ignition coil, isolated");
    b.terminalLeft("J3.2", "coil negative, 400 V!", 3, 10, "IGN_NEG");
    b.terminalLeft("J3.3", "engine ground", 3, 18, "ENGINE_GND");
    b.part(
        "R821",
        Symbol.RESISTOR,
        PartClasses.RESISTOR_HIGH_VOLTAGE,
        10e3,
        5,
        10,
        Turn.NONE,
        "IGN_NEG",
        "IGN_A");
    b.part(
        "R822",
        Symbol.RESISTOR,
        PartClasses.RESISTOR_HIGH_VOLTAGE,
        12e3,
        11,
        10,
        Turn.NONE,
        "IGN_A",
        "IGN_B");
    b.part(
        "D821",
        Symbol.ZENER,
        Semiconductors.ZENER_TACH,
        "5.6 V",
        21,
        10,
        Turn.HALF,
        "IGN_LED",
        "IGN_B");
    b.part(
        "D822",
        Symbol.DIODE,
        Semiconductors.DIODE_SIGNAL,
        "",
        24,
        16,
        Turn.CCW,
        "ENGINE_GND",
        "IGN_LED");
    b.part(
        "U821",
        Symbol.OPTO,
        Semiconductors.OPTOCOUPLER,
        "3.75 kV",
        32,
        14,
        Turn.NONE,
        "IGN_LED",
        "ENGINE_GND",
        "OPTO_OUT",
        GND);
    b.label("U821", org.boostwright.rig.wiring.Part.Label.ABOVE);
    b.part("R823", Symbol.RESISTOR, PartClasses.RESISTOR, 47e3, 46, 5, Turn.CW, P3V3, "OPTO_OUT");
    b.part(
        "C822", Symbol.CAPACITOR, PartClasses.CAPACITOR, 10e-9, 46, 15, Turn.CW, "OPTO_OUT", GND);
    b.part(
        "U822",
        Symbol.SCHMITT,
        Semiconductors.SCHMITT,
        "3.3 V",
        54,
        12,
        Turn.NONE,
        "OPTO_OUT",
        "OPTO_SQUARE",
        P3V3,
        GND);
    b.part(
        "R824",
        Symbol.RESISTOR,
        PartClasses.RESISTOR,
        1000,
        62,
        12,
        Turn.NONE,
        "OPTO_SQUARE",
        "OPTO_END");
    b.part("JP822", Symbol.LINK, PartClasses.LINK, "coil", 69, 12, Turn.NONE, "OPTO_END", TACH_PIN)
        .notFitted("JP822");
    b.flag(TACH_PIN, 75, 12, true);
    b.wire("J3.2.1 -- R821.1").wire("R821.2 -- R822.1").wire("R822.2 -- D821.K");
    b.wire("D821.A |- 24,12 -- U821.A").wire("D822.K -- 24,12");
    b.wire("J3.3.1 -- 30,18 -- 30,16 -- U821.K").wire("D822.A -- 24,18");
    b.wire("U821.C -- U822.A").wire("R823.2 -- 46,12").wire("C822.1 -- 46,12");
    b.wire("U822.Y -- R824.1").wire("R824.2 -- JP822.1").wire("JP822.2 -- 75,12");
    b.rail("R823.1", "U822.V+").ground("U821.E", "C822.2", "U822.V-");
    b.note(
        3,
        26,
        "CAUTION: 400 V. Left of the optocoupler keep 6 mm from everything else; R821 and R822 at the connector.");
    return b.build();
  }
}
