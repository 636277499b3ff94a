package org.boostwright.rig.wiring.block;

import static org.boostwright.rig.wiring.block.Nets.P5V;
import static org.boostwright.rig.wiring.block.Nets.SGND;

import org.boostwright.core.settings.WiringSettings.PressureInput;
import org.boostwright.rig.wiring.Block;
import org.boostwright.rig.wiring.BlockBuilder;
import org.boostwright.rig.wiring.PartClass;
import org.boostwright.rig.wiring.PartClasses;
import org.boostwright.rig.wiring.Semiconductors;
import org.boostwright.rig.wiring.Symbol;
import org.boostwright.rig.wiring.Turn;

/**
 * Input of a 5 V ratiometric sensor: bias to ground, series resistor and clamps, follower, filter,
 * with a divider where the converter runs on 3.3 V.
 *
 * <p>The bias makes an open wire read 0 V. The follower drives the filter's capacitor whatever the
 * wire does: without it the capacitor would have to empty through the bias, and 1 MΩ on 100 nF
 * needs 0.3 s for what must happen in 19 ms.
 */
final class SensorInputBlock {
  private SensorInputBlock() {}

  /**
   * One input.
   *
   * @param id name of the sheet
   * @param title title of the sheet
   * @param base hundreds and tens of the designators
   * @param pin terminal of the signal wire
   * @param words what the wire is
   * @param wire net of the wire
   * @param out net at the converter
   */
  record Names(
      String id, String title, int base, String pin, String words, String wire, String out) {}

  static Block build(Names n, PressureInput p) {
    BlockBuilder b = new BlockBuilder(n.id(), n.title());
    String node = n.wire() + "_IN";
    b.terminalLeft(n.pin(), n.words(), 3, 20, n.wire());
    b.part(
        ref("R", n, 1),
        Symbol.RESISTOR,
        PartClasses.RESISTOR,
        p.biasOhms(),
        6,
        23,
        Turn.CW,
        n.wire(),
        SGND);
    double series = p.buffered() ? 10e3 : p.filterOhms();
    b.part(
        ref("R", n, 2),
        Symbol.RESISTOR,
        PartClasses.RESISTOR,
        series,
        11,
        20,
        Turn.NONE,
        n.wire(),
        node);
    // A Schottky diode's leakage at 85 degC through 10 kΩ would be read as pressure; the amplifier
    // bears the 0.3 V more, the converter of the simple input would not.
    Symbol symbol = p.buffered() ? Symbol.DIODE : Symbol.SCHOTTKY;
    PartClass cls = p.buffered() ? Semiconductors.DIODE_LOW_LEAKAGE : Semiconductors.SCHOTTKY_CLAMP;
    b.part(ref("D", n, 1), symbol, cls, "", 20, 18, Turn.CCW, node, P5V);
    b.part(ref("D", n, 2), symbol, cls, "", 20, 27, Turn.CCW, SGND, node);
    b.wire(n.pin() + ".1 -- " + ref("R", n, 2) + ".1").wire(ref("R", n, 1) + ".1 -- 6,20");
    b.wire(ref("D", n, 1) + ".A -- 20,20").wire(ref("D", n, 2) + ".K -- 20,20");
    b.rail(ref("D", n, 1) + ".K").sensorGround(ref("R", n, 1) + ".2", ref("D", n, 2) + ".A");
    if (p.buffered()) {
      follower(b, n, p, node);
    } else {
      String c = ref("C", n, 2);
      b.part(
          c,
          Symbol.CAPACITOR,
          PartClasses.CAPACITOR,
          p.filterFarads(),
          26,
          23,
          Turn.CW,
          node,
          SGND);
      b.part(
          ref("R", n, 5),
          Symbol.RESISTOR,
          PartClasses.RESISTOR,
          100,
          30,
          20,
          Turn.NONE,
          node,
          n.out());
      b.wire(ref("R", n, 2) + ".2 -- " + ref("R", n, 5) + ".1").wire(c + ".1 -- 26,20");
      b.wire(ref("R", n, 5) + ".2 -- 37,20").flag(n.out(), 37, 20, true).sensorGround(c + ".2");
    }
    return b.build();
  }

  private static void follower(BlockBuilder b, Names n, PressureInput p, String node) {
    String buf = n.wire() + "_BUF";
    String u = ref("U", n, 1);
    String c1 = ref("C", n, 1);
    String c2 = ref("C", n, 2);
    b.part(c1, Symbol.CAPACITOR, PartClasses.CAPACITOR, 1e-9, 26, 23, Turn.CW, node, SGND);
    b.part(
        u, Symbol.OPAMP, Semiconductors.OPAMP, "5 V", 34, 22, Turn.NONE, node, buf, buf, P5V, SGND);
    b.wire(ref("R", n, 2) + ".2 -- " + u + ".P").wire(c1 + ".1 -- 26,20");
    b.wire(u + ".O -- 43,22 -- 43,30 -- 32,30 -- 32,24 -- " + u + ".N");
    b.rail(u + ".V+").sensorGround(u + ".V-", c1 + ".2");
    boolean divider = p.dividerBottomOhms() > 0;
    String r3 = ref("R", n, 3);
    b.part(
        r3,
        Symbol.RESISTOR,
        divider ? PartClasses.RESISTOR_EXACT : PartClasses.RESISTOR,
        divider ? p.dividerTopOhms() : p.filterOhms(),
        45,
        22,
        Turn.NONE,
        buf,
        n.out());
    b.part(
        c2,
        Symbol.CAPACITOR,
        PartClasses.CAPACITOR_FILM,
        p.filterFarads(),
        52,
        25,
        Turn.CW,
        n.out(),
        SGND);
    int end = 58;
    if (divider) {
      String r4 = ref("R", n, 4);
      b.part(
          r4,
          Symbol.RESISTOR,
          PartClasses.RESISTOR_EXACT,
          p.dividerBottomOhms(),
          60,
          25,
          Turn.CW,
          n.out(),
          SGND);
      b.wire(r4 + ".1 -- 60,22").sensorGround(r4 + ".2");
      end = 66;
    }
    b.wire(u + ".O -- " + r3 + ".1").wire(r3 + ".2 -- " + end + ",22").wire(c2 + ".1 -- 52,22");
    b.flag(n.out(), end, 22, true).sensorGround(c2 + ".2");
  }

  private static String ref(String letter, Names n, int number) {
    return letter + (n.base() + number);
  }
}
