package org.boostwright.rig.wiring.spice;

import static java.lang.Double.NEGATIVE_INFINITY;

import java.util.ArrayList;
import java.util.List;
import java.util.Locale;
import org.boostwright.rig.wiring.Circuit;

/** What goes wrong on sensor wires: sensors wired wrongly, 16 V, and taps on somebody else's. */
final class SensorFaultSimulations {
  /** Sensor of the default settings: 0.5 to 4.5 V for 20 to 300 kPa, ratiometric, 5 V. */
  private static final String SENSOR =
      """
      .subckt MAPSENSOR vs out com kpa=101.3
      * consumption, substrate diode, protection diodes of the output; output stage dead below 3.5 V
      Rs vs com 700
      D1 com vs DSUB
      D2 out vs DSUB
      D3 com out DSUB
      B1 out com I=(v(out,com)-v(vs,com)*(0.1+0.8*(kpa-20)/280))*5m*(1+tanh(10*(v(vs,com)-3.5)))
      .model DSUB D(is=1p n=1.1 rs=2)
      .ends
      """;

  private SensorFaultSimulations() {}

  static List<Simulation> all(Circuit c) {
    return List.of(
        miswired(c),
        sixteenVolts(c, "map-input", "slow-inputs", "5.1", 5.4),
        sixteenVolts(c, "map-input-3v3", "slow-inputs-3v3", "3.3", 3.6),
        taps(c));
  }

  /**
   * Every way to wire the sensor wrong. A reading must lie outside 0.2 to 4.8 V, or say a pressure
   * that the key-on comparison with ambient (60 to 106 kPa) refuses.
   */
  static Simulation miswired(Circuit c) {
    DeckBuilder deck =
        new DeckBuilder("hw-18-miswired", "Pressure sensor wired wrongly, 101 kPa")
            .add(SENSOR)
            .add(
                "VP5 p5v 0 PWL(0 0 5m 5.1)\nVIN vin 0 PWL(0 0 5m 14)\nXU102 vin 0 p5s TRACKER_5V\nCPS p5s 0 10u\nRTIE sgnd 0 1m")
            .sheets(c, "map-input");
    // Wires of the sensor in the order supply, output, ground; one sheet for all: altered in turn.
    deck.add(
        """
        XS a b g MAPSENSOR
        CB b 0 1n
        RAP a p5s 10m
        RAM a map_sig 1g
        RAG a sgnd 1g
        RBP b p5s 1g
        RBM b map_sig 10m
        RBG b sgnd 1g
        RGP g p5s 1g
        RGM g map_sig 1g
        RGG g sgnd 10m
        RSG map_sig sgnd 1g
        RSP map_sig p5s 1g
        """);
    String[][] cases = {
      {"sound", "P", "M", "G", ""},
      {"signal_open", "P", "", "G", ""},
      {"short_ground", "P", "M", "G", "rsg"},
      {"short_supply", "P", "M", "G", "rsp"},
      {"ground_open", "P", "M", "", ""},
      {"supply_open", "", "M", "G", ""},
      {"supply_ground_swapped", "G", "M", "P", ""},
      {"supply_signal_swapped", "M", "P", "G", ""},
      {"signal_ground_swapped", "P", "G", "M", ""},
      {"rotated_one", "M", "G", "P", ""},
      {"rotated_two", "G", "P", "M", ""},
    };
    StringBuilder run = new StringBuilder();
    List<String> names = new ArrayList<>();
    for (String[] one : cases) {
      for (int wire = 0; wire < 3; wire++) {
        String w = "abg".substring(wire, wire + 1);
        for (String to : new String[] {"P", "M", "G"}) {
          run.append("alter r")
              .append(w)
              .append(to.toLowerCase(Locale.ROOT))
              .append('=')
              .append(to.equals(one[1 + wire]) ? "10m" : "1g")
              .append('\n');
        }
      }
      run.append("alter rsg=").append(one[4].equals("rsg") ? "10m" : "1g").append('\n');
      run.append("alter rsp=").append(one[4].equals("rsp") ? "10m" : "1g").append('\n');
      run.append(
          String.format(
              Locale.ROOT,
              """
              tran 0.2m 100m
              meas tran volts_%1$s find v(map_adc) at=99m
              let kpa=20+(volts_%1$s-0.5)*70
              let caught_%1$s=(volts_%1$s lt 0.2)+(volts_%1$s gt 4.8)+(kpa lt 60)+(kpa gt 106)
              print caught_%1$s
              """,
              one[0]));
      names.add(one[0]);
    }
    deck.run(run.toString());
    for (String name : names) {
      boolean sound = name.equals("sound");
      String words = name.replace('_', ' ');
      deck.demand(
          "HW-18",
          "volts_" + name,
          "reading, " + words,
          "V",
          1,
          sound ? 1.64 : -0.3,
          sound ? 1.68 : 5.2);
      deck.demand(
          "HW-18",
          "caught_" + name,
          "ways it is refused, " + words,
          "",
          1,
          sound ? 0 : 1,
          sound ? 0 : 2);
    }
    return deck.build();
  }

