package org.boostwright.rig.wiring.block;

import static org.boostwright.rig.wiring.block.Nets.BAT;
import static org.boostwright.rig.wiring.block.Nets.COIL_FEED;
import static org.boostwright.rig.wiring.block.Nets.COIL_FUSED;
import static org.boostwright.rig.wiring.block.Nets.GND;
import static org.boostwright.rig.wiring.block.Nets.P5S;
import static org.boostwright.rig.wiring.block.Nets.P5V;
import static org.boostwright.rig.wiring.block.Nets.SGND;
import static org.boostwright.rig.wiring.block.Nets.VBAT_F;
import static org.boostwright.rig.wiring.block.Nets.VPROT;

import java.util.List;
import org.boostwright.core.settings.WiringSettings;
import org.boostwright.rig.wiring.Block;
import org.boostwright.rig.wiring.BlockBuilder;
import org.boostwright.rig.wiring.Part.Label;
import org.boostwright.rig.wiring.PartClasses;
import org.boostwright.rig.wiring.Semiconductors;
import org.boostwright.rig.wiring.Symbol;
import org.boostwright.rig.wiring.Symbol.BoxShape;
import org.boostwright.rig.wiring.Turn;

/**
 * Supply: fuse first, load-dump clamp, reverse diode, 5 V for the computer, 5 V of their own for
 * the sensors, and the coil feed through its fuse and the spring-only switch.
 *
 * <p>The clamp stands before the reverse diode and conducts one way only: a reversed battery blows
 * the fuse and nothing else.
 */
final class PowerBlock {
  private PowerBlock() {}

  static Block build(WiringSettings w) {
    BlockBuilder b = new BlockBuilder("power", "Supply, fuses and spring-only switch");
    BoxShape regulator = new BoxShape(List.of("VIN", "GND"), List.of("VOUT"), 11);
    b.terminalLeft("X1.1", "battery +, key on", 4, 6, BAT);
    b.terminalLeft("J1.1", "battery +", 10, 10, VBAT_F);
    b.part("F101", Symbol.FUSE, PartClasses.FUSE, 5, 6, 6, Turn.NONE, BAT, VBAT_F);
    b.part("D101", Symbol.TVS, Semiconductors.TVS_SUPPLY, "24 V", 14, 15, Turn.CCW, GND, VBAT_F);
    b.part(
        "D102",
        Symbol.SCHOTTKY,
        Semiconductors.SCHOTTKY_POWER,
        "60 V, 5 A",
        18,
        6,
        Turn.NONE,
        VBAT_F,
        VPROT);
    b.part(
        "C101",
        Symbol.POLAR_CAPACITOR,
        PartClasses.CAPACITOR_BULK,
        220e-6,
        25,
        9,
        Turn.CW,
        VPROT,
        GND);
    b.box("U101", Semiconductors.BUCK_5V, "12 V to 5.1 V", 34, 6, regulator, VPROT, GND, P5V);
    b.part(
        "C102",
        Symbol.POLAR_CAPACITOR,
        PartClasses.CAPACITOR_BULK,
        470e-6,
        48,
        9,
        Turn.CW,
        P5V,
        GND);
    b.terminalRight("A1.2", "5 V to the computer", 56, 6, P5V);
    b.box("U102", Semiconductors.TRACKER_5V, "sensor supply", 34, 18, regulator, VPROT, GND, P5S);
    b.part("C103", Symbol.CAPACITOR, PartClasses.CAPACITOR, 10e-6, 48, 20, Turn.CW, P5S, SGND);
    b.part("R101", Symbol.RESISTOR, PartClasses.RESISTOR, 1000, 54, 20, Turn.CW, P5S, SGND);
    b.terminalRight("J2.1", "5 V to the sensors", 62, 18, P5S);
    b.part("NT101", Symbol.LINK, PartClasses.LINK, "one place only", 55, 28, Turn.NONE, GND, SGND);
    b.terminalRight("J2.2", "sensor ground", 62, 28, SGND);
    b.terminalLeft("J1.2", "battery -", 4, 24, GND);
    b.terminalRight("A1.6", "ground of the computer", 14, 24, GND);
    b.part(
        "F102",
        Symbol.FUSE,
        PartClasses.FUSE,
        w.driver().fuseAmps(),
        22,
        36,
        Turn.NONE,
        VPROT,
        COIL_FUSED);
    b.terminalLeft("J1.5", "out", 30, 40, COIL_FUSED);
    b.part(
        "S101",
        Symbol.SWITCH,
        PartClasses.SPRING_SWITCH,
        "spring only: open",
        34,
        36,
        Turn.NONE,
        COIL_FUSED,
        COIL_FEED);
    b.terminalRight("J1.6", "back", 42, 40, COIL_FEED);
    b.flag(COIL_FEED, 46, 36, true);
    b.flag(VBAT_F, 15, 3, true);

    b.wire("X1.1.1 -- F101.1")
        .wire("J1.1.1 -- 11,10 -- 11,6")
        .wire("F101.2 -- D102.A")
        .wire("D101.K -- 14,6");
    b.wire("D101.K -- 14,3 -- 15,3");
    b.wire("D102.K -- U101.VIN").wire("C101.1 -- 25,6").wire("D102.K -- 31,6 |- U102.VIN");
    b.wire("U101.VOUT -- A1.2.1").wire("C102.1 -- 48,6");
    b.wire("U102.VOUT -- J2.1.1").wire("C103.1 -- 48,18").wire("R101.1 -- 54,18");
    b.wire("NT101.2 -- J2.2.1").wire("J1.2.1 -- A1.6.1");
    b.wire("U102.VIN -- 31,18 -- 31,33 -| 20,36 -- F102.1");
    b.wire("F102.2 -- S101.1").wire("S101.2 -- 46,36");
    b.wire("J1.5.1 -- 31,40 -- 31,36").wire("J1.6.1 -- 41,40 -- 41,36");
    b.ground("D101.A", "C101.2", "U101.GND", "C102.2", "U102.GND");
    b.sensorGround("C103.2", "R101.2");
    b.label("S101", Label.ABOVE)
        .groundAt(GND, 8, 24)
        .label("NT101", Label.ABOVE)
        .ground("NT101.1")
        .sensorGround("NT101.2");
    b.note(
        4,
        45,
        "F101 stands in the harness, within 20 cm of the battery; F102 on the board. CAUTION: fuse first, then everything else.");
    b.note(
        4,
        47,
        "The spring-only switch breaks the coil feed by hand: open = the car runs on its spring.");
    return b.build();
  }
}
