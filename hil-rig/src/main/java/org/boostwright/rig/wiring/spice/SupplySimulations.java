package org.boostwright.rig.wiring.spice;

import static java.lang.Double.NEGATIVE_INFINITY;

import java.util.List;
import org.boostwright.rig.wiring.Circuit;

/** Supply under load dump, reversed battery and jump start; the engine-cut relay. */
final class SupplySimulations {
  /** A Pi, a coil, two sensors. */
  private static final String LOADS =
      """
      RPI p5v 0 3.4
      RCOIL coil_feed 0 30
      RSENS p5s sgnd 300
      """;

  private SupplySimulations() {}

  static List<Simulation> all(Circuit c) {
    return List.of(cut(c), dump(c), wrong(c));
  }

  /**
   * ISO 16750-2 load dump without suppression in the alternator (from memory: 12 V system, peak 79
   * to 101 V, 0.5 to 4 ohm, 40 to 400 ms); here 101 V through 2 ohm decaying in 400 ms.
   */
  static Simulation dump(Circuit c) {
    return new DeckBuilder("hw-15-load-dump", "Load dump")
        .sheets(c, "power")
        .add(LOADS)
        .add(
            """
            VGEN gen 0 PWL(0 14 50m 14 55m 101 455m 22.7 500m 14)
            VAMPS gen ri 0
            RI ri bat 2
            """)
        .run(
            """
            tran 0.2m 500m
            meas tran dump_rail max v(vprot)
            meas tran dump_amps max i(VAMPS)
            meas tran dump_5v max v(p5v)
            meas tran dump_sensor max v(p5s)
            """)
        .demand(
            "HW-15",
            "dump_rail",
            "protected rail in a load dump of 101 V through 2 ohm",
            "V",
            1,
            14,
            33)
        .demand(
            "HW-15",
            "dump_amps",
            "current into the board in that load dump (clamp 40 A)",
            "A",
            1,
            1,
            40)
        .demand("HW-15", "dump_5v", "computer's 5 V meanwhile", "V", 1, 4.9, 5.25)
        .demand("HW-15", "dump_sensor", "sensor supply meanwhile", "V", 1, 4.95, 5.05)
        .build();
  }

  /** Jump start with 24 V, battery reversed, then 16 V on the sensor supply. */
  static Simulation wrong(Circuit c) {
    return new DeckBuilder(
            "hw-15-wrong-supply", "Jump start, reversed battery, sensor supply on 16 V")
        .sheets(c, "power")
        .add(LOADS)
        .add(
            """
            VBAT source 0 PWL(0 0 50m 24 150m 24 160m -14 250m -14 260m 14)
            VAMPS source ri 0
            RI ri bat 10m
            VFAULT fault 0 16
            VGO go 0 PULSE(0 1 350m 1m 1m 1 2)
            SFAULT fault p5s go 0 SW_CLOSER
            """)
        .run(
            """
            tran 0.2m 450m
            meas tran jump_rail find v(vprot) at=140m
            meas tran jump_amps find i(VAMPS) at=140m
            meas tran reverse_rail min v(vprot) from=160m to=250m
            let fuse=-i(VAMPS)
            meas tran reverse_fuse find fuse at=240m
            meas tran fault_5v max v(p5v) from=360m to=450m
            meas tran fault_sensor find v(p5s) at=440m
            """)
        .demand("HW-15", "jump_rail", "protected rail on a 24 V jump start", "V", 1, 22, 24)
        .demand(
            "HW-15", "jump_amps", "current on a 24 V jump start (F101 holds: 5 A)", "A", 1, 0.3, 5)
        .demand("HW-15", "reverse_rail", "protected rail, battery reversed", "V", 1, -1, 14)
        .demand(
            "HW-15",
            "reverse_fuse",
            "current through F101, battery reversed: it blows",
            "A",
            1,
            50,
            Double.POSITIVE_INFINITY)
        .demand(
            "HW-15", "fault_sensor", "sensor supply on 16 V: the fault is there", "V", 1, 15, 16.1)
        .demand("HW-15", "fault_5v", "computer's 5 V meanwhile", "V", 1, 4.9, 5.25)
        .build();
  }

  /** The relay with its link fitted: stays out while the pin is pulled up, drops out when told. */
  static Simulation cut(Circuit c) {
    return new DeckBuilder("hw-14-engine-cut", "Engine-cut relay: out at boot, drops out")
        .sheets(c.with("JP401", part -> part.withFitted(true)), "engine-cut")
        .add(
            """
            VPROT vprot 0 14
            VPIN pin 0 PULSE(0 3.3 100m 1u 1u 100m 1)
            SPIN pin cut_request drive 0 SW_CLOSER
            VDRIVE drive 0 PULSE(0 1 90m 1u 1u 1 2)
            * until 90 ms the pin is an input with 33 kohm to 3.3 V
            RBOOT boot cut_request 33k
            VBOOT boot 0 3.3
            * the user's own cut input: 1 kohm to 12 V
            VCUT cut12 0 12
            RCUT cut12 cut_b 1k
            RGND cut_a 0 10m
            """)
        .run(
            """
            altermod NMOS_POWER vto=0.8
            set temp=85
            tran 0.1m 300m
            meas tran cut_boot min v(cut_b) from=1m to=95m
            meas tran cut_closed find v(cut_b) at=190m
            meas tran t1 when v(cut_b)=6 rise=last
            let cut_drops_out=t1-200m
            print cut_drops_out
            meas tran cut_drain max v(cut_coil)
            """)
        .demand(
            "HW-14",
            "cut_boot",
            "cut line while the computer boots (12 V = no cut)",
            "V",
            1,
            11.5,
            12.1)
        .demand("HW-14", "cut_closed", "cut line when asked", "V", 1, -0.1, 0.5)
        .demand("HW-14", "cut_drops_out", "relay drops out after", "ms", 1e3, NEGATIVE_INFINITY, 20)
        .demand("HW-14", "cut_drain", "drain of Q401 (80 % of 60 V)", "V", 1, 0, 48)
        .build();
  }
}
