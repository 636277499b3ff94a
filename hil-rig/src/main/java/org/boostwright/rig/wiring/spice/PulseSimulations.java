package org.boostwright.rig.wiring.spice;

import java.util.List;
import java.util.Locale;
import org.boostwright.rig.wiring.Circuit;

/** Engine-speed pulses: square ones of 5 to 16 V, and the primary of an ignition coil. */
final class PulseSimulations {
  private PulseSimulations() {}

  static List<Simulation> all(Circuit c) {
    return List.of(square(c), coil(c));
  }

  /** Ten periods must last ten periods: no pulse lost, none added. */
  static Simulation square(Circuit c) {
    StringBuilder run = new StringBuilder();
    DeckBuilder deck =
        new DeckBuilder("hw-21-tach", "Tach pulses of 5, 12 and 16 V with a ground shift of 1 V")
            .sheets(c, "tach-input")
            .add(
                """
                VP3 p3v3 0 3.3
                VPROT vprot 0 13.5
                VHIGH high 0 12
                VFREQ freq 0 217
                * low level 1 V, slow edges and 2 V of 20 kHz ignition noise
                BT tach_in 0 V=((time*v(freq)-floor(time*v(freq))) < 0.5 ? v(high) : 1)+sin(6.28*20k*time)
                ROUT tach_pin 0 1meg
                """);
    for (double[] one : new double[][] {{5, 25}, {12, 217}, {16, 400}}) {
      String name = String.format(Locale.ROOT, "tach_%.0fv", one[0]);
      run.append(
          String.format(
              Locale.ROOT,
              "alter vhigh=%1$s\nalter vfreq=%2$s\ntran 10u %3$s\n"
                  + "meas tran a when v(tach_pin)=1.65 rise=2\nmeas tran b when v(tach_pin)=1.65 rise=12\n"
                  + "let %4$s=10/(b-a)\nprint %4$s\nmeas tran tach_pin_high max v(tach_pin)\n",
              one[0],
              one[1],
              14 / one[1],
              name));
      deck.demand(
          "HW-21",
          name,
          String.format(Locale.ROOT, "%.0f Hz of %.0f V reads", one[1], one[0]),
          "Hz",
          1,
          one[1] * 0.995,
          one[1] * 1.005);
    }
    run.append("alter vhigh=33\nalter vfreq=1\ntran 10u 10m\nmeas tran tach_node max v(tach_rc)\n");
    return deck.run(run.toString())
        .demand("HW-21", "tach_pin_high", "highest voltage at the pin", "V", 1, 2.4, 3.6, 3)
        .demand(
            "HW-21",
            "tach_node",
            "Schmitt input with 33 V on the wire (limit 5.5 V)",
            "V",
            1,
            2,
            5.5)
        .build();
  }

  /** Ignition at 217 Hz: 400 V spike, spark line, ringing, dwell. One pulse each. */
  static Simulation coil(Circuit c) {
    Circuit fitted = c.with("JP822", part -> part.withFitted(true));
    return new DeckBuilder(
            "hw-22-ignition", "Primary of an ignition coil, 400 V, 217 events per second")
        .sheets(fitted, "tach-coil")
        .add(
            """
            VP3 p3v3 0 3.3
            RE engine_gnd 0 0.1
            ROUT tach_pin 0 1meg
            * time since the spark; 40 us at 400 V, 1.2 ms spark line at 45 V, ringing round 14 V, dwell at 1 V
            Bt u 0 V=(time*217-floor(time*217))/217
            BIGN ign_neg 0 V=v(u)<40u ? 400 : (v(u)<1.24m ? 45 : (v(u)<2.2m ? 14+30*exp(-(v(u)-1.24m)/0.25m)*sin(6.28*4k*(v(u)-1.24m)) : 1))
            """)
        .run(
            """
            tran 5u 80m
            meas tran a when v(tach_pin)=1.65 fall=2
            meas tran b when v(tach_pin)=1.65 fall=12
            let ignition_hz=10/(b-a)
            print ignition_hz
            let il=(v(ign_b)-v(ign_led))/1
            let ir=(v(ign_neg)-v(ign_a))/10k
            meas tran led_peak max ir
            let pr=(v(ign_neg)-v(ign_b))*ir
            meas tran resistor_watts avg pr from=20m to=70m
            let vr=v(ign_neg)-v(ign_a)
            let vr2=v(ign_a)-v(ign_b)
            meas tran resistor_volts max vr2
            """)
        .demand("HW-22", "ignition_hz", "217 ignitions per second read", "Hz", 1, 216, 218)
        .demand("HW-22", "led_peak", "peak current of the LED (limit 50 mA)", "mA", 1e3, 1, 50)
        .demand("HW-22", "resistor_watts", "both series resistors (0.6 W each)", "W", 1, 0, 0.6)
        .demand(
            "HW-22",
            "resistor_volts",
            "largest voltage on one series resistor (350 V)",
            "V",
            1,
            0,
            350)
        .build();
  }
}
