package org.boostwright.rig.wiring.block;

import static org.boostwright.rig.wiring.block.Nets.MAP_SIG;
import static org.boostwright.rig.wiring.block.Nets.P5V;
import static org.boostwright.rig.wiring.block.Nets.SGND;
import static org.boostwright.rig.wiring.block.Nets.TPS_SIG;

import org.boostwright.rig.wiring.Block;
import org.boostwright.rig.wiring.BlockBuilder;
import org.boostwright.rig.wiring.PartClasses;
import org.boostwright.rig.wiring.Semiconductors;
import org.boostwright.rig.wiring.Symbol;
import org.boostwright.rig.wiring.Turn;

/**
 * Taps on the car's own pressure and throttle sensors: difference amplifiers of gain 1 that load
 * the sensor with 940 kΩ and take the difference to the car's own sensor ground, so that neither
 * the engine computer's reading nor ours moves with the ground between the two.
 */
final class SensorTapsBlock {
  private static final double BRIDGE_OHMS = 470e3;

  private SensorTapsBlock() {}

  static Block build() {
    BlockBuilder b =
        new BlockBuilder(
            "sensor-taps", "Taps on the car's own sensors, in place of sensors of our own");
    channel(b, 0, "MAP", "J4.1", "car's pressure sensor", 910, MAP_SIG);
    channel(b, 30, "TPS", "J4.2", "car's throttle sensor", 920, TPS_SIG);
    b.terminalLeft("J4.3", "car's sensor ground", 3, 28, "CAR_SGND");
    b.wire("J4.3.1 -- 8,28").wire("R913.1 -- 8,20 -- 8,28").wire("R923.1 -- 8,50 -- 8,28");
    b.note(
        3,
        66,
        "JP911 and JP921 join the taps to the sensor inputs; then J2.3 and J2.4 stay empty.");
    return b.build();
  }

  private static void channel(
      BlockBuilder b, int y, String name, String pin, String words, int base, String out) {
    String sig = "CAR_" + name;
    String p = name + "_TAP_P";
    String n = name + "_TAP_N";
    String tap = name + "_TAP";
    String r1 = "R" + (base + 1);
    String r2 = "R" + (base + 2);
    String r3 = "R" + (base + 3);
    String r4 = "R" + (base + 4);
    String r5 = "R" + (base + 5);
    String d = "D" + (base + 1);
    String c = "C" + (base + 1);
    String u = "U" + (base + 1);
    String jp = "JP" + (base + 1);
    b.terminalLeft(pin, words, 3, y + 16, sig);
    b.part(
        r1,
        Symbol.RESISTOR,
        PartClasses.RESISTOR_EXACT,
        BRIDGE_OHMS,
        10,
        y + 16,
        Turn.NONE,
        sig,
        p);
    b.part(d, Symbol.DIODE, Semiconductors.DIODE_LOW_LEAKAGE, "", 18, y + 14, Turn.CCW, p, P5V);
    b.part(
        r2,
        Symbol.RESISTOR,
        PartClasses.RESISTOR_EXACT,
        BRIDGE_OHMS,
        25,
        y + 13,
        Turn.CCW,
        p,
        SGND);
    b.part(
        r3,
        Symbol.RESISTOR,
        PartClasses.RESISTOR_EXACT,
        BRIDGE_OHMS,
        10,
        y + 20,
        Turn.NONE,
        "CAR_SGND",
        n);
    b.part(
        u, Symbol.OPAMP, Semiconductors.OPAMP, "5 V", 34, y + 18, Turn.NONE, p, n, tap, P5V, SGND);
    b.part(
        r4,
        Symbol.RESISTOR,
        PartClasses.RESISTOR_EXACT,
        BRIDGE_OHMS,
        36,
        y + 27,
        Turn.NONE,
        n,
        tap);
    b.part(c, Symbol.CAPACITOR, PartClasses.CAPACITOR, 100e-12, 36, y + 32, Turn.NONE, n, tap);
    b.part(
        r5, Symbol.RESISTOR, PartClasses.RESISTOR, 100, 46, y + 18, Turn.NONE, tap, tap + "_OUT");
    b.part(jp, Symbol.LINK, PartClasses.LINK, "tap", 53, y + 18, Turn.NONE, tap + "_OUT", out)
        .notFitted(jp);
    b.flag(out, 59, y + 18, true);
    b.wire(pin + ".1 -- " + r1 + ".1")
        .wire(r1 + ".2 -- " + u + ".P")
        .wire(d + ".A -- 18," + (y + 16));
    b.wire(r2 + ".1 -- 25," + (y + 16)).wire(r3 + ".2 -- " + u + ".N");
    b.wire(r4 + ".1 -- 31," + (y + 27) + " -- 31," + (y + 20))
        .wire(c + ".1 -- 31," + (y + 32) + " -- 31," + (y + 27));
    b.wire(r4 + ".2 -- 44," + (y + 27) + " -- 44," + (y + 18))
        .wire(c + ".2 -- 44," + (y + 32) + " -- 44," + (y + 27));
    b.wire(u + ".O -- " + r5 + ".1")
        .wire(r5 + ".2 -- " + jp + ".1")
        .wire(jp + ".2 -- 59," + (y + 18));
    b.wire(r2 + ".2 -- 32," + (y + 9)).sensorGroundAt(SGND, 32, y + 9);
    b.rail(d + ".K", u + ".V+").sensorGround(u + ".V-");
  }
}
