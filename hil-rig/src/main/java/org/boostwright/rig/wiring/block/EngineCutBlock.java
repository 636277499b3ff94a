package org.boostwright.rig.wiring.block;

import static org.boostwright.rig.wiring.block.Nets.CUT_REQUEST;
import static org.boostwright.rig.wiring.block.Nets.GND;
import static org.boostwright.rig.wiring.block.Nets.VPROT;

import org.boostwright.rig.wiring.Block;
import org.boostwright.rig.wiring.BlockBuilder;
import org.boostwright.rig.wiring.Part.Label;
import org.boostwright.rig.wiring.PartClasses;
import org.boostwright.rig.wiring.Semiconductors;
import org.boostwright.rig.wiring.Symbol;
import org.boostwright.rig.wiring.Turn;

/**
 * Engine-cut output: a contact free of potential that closes to ask the user's own cut input.
 *
 * <p>At rest, without power and with a dead computer the contact is open: no cut. The link in the
 * coil's feed is left open until the user has decided, because lost power in a bend is a hazard.
 */
final class EngineCutBlock {
  private EngineCutBlock() {}

  static Block build() {
    BlockBuilder b =
        new BlockBuilder("engine-cut", "Engine-cut request (optional, off by default)");
    b.terminalLeft("A1.38", "GPIO20 engine cut", 3, 24, CUT_REQUEST);
    b.part(
        "R401",
        Symbol.RESISTOR,
        PartClasses.RESISTOR,
        1000,
        5,
        24,
        Turn.NONE,
        CUT_REQUEST,
        "Q401_G");
    b.part("R402", Symbol.RESISTOR, PartClasses.RESISTOR, 4700, 11, 26, Turn.CW, "Q401_G", GND);
    b.label("R402", Label.LEFT);
    b.part(
        "Q401",
        Symbol.NMOS,
        Semiconductors.NMOS_POWER,
        "60 V",
        12,
        24,
        Turn.NONE,
        "Q401_G",
        "CUT_COIL",
        GND);
    b.part("JP401", Symbol.LINK, PartClasses.LINK, "link", 26, 4, Turn.CW, VPROT, "CUT_FEED");
    b.notFitted("JP401");
    b.part(
        "K401",
        Symbol.RELAY,
        PartClasses.RELAY,
        "12 V",
        26,
        14,
        Turn.NONE,
        "CUT_FEED",
        "CUT_COIL",
        "CUT_A",
        "CUT_B");
    b.part(
        "D401",
        Symbol.DIODE,
        Semiconductors.DIODE_FLYBACK,
        "200 V, 1 A",
        20,
        16,
        Turn.CCW,
        "CUT_COIL",
        "CUT_FEED");
    b.label("D401", Label.LEFT);
    b.terminalRight("J3.9", "engine cut", 40, 9, "CUT_B");
    b.terminalRight("J3.10", "engine cut", 40, 19, "CUT_A");
    b.wire("A1.38.1 -- R401.1").wire("R401.2 -- Q401.G").wire("R402.1 -- 11,24");
    b.wire("Q401.D -- 16,19 -- 26,19 -- K401.A2").wire("D401.A -- 20,19");
    b.wire("JP401.2 -- K401.A1").wire("D401.K -- 20,10 -- 26,10");
    b.wire("K401.14 |- J3.9.1").wire("K401.11 |- J3.10.1");
    b.rail("JP401.1").ground("R402.2", "Q401.S");
    b.note(
        3,
        36,
        "MAY CUT: all cylinders alike, through the fuel or ignition cut input of the engine's own computer.");
    b.note(
        3,
        38,
        "NEVER: the fuel pump alone, the spark alone, single cylinders. Cutting in a bend can spin the car.");
    return b.build();
  }
}
