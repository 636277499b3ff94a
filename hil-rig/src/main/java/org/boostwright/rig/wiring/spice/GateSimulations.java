package org.boostwright.rig.wiring.spice;

import static java.lang.Double.NEGATIVE_INFINITY;

import java.util.List;
import java.util.Locale;
import java.util.SplittableRandom;
import org.boostwright.rig.wiring.Circuit;
import org.boostwright.rig.wiring.Part;

/**
 * What keeps the coil without current: pins while the computer boots, the heartbeat gate over
 * tolerances and temperature, the enable pin, the permit loop and the spring-only switch.
 */
final class GateSimulations {
  private static final double DROP_OUT_AMPS = 0.0933;
  private static final int RANDOM_RUNS = 40;
  private static final long SEED = 8;

  private static final String SURROUNDINGS =
      """
      VP5 p5v 0 5.1
      VP3 p3v3 0 3.3
      RTIE sgnd 0 1m
      """;

  private GateSimulations() {}

  static List<Simulation> all(Circuit c) {
    return List.of(boot(c), heartbeat(c, RANDOM_RUNS), opens(c), strayEdge(c));
  }

  /** Key on, computer booting, pins still inputs that pull up as hard as any does. */
  static Simulation boot(Circuit c) {
    return new DeckBuilder("hw-01-boot", "Pins floating or pulled up while the computer boots")
        .sheets(c, "valve-driver", "heartbeat-gate")
        .add(
            """
            * battery arrives as a step, then the computer's rails; pins are inputs with 33 kohm to 3.3 V
            VFEED coil_feed 0 PWL(0 0 5m 0 5.001m 16)
            VP5 p5v 0 PWL(0 0 20m 0 25m 5.1)
            VP3 p3v3 0 PWL(0 0 22m 0 25m 3.3)
            RTIE sgnd 0 1m
            RB1 p3v3 coil_pwm 33k
            RB2 p3v3 heartbeat 33k
            RB3 p3v3 coil_enable 33k
            RPERMIT permit 0 1
            * as if the other switch were shorted, one after the other
            RHIGH coil_feed coil_p 1g
            RLOW coil_n 0 1g
            """)
        .run(
            """
            altermod NMOS_POWER vto=0.8
            altermod NMOS_SMALL vto=0.8
            set temp=85
            alter rhigh=10m
            tran 50u 150m
            meas tran boot_low_side max i(LY201)
            meas tran boot_gate max v(q201_g)
            alter rhigh=1g
            alter rlow=10m
            tran 50u 150m
            meas tran boot_high_side max i(LY201)
            """)
        .demand(
            "HW-01",
            "boot_low_side",
            "coil current, low-side switch alone, pin pulled up",
            "mA",
            1e3,
            NEGATIVE_INFINITY,
            9.3)
        .demand(
            "HW-01",
            "boot_high_side",
            "coil current, high-side switch alone, pins pulled up",
            "mA",
            1e3,
            NEGATIVE_INFINITY,
            9.3)
        .demand(
            "HW-01",
            "boot_gate",
            "gate of Q201 against its lowest threshold, 85 degC",
            "V",
            1,
            NEGATIVE_INFINITY,
            0.6)
        .build();
  }

  /**
   * The heartbeat stops at either level, over tolerances and temperature: seeded random values and
   * the two corners that must be the shortest and the longest.
   *
   * @param randomRuns random sets of values besides the two corners
   */
  static Simulation heartbeat(Circuit c, int randomRuns) {
    DeckBuilder deck =
        new DeckBuilder(
                "hw-02-heartbeat",
                "Heartbeat stops at either level: time until the coil supply is open")
            .sheets(c, "valve-driver", "heartbeat-gate")
            .add(SURROUNDINGS)
            .add(
                """
                VFEED coil_feed 0 14
                VEN coil_enable 0 3.3
                VPWM coil_pwm 0 3.3
                RPERMIT permit 0 1
                RLOW coil_n 0 1g
                * toggled every 5 ms; from 72.5 ms on stuck at one level
                VBEAT beat 0 PULSE(0 1 0 10u 10u 5m 10m)
                VSTUCK stuck 0 0
                VHIGH high 0 3.3
                BHB heartbeat 0 V=v(high)*(time < 72.5m ? v(beat) : v(stuck))
                """);
    Part bleed = c.block("heartbeat-gate").part("R304");
    Part reservoir = c.block("heartbeat-gate").part("C302");
    Part coupling = c.block("heartbeat-gate").part("C301");
    SplittableRandom random = new SplittableRandom(SEED);
    StringBuilder run = new StringBuilder();
    for (int i = 0; i < randomRuns + 2; i++) {
      // Unit values from -1 to 1; the last two are the corners.
      double[] u = new double[8];
      for (int k = 0; k < u.length; k++) {
        u[k] = 2 * random.nextDouble() - 1;
      }
      if (i >= randomRuns) {
        double s = i == randomRuns ? -1 : 1;
        u = new double[] {s, s, s, -s, s, s, s, s};
      }
      // Film capacitors 5 % and 4 % over temperature; resistor 1 % and 100 ppm/K over 60 K.
      set(run, "alter r304=%.6g", bleed.value() * (1 + 0.016 * u[0]));
      set(run, "alter c302=%.6g", reservoir.value() * (1 + 0.09 * u[1]));
      set(run, "alter c301=%.6g", coupling.value() * (1 + 0.09 * u[2]));
      set(run, "altermod NMOS_SMALL vto=%.6g", 1.15 + 0.35 * u[3]);
      set(run, "altermod D_ZENER_8V2 bv=%.6g", 8.2 * (1 + 0.05 * u[4]));
      set(run, "alter vfeed=%.6g", 12.5 + 3.5 * u[5]);
      set(run, "alter vhigh=%.6g", 3.2 + 0.2 * u[6]);
      set(run, "set temp=%.6g", 22.5 + 62.5 * u[7]);
      run.append("alter vstuck=0\nalter rlow=1g\ntran 0.2m 200m\n");
      run.append(
          "meas tran t1 when v(coil_p)=2 fall=last\nlet hold_low=t1-72.5m\nprint hold_low\n");
      run.append("alter vstuck=1\ntran 0.2m 200m\n");
      run.append(
          "meas tran t1 when v(coil_p)=2 fall=last\nlet hold_high=t1-70m\nprint hold_high\n");
      run.append("alter vstuck=0\nalter rlow=10m\ntran 0.2m 200m\n");
      run.append("meas tran t1 when i(LY201)=" + DROP_OUT_AMPS + " fall=last\n");
      run.append("let hold_shorted=t1-72.5m\nprint hold_shorted\n");
    }
    int runs = randomRuns + 2;
    return deck.run(run.toString())
        .demand(
            "HW-02",
            "hold_low",
            "heartbeat stuck low: coil supply open after",
            "ms",
            1e3,
            30,
            100,
            runs)
        .demand(
            "HW-03",
            "hold_high",
            "heartbeat stuck high: coil supply open after",
            "ms",
            1e3,
            30,
            100,
            runs)
        .demand(
            "HW-04",
            "hold_shorted",
            "heartbeat lost, low-side switch shorted: coil below drop-out current after",
            "ms",
            1e3,
            30,
            100,
            runs)
        .build();
  }