  /** 16 V, then -1 V, on every sensor wire in turn; 33 V on the battery. */
  static Simulation sixteenVolts(
      Circuit c, String pressure, String slow, String adcSupply, double limit) {
    StringBuilder run = new StringBuilder();
    for (String wire : new String[] {"vm", "vi", "vb", "vs"}) {
      double fault = wire.equals("vb") ? 33 : 16;
      for (double volts : new double[] {fault, -1}) {
        if (wire.equals("vs") && volts < 0) {
          continue;
        }
        run.append(
            String.format(
                Locale.ROOT,
                "alter %1$s=%2$s\nop\nlet adc_high=max(max(v(map_adc),v(iat_adc)),v(supply_adc))\n"
                    + "let adc_low=min(min(v(map_adc),v(iat_adc)),v(supply_adc))\nprint adc_high\nprint adc_low\nalter %1$s=%3$s\n",
                wire,
                volts,
                wire.equals("vb") ? 12 : wire.equals("vs") ? 5 : 2.5));
      }
    }
    return new DeckBuilder("hw-19-16-volts-" + pressure, "16 V on every sensor wire, " + pressure)
        .sheets(c, pressure, slow)
        .add(
            "VP5 p5v 0 5.1\nVP3 p3v3 0 3.3\nRTIE sgnd 0 1m\n"
                + "VM map_sig 0 2.5\nVI iat_sig 0 2.5\nVB vbat_f 0 12\nVS p5s 0 5\n"
                + "* the converter's own protection is not counted on; supply "
                + adcSupply
                + " V")
        .run(run.toString())
        .demand(
            "HW-19",
            "adc_high",
            "highest converter input, supply " + adcSupply + " V, " + pressure,
            "V",
            1,
            NEGATIVE_INFINITY,
            limit,
            7)
        .demand("HW-19", "adc_low", "lowest converter input, " + pressure, "V", 1, -0.3, 6, 7)
        .build();
  }

  /** What a tap does to the car's sensor, and what a ground difference does to our reading. */
  static Simulation taps(Circuit c) {
    Circuit fitted =
        c.with("JP911", part -> part.withFitted(true)).with("JP921", part -> part.withFitted(true));
    return new DeckBuilder("hw-23-taps", "Taps on the car's own sensors")
        .sheets(fitted, "sensor-taps", "map-input", "throttle-input")
        .add(
            """
            VP5 p5v 0 5.1
            RTIE sgnd 0 1m
            * the engine computer's ground stands 0.3 V above ours
            VGND car_sgnd 0 0
            VSENS carvs car_sgnd 5
            * a 5 kohm throttle track at half, and a pressure sensor with 100 ohm
            RT1 carvs car_tps 2500
            RT2 car_tps car_sgnd 2500
            VMAPS cms car_sgnd 3
            RMAPS cms car_map 100
            """)
        .run(
            """
            op
            let load_tps=2.5-v(car_tps)
            print load_tps
            let tap_error=abs(v(map_adc)-3)
            print tap_error
            alter vgnd=0.3
            op
            let tap_error_ground=abs(v(map_adc)-3)
            print tap_error_ground
            alter vgnd=0
            alter vp5=0
            op
            let load_dead=2.5-v(car_tps)
            print load_dead
            """)
        .demand(
            "HW-23",
            "load_tps",
            "what the tap takes from a throttle sensor of 2.5 V",
            "mV",
            1e3,
            -1,
            12.5)
        .demand("HW-23", "load_dead", "the same with our board without power", "mV", 1e3, -1, 12.5)
        .demand("HW-23", "tap_error", "error of the tapped pressure at 3 V", "mV", 1e3, 0, 15)
        .demand(
            "HW-23",
            "tap_error_ground",
            "the same with 0.3 V between the grounds",
            "mV",
            1e3,
            0,
            15)
        .build();
  }
}
