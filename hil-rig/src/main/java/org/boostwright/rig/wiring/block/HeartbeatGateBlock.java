package org.boostwright.rig.wiring.block;

import static org.boostwright.rig.wiring.block.Nets.COIL_ENABLE;
import static org.boostwright.rig.wiring.block.Nets.COIL_FEED;
import static org.boostwright.rig.wiring.block.Nets.COIL_P;
import static org.boostwright.rig.wiring.block.Nets.GND;
import static org.boostwright.rig.wiring.block.Nets.HEARTBEAT;
import static org.boostwright.rig.wiring.block.Nets.P3V3;
import static org.boostwright.rig.wiring.block.Nets.P5V;
import static org.boostwright.rig.wiring.block.Nets.PERMIT;

import org.boostwright.core.settings.WiringSettings;
import org.boostwright.rig.wiring.Block;
import org.boostwright.rig.wiring.BlockBuilder;
import org.boostwright.rig.wiring.Part.Label;
import org.boostwright.rig.wiring.PartClasses;
import org.boostwright.rig.wiring.Semiconductors;
import org.boostwright.rig.wiring.Symbol;
import org.boostwright.rig.wiring.Turn;

/**
 * Coil supply switch, closed only while the heartbeat runs, the enable pin is high and the permit
 * loop is closed.
 *
 * <p>Q301 makes a swing of 8.2 V out of the heartbeat's edges, C301 passes only its changes, C302
 * keeps them for {@code R304*C302*ln(V/threshold)}. R313 empties the coupling node between edges,
 * so that C301 does not lengthen the hold time when the pump stops high. A heartbeat stuck at
 * either level is no change. Q302, Q303 and the permit loop lie in series: any of them open and the
 * high-side switch Q304 is open. Hold time after the last edge: 30 to 100 ms over tolerances and
 * temperature.
 */
final class HeartbeatGateBlock {
  private HeartbeatGateBlock() {}