  private static void set(StringBuilder run, String format, double value) {
    run.append(String.format(Locale.ROOT, format, value)).append('\n');
  }

  /** Enable pin low, permit loop open, spring-only switch open: each with the low side shorted. */
  static Simulation opens(Circuit c) {
    DeckBuilder deck =
        new DeckBuilder(
                "hw-05-opens",
                "Enable pin, permit loop and spring-only switch open the coil supply")
            .sheets(c, "valve-driver", "heartbeat-gate")
            .add(SURROUNDINGS)
            .add(
                """
                VBAT bat 0 14
                VGO go 0 PULSE(1 0 100m 1u 1u 1 2)
                SFEED bat coil_feed sw1 0 SW_CLOSER
                SPERMIT permit 0 sw2 0 SW_CLOSER
                VA wa 0 0
                VB wb 0 0
                VC wc 0 0
                * each of the three follows "go" only in its own run
                B1 sw1 0 V=v(wa) > 0.5 ? v(go) : 1
                B2 sw2 0 V=v(wb) > 0.5 ? v(go) : 1
                B3 coil_enable 0 V=v(wc) > 0.5 ? 3.3*v(go) : 3.3
                VPWM coil_pwm 0 3.3
                RLOW coil_n 0 10m
                VHB heartbeat 0 PULSE(0 3.3 0 10u 10u 5m 10m)
                """);
    String measure = "tran 0.1m 200m\nmeas tran t1 when i(LY201)=" + DROP_OUT_AMPS + " fall=last\n";
    return deck.run(
            "alter va=0\nalter vb=0\nalter vc=1\n"
                + measure
                + "let enable_opens=t1-100m\nprint enable_opens\nmeas tran coil_before find i(LY201) at=99m\n"
                + "alter vb=1\nalter vc=0\n"
                + measure
                + "let permit_opens=t1-100m\nprint permit_opens\nalter va=1\nalter vb=0\n"
                + measure
                + "let spring_opens=t1-100m\nprint spring_opens\n")
        .demand("HW-05", "coil_before", "coil current before anything opens", "A", 1, 0.4, 0.5)
        .demand(
            "HW-05",
            "enable_opens",
            "enable pin low: coil below drop-out current after",
            "ms",
            1e3,
            NEGATIVE_INFINITY,
            10)
        .demand(
            "HW-06",
            "permit_opens",
            "permit loop open: coil below drop-out current after",
            "ms",
            1e3,
            NEGATIVE_INFINITY,
            10)
        .demand(
            "HW-07",
            "spring_opens",
            "spring-only switch open: coil below drop-out current after",
            "ms",
            1e3,
            NEGATIVE_INFINITY,
            10)
        .build();
  }

  /**
   * One stray edge on the heartbeat pin, and a heartbeat at 4 Hz, with everything else permitting.
   */
  static Simulation strayEdge(Circuit c) {
    return new DeckBuilder("hw-04-stray-edge", "Stray edges on the heartbeat pin")
        .sheets(c, "valve-driver", "heartbeat-gate")
        .add(SURROUNDINGS)
        .add(
            """
            VFEED coil_feed 0 14
            VEN coil_enable 0 3.3
            VPWM coil_pwm 0 3.3
            RPERMIT permit 0 1
            * settled at low level first; one falling edge at 300 ms
            VHB heartbeat 0 PWL(0 3.3 300m 3.3 300.01m 0)
            """)
        .run(
            """
            tran 0.2m 600m
            meas tran a when i(LY201)=0.2 cross=1 td=300m
            meas tran b when i(LY201)=0.0933 fall=last
            let stray_edge=b-300m
            print stray_edge
            """)
        .demand(
            "HW-04",
            "stray_edge",
            "one stray edge: coil below drop-out current again after",
            "ms",
            1e3,
            NEGATIVE_INFINITY,
            100)
        .build();
  }
}
