package org.boostwright.rig.wiring.block;

import static org.boostwright.rig.wiring.block.Nets.GND;
import static org.boostwright.rig.wiring.block.Nets.IAT_ADC;
import static org.boostwright.rig.wiring.block.Nets.MAP_ADC;
import static org.boostwright.rig.wiring.block.Nets.P3V3;
import static org.boostwright.rig.wiring.block.Nets.P5S;
import static org.boostwright.rig.wiring.block.Nets.P5V;
import static org.boostwright.rig.wiring.block.Nets.SGND;
import static org.boostwright.rig.wiring.block.Nets.SUPPLY_ADC;
import static org.boostwright.rig.wiring.block.Nets.TPS_ADC;

import java.util.List;
import org.boostwright.rig.wiring.Block;
import org.boostwright.rig.wiring.BlockBuilder;
import org.boostwright.rig.wiring.PartClasses;
import org.boostwright.rig.wiring.Semiconductors;
import org.boostwright.rig.wiring.Symbol;
import org.boostwright.rig.wiring.Symbol.BoxShape;
import org.boostwright.rig.wiring.Turn;

/**
 * The converters: as fitted, 16 bit on the two-wire bus at 5 V with level shifters; the other way,
 * 12 bit on SPI at 3.3 V behind dividers, with its reference taken from the sensor supply.
 */
final class ConverterBlock {
  private ConverterBlock() {}

  static Block twoWire() {
    BlockBuilder b =
        new BlockBuilder("converter", "Converter, 16 bit at 5 V, two-wire bus with level shift");
    b.terminalLeft("A1.1", "3.3 V from the computer", 3, 4, P3V3)
        .wire("A1.1.1 -- 7,4")
        .railAt(P3V3, 7, 4);
    b.terminalLeft("A1.3", "GPIO2 SDA", 3, 14, "SDA");
    b.terminalLeft("A1.5", "GPIO3 SCL", 3, 26, "SCL");
    shifter(b, "Q701", "R701", 14, "SDA");
    shifter(b, "Q702", "R702", 26, "SCL");
    BoxShape shape =
        new BoxShape(
            List.of("SDA", "SCL", "ADDR", "GND"), List.of("VDD", "A0", "A1", "A2", "A3"), 13);
    b.box(
        "U701",
        Semiconductors.CONVERTER_16,
        "16 bit, address 0x48",
        34,
        14,
        shape,
        "SDA_5V",
        "SCL_5V",
        GND,
        GND,
        P5V,
        MAP_ADC,
        TPS_ADC,
        IAT_ADC,
        SUPPLY_ADC);
    b.part("C701", Symbol.CAPACITOR, PartClasses.CAPACITOR, 100e-9, 60, 16, Turn.CW, P5V, GND);
    b.wire("A1.3.1 -- Q701.S").wire("A1.5.1 -- Q702.S");
    b.wire("Q701.D -- U701.SDA").wire("Q702.D -- 30,26 |- U701.SCL");
    b.wire("U701.ADDR -- 33,18 -- 33,20 -- U701.GND");
    b.wire("U701.VDD -- 60,14 -- C701.1");
    int y = 16;
    for (String net : List.of(MAP_ADC, TPS_ADC, IAT_ADC, SUPPLY_ADC)) {
      b.flag(net, 49, y, true).wire("U701.A" + (y - 16) / 2 + " -- 49," + y);
      y += 2;
    }
    b.railAt(P5V, 56, 14).ground("U701.GND", "C701.2");
    b.note(
        3,
        32,
        "The computer's board carries 1.8 kΩ from SDA and SCL to 3.3 V. Pedal, barometer and coolant: a second converter, 0x49.");
    return b.build();
  }

  private static void shifter(BlockBuilder b, String q, String r, int y, String line) {
    b.part(
        q,
        Symbol.NMOS,
        Semiconductors.NMOS_SMALL,
        "",
        16,
        y - 4,
        Turn.CW,
        P3V3,
        line + "_5V",
        line);
    b.part(r, Symbol.RESISTOR, PartClasses.RESISTOR, 2200, 24, y - 6, Turn.CW, P5V, line + "_5V");
    b.wire(r + ".2 -- 24," + y).rail(q + ".G", r + ".1");
  }