  static Block build(WiringSettings w) {
    WiringSettings.Heartbeat h = w.heartbeat();
    BlockBuilder b =
        new BlockBuilder("heartbeat-gate", "Heartbeat gate, coil supply switch and permit loop");
    b.flag(COIL_FEED, 12, 4, false);
    b.terminalLeft("A1.11", "GPIO17 heartbeat", 3, 20, HEARTBEAT);
    b.part(
        "R301", Symbol.RESISTOR, PartClasses.RESISTOR, 1000, 5, 20, Turn.NONE, HEARTBEAT, "Q301_G");
    b.part("R302", Symbol.RESISTOR, PartClasses.RESISTOR, 4700, 11, 22, Turn.CW, "Q301_G", GND);
    b.label("R302", Label.LEFT);
    b.part(
        "Q301",
        Symbol.NMOS,
        Semiconductors.NMOS_SMALL,
        "",
        12,
        20,
        Turn.NONE,
        "Q301_G",
        "PUMP",
        GND);
    b.part("R303", Symbol.RESISTOR, PartClasses.RESISTOR, 2200, 16, 7, Turn.CW, COIL_FEED, "PUMP");
    b.part("D305", Symbol.ZENER, Semiconductors.ZENER_PUMP, "8.2 V", 23, 21, Turn.CCW, GND, "PUMP");
    b.part(
        "C301",
        Symbol.CAPACITOR,
        PartClasses.CAPACITOR_FILM,
        h.couplingFarads(),
        26,
        14,
        Turn.NONE,
        "PUMP",
        "PUMP_AC");
    b.part(
        "D301",
        Symbol.DIODE,
        Semiconductors.DIODE_LOW_LEAKAGE,
        "",
        32,
        21,
        Turn.CCW,
        GND,
        "PUMP_AC");
    b.part("R313", Symbol.RESISTOR, PartClasses.RESISTOR, 22e3, 37, 17, Turn.CW, "PUMP_AC", GND);
    b.part(
        "D302",
        Symbol.DIODE,
        Semiconductors.DIODE_LOW_LEAKAGE,
        "",
        41,
        14,
        Turn.NONE,
        "PUMP_AC",
        "RESERVOIR");
    b.part(
        "C302",
        Symbol.CAPACITOR,
        PartClasses.CAPACITOR_FILM,
        h.reservoirFarads(),
        47,
        17,
        Turn.CW,
        "RESERVOIR",
        GND);
    b.part(
        "R304",
        Symbol.RESISTOR,
        PartClasses.RESISTOR,
        h.bleedOhms(),
        53,
        17,
        Turn.CW,
        "RESERVOIR",
        GND);
    b.part(
        "R305",
        Symbol.RESISTOR,
        PartClasses.RESISTOR,
        1000,
        56,
        14,
        Turn.NONE,
        "RESERVOIR",
        "Q302_G");
    b.part(
        "Q302",
        Symbol.NMOS,
        Semiconductors.NMOS_SMALL,
        "",
        62,
        14,
        Turn.NONE,
        "Q302_G",
        "Q302_D",
        "CHAIN");
    b.part(
        "Q303",
        Symbol.NMOS,
        Semiconductors.NMOS_SMALL,
        "",
        62,
        26,
        Turn.NONE,
        "Q303_G",
        "CHAIN",
        PERMIT);
    b.terminalLeft("A1.36", "GPIO16 coil supply", 52, 26, COIL_ENABLE);
    b.part(
        "R306",
        Symbol.RESISTOR,
        PartClasses.RESISTOR,
        1000,
        54,
        26,
        Turn.NONE,
        COIL_ENABLE,
        "Q303_G");
    b.part("R307", Symbol.RESISTOR, PartClasses.RESISTOR, 4700, 60, 28, Turn.CW, "Q303_G", GND);
    b.label("R307", Label.LEFT);
    b.part(
        "R308", Symbol.RESISTOR, PartClasses.RESISTOR, 4700, 68, 10, Turn.NONE, "Q302_D", "Q304_G");
    b.part(
        "R309", Symbol.RESISTOR, PartClasses.RESISTOR, 10e3, 74, 5, Turn.CW, COIL_FEED, "Q304_G");
    b.part(
        "D303",
        Symbol.ZENER,
        Semiconductors.ZENER_GATE,
        "12 V",
        80,
        9,
        Turn.CCW,
        "Q304_G",
        COIL_FEED);
    b.part(
        "Q304",
        Symbol.PMOS,
        Semiconductors.PMOS_HIGH_SIDE,
        "60 V",
        86,
        10,
        Turn.NONE,
        "Q304_G",
        COIL_FEED,
        COIL_P);
    b.part("R310", Symbol.RESISTOR, PartClasses.RESISTOR, 10e3, 90, 18, Turn.CW, COIL_P, GND);
    b.flag(COIL_P, 94, 15, true);
    b.part(
        "R311", Symbol.RESISTOR, PartClasses.RESISTOR, 2200, 73, 23, Turn.CW, P5V, "PERMIT_PULL");
    b.part(
        "D306",
        Symbol.DIODE,
        Semiconductors.DIODE_SIGNAL,
        "",
        73,
        28,
        Turn.CW,
        "PERMIT_PULL",
        PERMIT);
    b.terminalRight("J3.7", "permit loop: open = rest", 86, 35, PERMIT);
    b.terminalRight("J3.8", "permit loop: return", 86, 39, GND);
    b.wire("J3.8.1 -- 83,39").groundAt(GND, 83, 39);
    b.part(
        "R312",
        Symbol.RESISTOR,
        PartClasses.RESISTOR,
        10e3,
        78,
        49,
        Turn.NONE,
        PERMIT,
        "PERMIT_PIN");
    b.part(
        "D307",
        Symbol.SCHOTTKY,
        Semiconductors.SCHOTTKY_CLAMP,
        "",
        84,
        48,
        Turn.CCW,
        "PERMIT_PIN",
        P3V3);
    b.terminalRight("A1.40", "GPIO21 permit", 88, 49, "PERMIT_PIN");

    b.wire("R303.1 -- 16,4 -- 12,4").wire("R303.1 -- 16,4 -- 90,4 -- Q304.S");
    b.wire("R309.1 -- 74,4").wire("D303.K -- 80,4");
    b.wire("A1.11.1 -- R301.1").wire("R301.2 -- Q301.G").wire("R302.1 -- 11,20");
    b.wire("R303.2 -- Q301.D").wire("C301.1 -- 16,14").wire("D305.K -- 23,14");
    b.wire("C301.2 -- D302.A").wire("D301.K -- 32,14").wire("R313.1 -- 37,14");
    b.wire("D302.K -- R305.1").wire("C302.1 -- 47,14").wire("R304.1 -- 53,14");
    b.wire("R305.2 -- Q302.G").wire("Q302.S -- Q303.D").wire("Q302.D -- 66,10 -- R308.1");
    b.wire("R308.2 -- Q304.G").wire("R309.2 -- 74,10").wire("D303.A -- 80,10");
    b.wire("Q304.D -- 90,15 -- R310.1").wire("R310.1 -- 90,15 -- 94,15");
    b.wire("A1.36.1 -- R306.1").wire("R306.2 -- Q303.G").wire("R307.1 -- 60,26");
    b.wire("Q303.S -- 66,35 -- J3.7.1").wire("R311.2 -- D306.A").wire("D306.K -- 73,35");
    b.wire("R312.1 -- 76,49 -- 76,35").wire("R312.2 -- A1.40.1").wire("D307.A -- 84,49");
    b.ground(
        "R302.2", "Q301.S", "D305.A", "D301.A", "R313.2", "C302.2", "R304.2", "R307.2", "R310.2");
    b.rail("R311.1", "D307.K");
    b.note(
        3,
        36,
        "Heartbeat: toggled in every tick, 100 Hz. Stuck at either level: Q304 opens after 30 to 100 ms.");
    b.note(3, 38, "No permit device fitted: join J3.7 to J3.8.");
    return b.build();
  }
}
