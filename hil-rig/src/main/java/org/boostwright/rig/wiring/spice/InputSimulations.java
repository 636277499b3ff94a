package org.boostwright.rig.wiring.spice;

import java.util.List;
import java.util.Locale;
import org.boostwright.rig.wiring.Circuit;

/** Analogue inputs as they should be: filter, open wire, thermistor, supply, bus levels. */
final class InputSimulations {
  private static final String RAILS =
      """
      VP5 p5v 0 5.1
      VP3 p3v3 0 3.3
      VPS p5s 0 5.0
      RTIE sgnd 0 1m
      """;

  private InputSimulations() {}

  static List<Simulation> all(Circuit c) {
    return List.of(
        filter(c, "map-input", 20, 50, 1.0),
        filter(c, "map-input-3v3", 20, 50, 0.6),
        filter(c, "map-input-simple", 300, 700, 1.0),
        openWire(c, "map-input", 0.2, 1.0),
        openWire(c, "map-input-3v3", 0.12, 0.6),
        openWire(c, "map-input-simple", 0.2, 1.0),
        slow(c),
        bus(c));
  }

  /** Corner of the filter over tolerances, and the error at rest with the amplifier's offset. */
  static Simulation filter(Circuit c, String sheet, double lowHz, double highHz, double gain) {
    StringBuilder run = new StringBuilder();
    double tolerance =
        c.block(sheet).part("C502").partClass().id().equals("capacitor_film") ? 0.05 : 0.10;
    double farads = c.block(sheet).part("C502").value();
    for (double side : new double[] {-1, 0, 1}) {
      run.append(String.format(Locale.ROOT, "alter c502=%.6g\n", farads * (1 + tolerance * side)));
      run.append(
          """
          ac dec 100 0.1 10k
          let g=db(v(map_adc))-db(v(map_adc)[0])
          meas ac corner_hz when g=-3.0103
          """);
    }
    run.append(
        String.format(
            Locale.ROOT,
            """
            dc VSIG 0.5 4.5 0.5
            let e=abs(v(map_adc)/%s-v(map_sig))
            let error_dc=vecmax(e)
            print error_dc
            * hot, the leakage of the two clamps unequal
            set temp=85
            alter d502 area=0.2
            dc VSIG 0.5 4.5 0.5
            let e=abs(v(map_adc)/%s-v(map_sig))
            let error_hot=vecmax(e)
            print error_hot
            """,
            gain,
            gain));
    return new DeckBuilder("hw-16-filter-" + sheet, "Filter and error of " + sheet)
        .sheets(c, sheet)
        .add(RAILS)
        .add("VSIG map_sig 0 DC 2.5 AC 1\n* the converter's own input\nRADC map_adc 0 6meg")
        .run(run.toString())
        .demand("HW-16", "corner_hz", "filter corner, " + sheet, "Hz", 1, lowHz, highHz, 3)
        .demand("HW-16", "error_dc", "largest error from 0.5 to 4.5 V, " + sheet, "mV", 1e3, 0, 10)
        .demand("HW-16", "error_hot", "the same at 85 degC, " + sheet, "mV", 1e3, 0, 30)
        .build();
  }

  /** The signal wire opens at the top of the sensor's range. */
  static Simulation openWire(Circuit c, String sheet, double thresholdVolts, double gain) {
    return new DeckBuilder("hw-17-open-wire-" + sheet, "Signal wire opens, " + sheet)
        .sheets(c, sheet)
        .add(RAILS)
        .add(
            """
            VSIG sensor 0 4.8
            VGO go 0 PULSE(1 0 50m 1u 1u 1 2)
            SWIRE sensor map_sig go 0 SW_CLOSER
            RADC map_adc 0 6meg
            * 3 m of screened wire
            CWIRE map_sig 0 300p
            """)
        .run(
            String.format(
                Locale.ROOT,
                """
                alter c502=%.6g
                alter r503=%.6g
                tran 50u 400m
                meas tran t1 when v(map_adc)=%s fall=1
                let open_wire=t1-50m
                print open_wire
                meas tran open_rests find v(map_adc) at=390m
                """,
                c.block(sheet).part("C502").value() * 1.1,
                c.block(sheet).has("R503") ? c.block(sheet).part("R503").value() * 1.01 : 0.0,
                thresholdVolts))
        .demand(
            "HW-17",
            "open_wire",
            "open wire past its threshold of " + thresholdVolts / gain + " V, " + sheet,
            "ms",
            1e3,
            0,
            19)
        .demand("HW-17", "open_rests", "open wire reads, " + sheet, "V", 1, -0.05, thresholdVolts)
        .build();
  }

