package org.boostwright.rig.wiring.block;

import static org.boostwright.rig.wiring.block.Blocks.COIL_OHMS;
import static org.boostwright.rig.wiring.block.Nets.BAT;
import static org.boostwright.rig.wiring.block.Nets.COIL_FEED;
import static org.boostwright.rig.wiring.block.Nets.COIL_FUSED;
import static org.boostwright.rig.wiring.block.Nets.COIL_N;
import static org.boostwright.rig.wiring.block.Nets.COIL_P;
import static org.boostwright.rig.wiring.block.Nets.COIL_PWM;
import static org.boostwright.rig.wiring.block.Nets.GND;
import static org.boostwright.rig.wiring.block.Nets.HEARTBEAT;
import static org.boostwright.rig.wiring.block.Nets.P3V3;
import static org.boostwright.rig.wiring.block.Nets.P5V;
import static org.boostwright.rig.wiring.block.Nets.VBAT_F;

import java.util.List;
import org.boostwright.core.settings.WiringSettings;
import org.boostwright.rig.wiring.Block;
import org.boostwright.rig.wiring.BlockBuilder;
import org.boostwright.rig.wiring.Part.Label;
import org.boostwright.rig.wiring.PartClasses;
import org.boostwright.rig.wiring.Semiconductors;
import org.boostwright.rig.wiring.Si;
import org.boostwright.rig.wiring.Symbol;
import org.boostwright.rig.wiring.Symbol.BoxShape;
import org.boostwright.rig.wiring.Turn;

/**
 * The build with screw terminals and ready-made modules. A time-delay relay stands in the place of
 * the heartbeat gate; wiring/README.md says what is lost.
 */
final class ModuleBuildBlock {
  private ModuleBuildBlock() {}

  static Block build(WiringSettings w) {
    BlockBuilder b =
        new BlockBuilder("module-build", "The build with screw terminals and ready-made modules");
    supply(b);
    valve(b, w);
    inputs(b);
    b.note(
        4,
        59,
        "C1 makes edges of the heartbeat: without it a pin stuck high holds the relay closed.");
    b.note(
        4,
        61,
        "M3 must be the kind that drops out a set time after the last trigger; set it to its shortest, 0.1 s.");
    return b.build();
  }

  private static void supply(BlockBuilder b) {
    b.terminalLeft("X1.1", "battery +, key on", 4, 6, BAT);
    b.part("F101", Symbol.FUSE, PartClasses.FUSE, 5, 6, 6, Turn.NONE, BAT, VBAT_F);
    b.terminalLeft("X1.2", "battery -", 4, 10, GND).wire("X1.2.1 -- 8,10").groundAt(GND, 8, 10);
    b.box(
        "M1",
        PartClasses.MODULE,
        "step-down 5.1 V",
        22,
        6,
        new BoxShape(List.of("IN+", "IN-"), List.of("OUT+", "OUT-"), 11),
        VBAT_F,
        GND,
        P5V,
        GND);
    b.terminalRight("A1.2", "5 V to the computer", 44, 6, P5V);
    b.terminalRight("A1.6", "ground of the computer", 44, 10, GND);
    b.wire("X1.1.1 -- F101.1").wire("F101.2 -- M1.IN+").wire("M1.OUT+ -- A1.2.1");
    b.wire("M1.OUT- -- 36,8 -- 36,10 -- A1.6.1").ground("M1.IN-").groundAt(GND, 36, 10);
    b.railAt(P5V, 38, 6);
  }

