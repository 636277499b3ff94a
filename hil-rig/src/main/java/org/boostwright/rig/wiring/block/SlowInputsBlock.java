package org.boostwright.rig.wiring.block;

import static org.boostwright.rig.wiring.block.Nets.IAT_ADC;
import static org.boostwright.rig.wiring.block.Nets.IAT_SIG;
import static org.boostwright.rig.wiring.block.Nets.P3V3;
import static org.boostwright.rig.wiring.block.Nets.P5S;
import static org.boostwright.rig.wiring.block.Nets.P5V;
import static org.boostwright.rig.wiring.block.Nets.SGND;
import static org.boostwright.rig.wiring.block.Nets.SUPPLY_ADC;
import static org.boostwright.rig.wiring.block.Nets.VBAT_F;

import org.boostwright.rig.wiring.Block;
import org.boostwright.rig.wiring.BlockBuilder;
import org.boostwright.rig.wiring.PartClasses;
import org.boostwright.rig.wiring.Semiconductors;
import org.boostwright.rig.wiring.Symbol;
import org.boostwright.rig.wiring.Turn;

/**
 * Thermistor and supply-voltage inputs: slow, so a resistor and a capacitor do.
 *
 * <p>An open thermistor wire reads close to the sensor supply, a shorted one 0 V; both lie outside
 * the calibration. A clamped load dump of 33 V meets the clamp diode through 40 kΩ.
 */
final class SlowInputsBlock {
  private SlowInputsBlock() {}

  /** The inputs for a converter at 5 V, or at 3.3 V behind dividers of 0.6. */
  static Block build(boolean at3v3) {
    String rail = at3v3 ? P3V3 : P5V;
    BlockBuilder b =
        new BlockBuilder(
            at3v3 ? "slow-inputs-3v3" : "slow-inputs",
            "Intake-air thermistor and supply voltage" + (at3v3 ? ", converter at 3.3 V" : ""));
    b.terminalLeft("J2.5", "intake air", 3, 14, IAT_SIG);
    b.part("R601", Symbol.RESISTOR, PartClasses.RESISTOR_EXACT, 2200, 8, 7, Turn.CW, P5S, IAT_SIG);
    b.part(
        "R602",
        Symbol.RESISTOR,
        at3v3 ? PartClasses.RESISTOR_EXACT : PartClasses.RESISTOR,
        at3v3 ? 22e3 : 4700,
        14,
        14,
        Turn.NONE,
        IAT_SIG,
        IAT_ADC);
    b.part(
        "D601",
        Symbol.SCHOTTKY,
        Semiconductors.SCHOTTKY_CLAMP,
        "",
        23,
        12,
        Turn.CCW,
        IAT_ADC,
        rail);
    b.part(
        "D602",
        Symbol.SCHOTTKY,
        Semiconductors.SCHOTTKY_CLAMP,
        "",
        23,
        21,
        Turn.CCW,
        SGND,
        IAT_ADC);
    b.part("C601", Symbol.CAPACITOR, PartClasses.CAPACITOR, 100e-9, 29, 17, Turn.CW, IAT_ADC, SGND);
    if (at3v3) {
      b.part(
          "R603",
          Symbol.RESISTOR,
          PartClasses.RESISTOR_EXACT,
          33e3,
          36,
          17,
          Turn.CW,
          IAT_ADC,
          SGND);
      b.wire("R603.1 -- 36,14").sensorGround("R603.2");
    }
    b.flag(IAT_ADC, 42, 14, true);
    b.wire("J2.5.1 -- R602.1").wire("R601.2 -- 8,14").wire("R602.2 -- 42,14");
    b.wire("D601.A -- 23,14").wire("D602.K -- 23,14").wire("C601.1 -- 29,14");
    b.rail("R601.1", "D601.K").sensorGround("D602.A", "C601.2");

    double half = at3v3 ? 40e3 : 20e3;
    b.flag(VBAT_F, 59, 14, false);
    b.part(
        "R611",
        Symbol.RESISTOR,
        PartClasses.RESISTOR_EXACT,
        half,
        61,
        14,
        Turn.NONE,
        VBAT_F,
        "SUPPLY_MID");
    b.part(
        "R612",
        Symbol.RESISTOR,
        PartClasses.RESISTOR_EXACT,
        half,
        67,
        14,
        Turn.NONE,
        "SUPPLY_MID",
        SUPPLY_ADC);
    b.part(
        "R613",
        Symbol.RESISTOR,
        PartClasses.RESISTOR_EXACT,
        10e3,
        74,
        17,
        Turn.CW,
        SUPPLY_ADC,
        SGND);
    b.part(
        "D611",
        Symbol.SCHOTTKY,
        Semiconductors.SCHOTTKY_CLAMP,
        "",
        81,
        12,
        Turn.CCW,
        SUPPLY_ADC,
        rail);
    b.part(
        "C611", Symbol.CAPACITOR, PartClasses.CAPACITOR, 470e-9, 83, 17, Turn.CW, SUPPLY_ADC, SGND);
    b.flag(SUPPLY_ADC, 89, 14, true);
    b.wire("R611.1 -- 59,14").wire("R611.2 -- R612.1").wire("R612.2 -- 89,14");
    b.wire("R613.1 -- 74,14").wire("D611.A -- 81,14").wire("C611.1 -- 83,14");
    b.rail("D611.K").sensorGround("R613.2", "C611.2");
    b.note(
        3,
        26,
        "Thermistor: 2.057 kΩ at 25 degC, B 3500 K, its other end on J2.2. A coolant sensor has the same input.");
    return b.build();
  }
}