  static Block spi() {
    BlockBuilder b =
        new BlockBuilder(
            "converter-3v3",
            "The other way: converter, 12 bit at 3.3 V, SPI, reference from the sensor supply");
    BoxShape shape =
        new BoxShape(
            List.of("CLK", "DIN", "DOUT", "CS", "GND"),
            List.of("VDD", "CH0", "CH1", "CH2", "CH3", "VREF"),
            13);
    b.terminalLeft("A1.23", "GPIO11 SCLK", 3, 8, "SPI_CLK");
    b.terminalLeft("A1.19", "GPIO10 MOSI", 3, 12, "SPI_MOSI");
    b.terminalLeft("A1.21", "GPIO9 MISO", 3, 16, "SPI_MISO");
    b.terminalLeft("A1.24", "GPIO8 CE0", 3, 20, "SPI_CE0");
    b.box(
        "U701",
        Semiconductors.CONVERTER_12,
        "12 bit",
        8,
        14,
        shape,
        "SPI_CLK",
        "SPI_MOSI",
        "SPI_MISO",
        "SPI_CE0",
        GND,
        P3V3,
        MAP_ADC,
        TPS_ADC,
        IAT_ADC,
        SUPPLY_ADC,
        "VREF");
    b.wire("A1.23.1 -- 7,8 -- 7,14 -- U701.CLK").wire("A1.19.1 -- 6,12 -- 6,16 -- U701.DIN");
    b.wire("A1.21.1 -- 5,16 -- 5,18 -- U701.DOUT").wire("A1.24.1 -- U701.CS");
    int y = 16;
    for (String net : List.of(MAP_ADC, TPS_ADC, IAT_ADC, SUPPLY_ADC)) {
      b.flag(net, 23, y, true).wire("U701.CH" + (y - 16) / 2 + " -- 23," + y);
      y += 2;
    }
    b.flag("VREF", 23, 24, true).wire("U701.VREF -- 23,24");
    b.part(
        "R711", Symbol.RESISTOR, PartClasses.RESISTOR_EXACT, 10e3, 40, 10, Turn.CW, P5S, "VREF_IN");
    b.part(
        "R712",
        Symbol.RESISTOR,
        PartClasses.RESISTOR_EXACT,
        15e3,
        40,
        19,
        Turn.CW,
        "VREF_IN",
        SGND);
    b.part(
        "C711", Symbol.CAPACITOR, PartClasses.CAPACITOR, 100e-9, 47, 19, Turn.CW, "VREF_IN", SGND);
    b.part(
        "D711",
        Symbol.SCHOTTKY,
        Semiconductors.SCHOTTKY_CLAMP,
        "",
        47,
        14,
        Turn.CCW,
        "VREF_IN",
        P3V3);
    b.part(
        "U702",
        Symbol.OPAMP,
        Semiconductors.OPAMP,
        "3.3 V",
        55,
        18,
        Turn.NONE,
        "VREF_IN",
        "VREF_BUF",
        "VREF_BUF",
        P3V3,
        SGND);
    b.part(
        "R713", Symbol.RESISTOR, PartClasses.RESISTOR, 47, 66, 18, Turn.NONE, "VREF_BUF", "VREF");
    b.part("C712", Symbol.CAPACITOR, PartClasses.CAPACITOR, 1e-6, 73, 21, Turn.CW, "VREF", SGND);
    b.wire("R711.2 -- 40,16 -- U702.P")
        .wire("R712.1 -- 40,16")
        .wire("C711.1 -- 47,16")
        .wire("D711.A -- 47,16");
    b.wire("U702.O -- 64,18 -- 64,26 -- 53,26 -- 53,20 -- U702.N").wire("U702.O -- R713.1");
    b.wire("R713.2 -- 78,18").wire("C712.1 -- 73,18").flag("VREF", 78, 18, true);
    b.wire("U701.VDD -- 24,14").railAt(P3V3, 24, 14).rail("R711.1", "D711.K", "U702.V+");
    b.ground("U701.GND").sensorGround("R712.2", "C711.2", "U702.V-", "C712.2");
    b.note(
        3,
        32,
        "Reference = 0.6 x sensor supply: a reading does not change when the sensor supply does.");
    return b.build();
  }
}
