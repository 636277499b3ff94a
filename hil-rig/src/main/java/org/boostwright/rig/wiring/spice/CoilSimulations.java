package org.boostwright.rig.wiring.spice;

import static java.lang.Double.POSITIVE_INFINITY;

import java.util.List;
import java.util.Locale;
import org.boostwright.core.settings.WiringSettings.Coil;
import org.boostwright.rig.wiring.Circuit;

/** The coil and its low-side switch: clamp voltage, release, switching times, losses, feedback. */
final class CoilSimulations {
  private static final double DRAIN_LIMIT_VOLTS = 48.0;

  private static final String RAILS =
      """
      VP5 p5v 0 5.1
      VP3 p3v3 0 3.3
      """;

  private CoilSimulations() {}

  static List<Simulation> all(Circuit c) {
    return List.of(
        clamp(c, "diode", "valve-driver"),
        clamp(c, "zener", "valve-driver-zener"),
        clamp(c, "tvs", "valve-driver-tvs"),
        release(),
        times(c, "diode", "valve-driver", 3.5, 7.5),
        times(c, "zener", "valve-driver-zener", 3.5, 4.6),
        times(c, "tvs", "valve-driver-tvs", 3.5, 3.9),
        fullyOn(c),
        losses(c),
        feedback(c));
  }

  /**
   * Drain voltage when the switch opens, at 16 V and while the supply's clamp holds a load dump.
   */
  static Simulation clamp(Circuit c, String name, String sheet) {
    return new DeckBuilder("hw-08-clamp-" + name, "Drain voltage at switch-off, clamp: " + name)
        .sheets(c, sheet)
        .add(RAILS)
        .add(
            """
            VFEED coil_p 0 16
            VPWM coil_pwm 0 PULSE(0 3.3 1m 1u 1u 20m 40m)
            """)
        .run(
            """
            * clamps at the upper end of their tolerance
            altermod D_ZENER_12 bv=12.6
            altermod D_TVS_33 bv=40.6
            tran 10u 40m
            meas tran drain_16 max v(coil_n)
            meas tran switch_current max i(LY201)
            let supply=-i(vfeed)
            meas tran feed_current max supply
            alter vfeed=33
            tran 10u 40m
            meas tran drain_dump max v(coil_n)
            """)
        .demand(
            "HW-08",
            "drain_16",
            "drain at 16 V, clamp " + name + " (80 % of 60 V)",
            "V",
            1,
            16,
            DRAIN_LIMIT_VOLTS)
        .demand(
            "HW-08",
            "drain_dump",
            "drain in a load dump held at 33 V, clamp " + name,
            "V",
            1,
            33,
            DRAIN_LIMIT_VOLTS)
        .demand(
            "HW-08",
            "feed_current",
            "current from the coil feed at 16 V, clamp " + name + " (fuse 2 A)",
            "A",
            1,
            0.3,
            1.0)
        .build();
  }

  /** The bare coil of the published table: 30 ohm, 100 mH, 14 V, decay to a fifth. */
  static Simulation release() {
    StringBuilder coils = new StringBuilder();
    StringBuilder run = new StringBuilder("tran 5u 60m\n");
    DeckBuilder deck =
        new DeckBuilder("hw-09-release", "Release of a 30 ohm, 100 mH coil into ideal clamps");
    String[] names = {"diode", "zener", "tvs24", "tvs36"};
    double[] volts = {0.8, 12.8, 24, 36};
    // Closed form, see WiringNumbers: L/R*ln((V/R + i0)/(V/R + i0/5)).
    double[] millis = {4.71, 1.80, 1.16, 0.85};
    for (int i = 0; i < names.length; i++) {
      String n = names[i];
      coils.append(
          String.format(
              Locale.ROOT,
              """
              L%1$s feed m%1$s 100m
              R%1$s m%1$s x%1$s 30
              S%1$s x%1$s 0 on 0 SW_CLOSER
              D%1$s x%1$s k%1$s DNEAR
              V%1$s k%1$s feed %2$s
              """,
              n,
              volts[i]));
      run.append(
          String.format(
              Locale.ROOT,
              "meas tran t1 when i(L%1$s)=0.09333 fall=last\nlet release_%1$s=t1-40m\nprint release_%1$s\n",
              n));
      deck.demand(
          "HW-09",
          "release_" + n,
          "decay to 20 %, " + volts[i] + " V across the coil",
          "ms",
          1e3,
          millis[i] * 0.98,
          millis[i] * 1.02);
    }
    return deck.add(
            "VFEED feed 0 14\nVON on 0 PULSE(1 0 40m 1n 1n 1 2)\n.model DNEAR D(is=1u n=0.01 rs=1m)\n"
                + coils)
        .run(run.toString())
        .build();
  }