  private static void valve(BlockBuilder b, WiringSettings w) {
    b.part("F102", Symbol.FUSE, PartClasses.FUSE, 2, 16, 18, Turn.NONE, VBAT_F, COIL_FUSED);
    b.wire("F101.2 -- 14,6 -- 14,18 -- F102.1");
    b.part(
        "S101",
        Symbol.SWITCH,
        PartClasses.SPRING_SWITCH,
        "",
        24,
        18,
        Turn.NONE,
        COIL_FUSED,
        COIL_FEED);
    b.wire("F102.2 -- S101.1");
    b.box(
        "M3",
        PartClasses.MODULE,
        "time-delay relay, 0.1 s",
        22,
        28,
        new BoxShape(List.of("TRIG", "VCC", "GND"), List.of("COM", "NO"), 13),
        "M3_TRIG",
        P5V,
        GND,
        COIL_FEED,
        COIL_P);
    b.wire("S101.2 -- 38,18 -- 38,28 -- M3.COM");
    b.terminalLeft("A1.11", "GPIO17 heartbeat", 4, 28, HEARTBEAT);
    b.part(
        "C1",
        Symbol.CAPACITOR,
        PartClasses.CAPACITOR,
        1e-6,
        7,
        28,
        Turn.NONE,
        HEARTBEAT,
        "M3_TRIG");
    b.part("R1", Symbol.RESISTOR, PartClasses.RESISTOR, 10e3, 15, 32, Turn.CW, "M3_TRIG", GND);
    b.wire("A1.11.1 -- C1.1").wire("C1.2 -- M3.TRIG").wire("R1.1 -- 15,28");
    b.flag(P5V, 20, 30, false).wire("M3.VCC -- 20,30").ground("M3.GND", "R1.2");

    b.box(
        "M2",
        PartClasses.MODULE,
        "MOSFET module, 3.3 V type",
        22,
        44,
        new BoxShape(List.of("SIG", "GND"), List.of("V+", "OUT+", "OUT-", "V-"), 13),
        COIL_PWM,
        GND,
        COIL_P,
        COIL_P,
        COIL_N,
        GND);
    b.terminalLeft("A1.12", "GPIO18 coil PWM", 4, 44, COIL_PWM);
    b.part(
        "R202",
        Symbol.RESISTOR,
        PartClasses.RESISTOR,
        w.driver().pullDownOhms(),
        15,
        46,
        Turn.CW,
        COIL_PWM,
        GND);
    b.wire("A1.12.1 -- M2.SIG").wire("R202.1 -- 15,44").ground("R202.2", "M2.GND", "M2.V-");
    b.part(
        "D201",
        Symbol.DIODE,
        Semiconductors.DIODE_FLYBACK,
        "200 V, 1 A",
        48,
        47,
        Turn.CCW,
        COIL_N,
        COIL_P);
    b.part(
        "Y201",
        Symbol.VALVE_COIL,
        PartClasses.VALVE_COIL,
        Si.people(COIL_OHMS, "Ω") + ", " + Si.people(w.coil().henries(), "H"),
        60,
        42,
        Turn.CW,
        COIL_P,
        COIL_N);
    b.wire("M3.NO -- 42,30 -- 42,40 -- 60,40 -- Y201.1").wire("M2.V+ -- 42,44 -- 42,40");
    b.wire("M2.OUT+ -- 42,46 -- 42,44").wire("D201.K -- 48,40");
    b.wire("M2.OUT- -- 39,48 -- 39,49 -- 60,49 -- Y201.2").wire("D201.A -- 48,49");
  }

  private static void inputs(BlockBuilder b) {
    b.box(
        "M4",
        PartClasses.MODULE,
        "converter, 16 bit",
        84,
        8,
        new BoxShape(
            List.of("SDA", "SCL", "ADDR", "GND"), List.of("VDD", "A0", "A1", "A2", "A3"), 12),
        "SDA_5V",
        "SCL_5V",
        GND,
        GND,
        P5V,
        Nets.MAP_ADC,
        Nets.TPS_ADC,
        Nets.IAT_ADC,
        Nets.SUPPLY_ADC);
    b.box(
        "M5",
        PartClasses.MODULE,
        "level shifter",
        64,
        8,
        new BoxShape(List.of("L1", "L2", "LV", "GND"), List.of("H1", "H2", "HV"), 11),
        "SDA",
        "SCL",
        P3V3,
        GND,
        "SDA_5V",
        "SCL_5V",
        P5V);
    b.wire("M5.H1 -- M4.SDA").wire("M5.H2 -- M4.SCL").wire("M4.ADDR -- 83,12 -- 83,14 -- M4.GND");
    b.flag("SDA", 62, 8, false)
        .wire("M5.L1 -- 62,8")
        .flag("SCL", 62, 10, false)
        .wire("M5.L2 -- 62,10");
    b.flag(P3V3, 62, 12, false)
        .wire("M5.LV -- 62,12")
        .flag(P5V, 76, 12, true)
        .wire("M5.HV -- 76,12");
    b.ground("M5.GND", "M4.GND").flag(P5V, 98, 8, true).wire("M4.VDD -- 98,8");
    int y = 10;
    for (String net : List.of(Nets.MAP_ADC, Nets.TPS_ADC, Nets.IAT_ADC, Nets.SUPPLY_ADC)) {
      b.flag(net, 98, y, true).wire("M4.A" + (y - 10) / 2 + " -- 98," + y);
      y += 2;
    }
    b.terminalLeft("A1.3", "GPIO2 SDA", 80, 24, "SDA")
        .flag("SDA", 84, 24, true)
        .wire("A1.3.1 -- 84,24");
    b.terminalLeft("A1.5", "GPIO3 SCL", 80, 28, "SCL")
        .flag("SCL", 84, 28, true)
        .wire("A1.5.1 -- 84,28");
    b.terminalLeft("A1.1", "3.3 V", 80, 32, P3V3).flag(P3V3, 84, 32, true).wire("A1.1.1 -- 84,32");
    b.note(68, 37, "A0 to A3: map-input-simple and slow-inputs on a strip of screw terminals.");
    b.label("M5", Label.ABOVE);
  }
}