  /** Thermistor and supply readings against the default settings' tables. */
  static Simulation slow(Circuit c) {
    // Steinhart-Hart with one constant: 2.057 kohm at 25 degC, B 3500 K (project settings).
    StringBuilder run = new StringBuilder();
    double[] celsius = {-20, 20, 60, 100};
    double[] table = {4.414, 2.666, 1.070, 0.406};
    DeckBuilder deck = new DeckBuilder("hw-20-slow", "Thermistor and supply readings");
    for (int i = 0; i < celsius.length; i++) {
      double ohms = 2057 * Math.exp(3500 * (1 / (celsius[i] + 273.15) - 1 / 298.15));
      String name = String.format(Locale.ROOT, "iat_%.0f", celsius[i]).replace("-", "minus");
      run.append(
          String.format(
              Locale.ROOT, "alter rth=%.6g\nop\nlet %2$s=v(iat_adc)\nprint %2$s\n", ohms, name));
      deck.demand(
          "HW-20",
          name,
          String.format(Locale.ROOT, "thermistor at %.0f degC", celsius[i]),
          "V",
          1,
          table[i] - 0.015,
          table[i] + 0.015);
    }
    run.append(
        "alter rth=1g\nop\nlet iat_open=v(iat_adc)\nprint iat_open\nalter rth=1m\nop\nlet iat_short=v(iat_adc)\nprint iat_short\n");
    run.append("let supply_12=v(supply_adc)\nprint supply_12\n");
    return deck.sheets(c, "slow-inputs")
        .add(RAILS)
        .add("RTH iat_sig sgnd 2057\nVB vbat_f 0 12\nRADC1 iat_adc 0 6meg\nRADC2 supply_adc 0 6meg")
        .run(run.toString())
        .demand("HW-20", "iat_open", "thermistor wire open (above 4.8 V)", "V", 1, 4.8, 5.4)
        .demand("HW-20", "iat_short", "thermistor wire on ground (below 0.1 V)", "V", 1, -0.1, 0.1)
        .demand("HW-20", "supply_12", "supply of 12 V, divided by 5", "V", 1, 2.38, 2.42)
        .build();
  }

  /** The computer's pins never see more than 3.3 V from the 5 V bus. */
  static Simulation bus(Circuit c) {
    return new DeckBuilder("hw-24-bus", "Levels of the two-wire bus")
        .sheets(c, "converter")
        .add(
            """
            VP5 p5v 0 5.1
            VP3 p3v3 0 3.3
            * pull-ups on the computer's board; open-drain ends on either side
            RPU1 sda p3v3 1.8k
            RPU2 scl p3v3 1.8k
            RCON sda_5v 0 1g
            RPI scl 0 1g
            VA map_adc 0 0
            VB tps_adc 0 0
            VC iat_adc 0 0
            VD supply_adc 0 0
            """)
        .run(
            """
            op
            let bus_idle=max(v(sda),v(scl))
            print bus_idle
            let bus_idle_5v=min(v(sda_5v),v(scl_5v))
            print bus_idle_5v
            alter rcon=40
            alter rpi=40
            altermod NMOS_SMALL vto=1.5
            op
            let bus_low=v(sda)
            print bus_low
            let bus_low_5v=v(scl_5v)
            print bus_low_5v
            """)
        .demand("HW-24", "bus_idle", "computer's pins, bus idle", "V", 1, 2.3, 3.6)
        .demand(
            "HW-24", "bus_idle_5v", "converter's pins, bus idle (70 % of 5.1 V)", "V", 1, 3.57, 5.2)
        .demand("HW-24", "bus_low", "computer's pin, converter pulls low", "V", 1, -0.1, 0.7)
        .demand(
            "HW-24",
            "bus_low_5v",
            "converter's pin, computer pulls low (30 % of 5.1 V)",
            "V",
            1,
            -0.1,
            1.0)
        .build();
  }
}