  /** From the pin's edge to the spool at its other end. */
  static Simulation times(Circuit c, String name, String sheet, double onMillis, double offMillis) {
    Coil coil = c.settings().coil();
    String run =
        String.format(
            Locale.ROOT,
            """
            tran 10u 80m
            meas tran pick when i(LY201)=%1$s rise=1
            meas tran drop when i(LY201)=%2$s fall=last
            let t_on=pick-10m+%3$s
            let t_off=drop-50m+%4$s
            print t_on
            print t_off
            """,
            coil.pickUpAmps(),
            coil.dropOutAmps(),
            coil.spoolOnSeconds(),
            coil.spoolOffSeconds());
    return new DeckBuilder(
            "hw-10-times-" + name, "Valve times from the coil current, clamp: " + name)
        .sheets(c, sheet, "heartbeat-gate")
        .add(RAILS)
        .add(
            """
            VFEED coil_feed 0 14
            VEN coil_enable 0 3.3
            RPERMIT permit 0 1
            VHB heartbeat 0 PULSE(0 3.3 0 10u 10u 5m 10m)
            * supply switch held closed; the coil is energised from 10 to 50 ms
            VRES reservoir 0 5
            VPWM coil_pwm 0 PULSE(0 3.3 10m 1u 1u 40m 1)
            """)
        .run(run)
        .demand("HW-10", "t_on", "t_on, clamp " + name, "ms", 1e3, onMillis - 1, onMillis + 1)
        .demand("HW-10", "t_off", "t_off, clamp " + name, "ms", 1e3, offMillis - 1, offMillis + 1)
        .build();
  }

  /** The weakest gate drive on the highest threshold, then a hot coil on a low battery. */
  static Simulation fullyOn(Circuit c) {
    return new DeckBuilder(
            "hw-11-fully-on", "Switch fully on at the pin's voltage; pick-up on a low battery")
        .sheets(c, "valve-driver")
        .add(RAILS)
        .add("VFEED coil_p 0 16\nVPWM coil_pwm 0 3.0")
        .run(
            """
            altermod NMOS_POWER vto=1.5
            op
            let on_volts=v(coil_n)-v(shunt)
            print on_volts
            alter vfeed=9
            * 30 ohm at 20 degC is 39.4 ohm at 100 degC (copper, 0.39 % per kelvin)
            alter ry201=39.4
            op
            let hot_low=i(LY201)
            print hot_low
            """)
        .demand(
            "HW-11",
            "on_volts",
            "drop across Q201 at 0.5 A, pin at 3.0 V, threshold 1.5 V",
            "V",
            1,
            0,
            0.15)
        .demand(
            "HW-11",
            "hot_low",
            "coil current at 9 V and 100 degC (pick-up 0.20 A)",
            "A",
            1,
            0.2,
            POSITIVE_INFINITY)
        .build();
  }

  /** Losses at every tenth of duty, 30 Hz, 16 V, weakest gate drive. */
  static Simulation losses(Circuit c) {
    StringBuilder run = new StringBuilder("altermod NMOS_POWER vto=1.5\n");
    int steps = 10;
    for (int i = 0; i <= steps; i++) {
      run.append(String.format(Locale.ROOT, "alter vduty=%.1f\n", i / (double) steps));
      run.append(
          """
          tran 0.1m 200m
          let p=(v(coil_n)-v(shunt))*i(vsense)
          meas tran switch_watts avg p from=100m to=200m
          let pc=30*i(LY201)^2
          meas tran coil_watts avg pc from=100m to=200m
          """);
    }
    return new DeckBuilder("hw-12-losses", "Losses of switch and coil at every duty")
        .sheets(c.with("Q201", part -> part.rewired("S", "SENSED")), "valve-driver")
        .add(RAILS)
        .add(
            """
            VSENSE sensed shunt 0
            VFEED coil_p 0 16
            VDUTY duty 0 0
            BPWM pwm 0 V=(time*30-floor(time*30)) < v(duty) ? 3.0 : 0
            RPWM pwm coil_pwm 40
            """)
        .run(run.toString())
        .demand("HW-12", "switch_watts", "Q201, duty 0 to 100 %", "W", 1, -0.01, 0.3, steps + 1)
        .demand("HW-12", "coil_watts", "coil, duty 0 to 100 %, 16 V", "W", 1, -0.01, 8.6, steps + 1)
        .build();
  }

  /** The feedback pin with a sound coil, without one, and with the switch off. */
  static Simulation feedback(Circuit c) {
    return new DeckBuilder("hw-13-feedback", "Coil-current feedback")
        .sheets(c, "valve-driver")
        .add(RAILS)
        .add("VFEED coil_p 0 12\nVPWM coil_pwm 0 PULSE(0 3.3 10m 1u 1u 30m 1)")
        .run(
            """
            tran 20u 80m
            meas tran feedback_off find v(coil_current) at=9m
            meas tran feedback_on find v(coil_current) at=39m
            meas tran rise when v(coil_current)=1.65 rise=1
            let feedback_delay=rise-10m
            print feedback_delay
            alter ry201=1g
            tran 20u 80m
            meas tran feedback_open find v(coil_current) at=39m
            """)
        .demand("HW-13", "feedback_off", "pin with the coil off", "V", 1, -0.1, 0.8)
        .demand("HW-13", "feedback_on", "pin with coil current", "V", 1, 2.4, 3.4)
        .demand("HW-13", "feedback_delay", "from energised to pin high", "ms", 1e3, 0, 2)
        .demand("HW-13", "feedback_open", "pin with the coil open", "V", 1, -0.1, 0.8)
        .build();
  }
}
