package org.boostwright.rig.wiring.block;

import static org.boostwright.rig.wiring.block.Blocks.COIL_OHMS;
import static org.boostwright.rig.wiring.block.Nets.COIL_CURRENT;
import static org.boostwright.rig.wiring.block.Nets.COIL_N;
import static org.boostwright.rig.wiring.block.Nets.COIL_P;
import static org.boostwright.rig.wiring.block.Nets.COIL_PWM;
import static org.boostwright.rig.wiring.block.Nets.GND;
import static org.boostwright.rig.wiring.block.Nets.P3V3;
import static org.boostwright.rig.wiring.block.Nets.P5V;

import org.boostwright.core.settings.WiringSettings;
import org.boostwright.core.settings.WiringSettings.Clamp;
import org.boostwright.rig.wiring.Block;
import org.boostwright.rig.wiring.BlockBuilder;
import org.boostwright.rig.wiring.Part.Label;
import org.boostwright.rig.wiring.PartClasses;
import org.boostwright.rig.wiring.Semiconductors;
import org.boostwright.rig.wiring.Si;
import org.boostwright.rig.wiring.Symbol;
import org.boostwright.rig.wiring.Turn;

/**
 * Low-side switch of the coil with its clamp, and the coil-current feedback.
 *
 * <p>The gate's pull-down beats a pin that is still an input and pulls up while the computer boots.
 * D202 carries the coil current when the coil supply opens while the low side conducts, so that a
 * shorted Q201 cannot drive the high-side switch beyond its rating.
 */
final class ValveDriverBlock {
  private ValveDriverBlock() {}

  static Block build(WiringSettings w, Clamp clamp) {
    String id = "valve-driver" + (clamp == Clamp.DIODE ? "" : "-" + name(clamp));
    BlockBuilder b = new BlockBuilder(id, "Valve driver, clamp: " + clampWords(clamp));
    b.flag(COIL_P, 8, 6, false);
    b.part(
        "D202",
        Symbol.DIODE,
        Semiconductors.DIODE_FLYBACK,
        "200 V, 1 A",
        12,
        14,
        Turn.CCW,
        GND,
        COIL_P);
    b.part(
        "Y201",
        Symbol.VALVE_COIL,
        PartClasses.VALVE_COIL,
        Si.people(COIL_OHMS, "Ω") + ", " + Si.people(w.coil().henries(), "H"),
        33,
        10,
        Turn.CW,
        COIL_P,
        COIL_N);
    b.terminalRight("J1.3", "valve coil", 46, 6, COIL_P);
    b.terminalRight("J1.4", "valve coil", 46, 20, COIL_N);
    clamp(b, clamp);
    b.terminalLeft("A1.12", "GPIO18 coil PWM", 3, 26, COIL_PWM);
    b.part(
        "R201", Symbol.RESISTOR, PartClasses.RESISTOR, 100, 5, 26, Turn.NONE, COIL_PWM, "Q201_G");
    b.part(
        "R202",
        Symbol.RESISTOR,
        PartClasses.RESISTOR,
        w.driver().pullDownOhms(),
        10,
        28,
        Turn.CW,
        "Q201_G",
        GND);
    b.label("R202", Label.LEFT);
    b.part(
        "Q201",
        Symbol.NMOS,
        Semiconductors.NMOS_POWER,
        "60 V",
        12,
        26,
        Turn.NONE,
        "Q201_G",
        COIL_N,
        "SHUNT");
    b.part(
        "R203", Symbol.RESISTOR, PartClasses.RESISTOR_SHUNT, 0.47, 16, 33, Turn.CW, "SHUNT", GND);
    b.part(
        "R204", Symbol.RESISTOR, PartClasses.RESISTOR, 1000, 20, 31, Turn.NONE, "SHUNT", "SHUNT_F");
    b.part("C201", Symbol.CAPACITOR, PartClasses.CAPACITOR, 10e-9, 26, 33, Turn.CW, "SHUNT_F", GND);
    b.part(
        "U201",
        Symbol.OPAMP,
        Semiconductors.COMPARATOR,
        "comparator",
        35,
        33,
        Turn.NONE,
        "SHUNT_F",
        "SHUNT_REF",
        COIL_CURRENT,
        P5V,
        GND);
    b.part(
        "R205", Symbol.RESISTOR, PartClasses.RESISTOR, 100e3, 24, 42, Turn.NONE, P5V, "SHUNT_REF");
    b.part("R206", Symbol.RESISTOR, PartClasses.RESISTOR, 1000, 32, 44, Turn.CW, "SHUNT_REF", GND);
    b.part(
        "R207", Symbol.RESISTOR, PartClasses.RESISTOR, 10e3, 49, 27, Turn.CW, P3V3, COIL_CURRENT);
    b.terminalRight("A1.22", "GPIO25 coil current", 52, 33, COIL_CURRENT);

    b.wire("Y201.1 -- 33,6 -- 8,6").wire("Y201.1 -- 33,6 -- J1.3.1").wire("D202.K -- 12,6");
    b.wire("Y201.2 -- 33,20 -- J1.4.1").wire("Q201.D |- 33,20");
    b.wire("A1.12.1 -- R201.1").wire("R201.2 -- Q201.G").wire("R202.1 -- 10,26");
    b.wire("Q201.S -- R203.1").wire("R204.1 -- 16,31").wire("R204.2 -- U201.P");
    b.wire("C201.1 -- 26,31");
    b.wire("U201.N -- 32,35 -- R206.1").wire("R205.2 -- 32,42");
    b.wire("U201.O -- A1.22.1").wire("R207.2 -- 49,33");
    b.ground("D202.A", "R202.2", "R203.2", "C201.2", "R206.2", "U201.V-").rail("U201.V+");
    b.wire("R205.1 -- 21,42").rail("R207.1").railAt(P5V, 21, 42);
    return b.build();
  }

  private static void clamp(BlockBuilder b, Clamp clamp) {
    if (clamp == Clamp.TVS) {
      b.part("D204", Symbol.TVS, Semiconductors.TVS_COIL, "33 V", 25, 28, Turn.CCW, GND, COIL_N);
      b.wire("D204.K -- 25,20").ground("D204.A");
      return;
    }
    if (clamp == Clamp.NONE) {
      return;
    }
    b.part(
        "D201",
        Symbol.DIODE,
        Semiconductors.DIODE_FLYBACK,
        "200 V, 1 A",
        22,
        13,
        Turn.CCW,
        "CLAMP_MID",
        COIL_P);
    b.wire("D201.K -- 22,6");
    if (clamp == Clamp.ZENER) {
      b.part(
          "D203",
          Symbol.ZENER,
          Semiconductors.ZENER_COIL,
          "12 V",
          22,
          14,
          Turn.CW,
          "CLAMP_MID",
          COIL_N);
      b.wire("D201.A -- D203.A").wire("D203.K -- 22,20");
    } else {
      b.part("JP201", Symbol.LINK, PartClasses.LINK, "link", 22, 14, Turn.CW, "CLAMP_MID", COIL_N);
      b.wire("D201.A -- JP201.1").wire("JP201.2 -- 22,20");
    }
  }

  private static String name(Clamp clamp) {
    return switch (clamp) {
      case NONE -> "none";
      case DIODE -> "diode";
      case ZENER -> "zener";
      case TVS -> "tvs";
    };
  }

  private static String clampWords(Clamp clamp) {
    return switch (clamp) {
      case NONE -> "none";
      case DIODE -> "diode (as fitted)";
      case ZENER -> "diode and Zener diode";
      case TVS -> "suppressor diode";
    };
  }
}
