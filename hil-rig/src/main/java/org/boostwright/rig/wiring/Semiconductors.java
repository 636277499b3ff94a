package org.boostwright.rig.wiring;

import static org.boostwright.rig.wiring.PartClasses.of;

/** The classes of semiconductors the circuit uses; their models are in the spice package. */
public final class Semiconductors {
  public static final PartClass DIODE_FLYBACK =
      of(
          "diode_rectifier",
          "Diode, rectifier",
          "1 A, 200 V, 30 A surge",
          "Carries the coil current when a switch opens.",
          "Fast type or Schottky of 100 V: same release time.",
          "D_RECT");

  public static final PartClass DIODE_LOW_LEAKAGE =
      of(
          "diode_low_leakage",
          "Diode, low leakage",
          "75 V, 0.1 A, below 5 nA at 25 degC and 100 nA at 85 degC",
          "A leaking pump diode shortens the hold time of the heartbeat gate.",
          "The collector-base diode of a small-signal transistor. Not a Schottky.",
          "D_LOWLEAK");

  public static final PartClass SCHOTTKY_POWER =
      of(
          "schottky_power",
          "Diode, Schottky, power",
          "5 A, 60 V, below 0.55 V at 3 A",
          "Reverse battery.",
          "A P-channel MOSFET as an ideal diode: 0.4 V less drop.",
          "D_SCHOTTKY_POWER");

  public static final PartClass SCHOTTKY_CLAMP =
      of(
          "schottky_clamp",
          "Diode, Schottky, signal",
          "30 V, 0.2 A, below 0.35 V at 1 mA",
          "Holds a pin within 0.3 V of its supply while a wire is on 16 V.",
          "Two in one three-pin case.",
          "D_SCHOTTKY");

  public static final PartClass ZENER_GATE =
      of(
          "zener_gate",
          "Zener diode 12 V",
          "12 V, 5 %, 0.5 W",
          "Keeps the gate of the high-side switch within its 20 V.",
          "10 V to 15 V.",
          "D_ZENER_12");

  public static final PartClass ZENER_PUMP =
      of(
          "zener_pump",
          "Zener diode 8.2 V",
          "8.2 V, 5 %, 0.5 W",
          "Makes the pump swing, and with it the hold time, independent of the battery.",
          "7.5 V: hold time 5 % shorter.",
          "D_ZENER_8V2");

  public static final PartClass ZENER_COIL =
      of(
          "zener_coil",
          "Zener diode 12 V, 1.3 W",
          "12 V, 5 %, 1.3 W, 1 A peak",
          "In series with the flyback diode: the coil releases in 40 % of the time.",
          "A wire link: plain diode.",
          "D_ZENER_12");

  public static final PartClass TVS_COIL =
      of(
          "tvs_coil",
          "Suppressor diode 33 V, one direction",
          "33 V stand-off, 36.7 to 40.6 V at 1 mA, 600 W",
          "Releases the coil fastest; stays off in a load dump of 33 V.",
          "30 V: conducts in a load dump.",
          "D_TVS_33");

  public static final PartClass TVS_SUPPLY =
      of(
          "tvs_load_dump",
          "Suppressor diode 24 V for load dump, one direction",
          "24 V stand-off, 26.7 to 29.5 V at 5 mA, at most 33 V at 40 A for 400 ms",
          "Takes an unsuppressed load dump, stays off on a 24 V jump start.",
          "A smaller one only on a car whose alternator is known to limit the dump itself.",
          "D_TVS_24");

  public static final PartClass DIODE_SIGNAL =
      of(
          "diode_signal",
          "Diode, signal",
          "75 V, 0.2 A",
          "Carries the LED of the optocoupler past negative ringing.",
          "Any small rectifier.",
          "D_SIGNAL");

  public static final PartClass ZENER_TACH =
      of(
          "zener_tach",
          "Zener diode 5.6 V",
          "5.6 V, 5 %, 0.5 W",
          "A level below 7 V does not light the optocoupler: ringing at the end of the spark.",
          "",
          "D_ZENER_5V6");

  public static final PartClass NMOS_POWER =
      of(
          "nmos_power",
          "MOSFET, N-channel, specified at 2.5 to 3.3 V gate drive",
          "60 V, 3 A, threshold 0.8 to 1.5 V, at most 0.2 Ω at 3.0 V, avalanche rated",
          "The pin delivers 3.0 to 3.3 V: a part whose resistance is only given at 4.5 V or 10 V"
              + " may stay half closed and burn.",
          "Any with a line for 2.5 V or 3.3 V in its on-resistance table.",
          "NMOS_POWER");

  public static final PartClass NMOS_STANDARD =
      of(
          "nmos_standard",
          "MOSFET, N-channel, ordinary gate",
          "60 V, threshold 2 to 4 V",
          "Not for this circuit: the wrong part that ready-made modules carry.",
          "",
          "NMOS_STANDARD");

  public static final PartClass NMOS_SMALL =
      of(
          "nmos_small",
          "MOSFET, N-channel, small signal",
          "50 V, 0.2 A, threshold 0.8 to 1.5 V, gate leakage below 100 nA",
          "Its threshold ends the hold time of the heartbeat gate.",
          "None with a wider threshold range.",
          "NMOS_SMALL");

  public static final PartClass PMOS_HIGH_SIDE =
      of(
          "pmos_high_side",
          "MOSFET, P-channel",
          "60 V, 3 A, threshold 1 to 3 V, at most 0.15 Ω at 10 V, gate 20 V",
          "Coil supply switch.",
          "A protected high-side switch with an enable input that draws less than 1 mA.",
          "PMOS_HIGH");

  public static final PartClass OPAMP =
      of(
          "opamp_rail",
          "Operational amplifier, rail to rail in and out",
          "5 V, 1 MHz, offset 3 mV, bias 10 nA, stable into the filter",
          "Buffers a sensor so that the filter is driven even when the wire is open.",
          "Any CMOS type for 5 V whose input diodes bear 2 mA.",
          "OPAMP_RAIL");

  public static final PartClass COMPARATOR =
      of(
          "comparator",
          "Comparator, open-collector output, inputs to ground",
          "5 V, offset 5 mV",
          "Tells coil current from none.",
          "",
          "COMPARATOR");

  public static final PartClass SCHMITT =
      of(
          "schmitt",
          "Schmitt-trigger buffer",
          "3.3 V, thresholds 1.2 and 2.0 V, input to 5.5 V",
          "Makes clean edges of a slow or noisy tach pulse.",
          "Two inverters in series.",
          "SCHMITT_3V3");

  public static final PartClass OPTOCOUPLER =
      of(
          "optocoupler",
          "Optocoupler, transistor output",
          "CTR at least 50 % at 0.3 mA, 3.75 kV, LED 50 mA peak",
          "Keeps 400 V off the board.",
          "A logic-output type with a threshold below 0.3 mA.",
          "OPTO");

  public static final PartClass BUCK_5V =
      of(
          "regulator_5v",
          "Step-down module 12 V to 5.1 V",
          "input 7 to 36 V (40 V peak), 5.1 V, 5 A (3 A for a Pi 4), short-circuit proof",
          "Feeds the computer; the input rating must stand above the clamped load dump, 33 V.",
          "A car adapter with a USB-C plug, if its data sheet names 36 V.",
          "BUCK_5V");

  public static final PartClass TRACKER_5V =
      of(
          "regulator_sensor",
          "Sensor-supply regulator, output proof against battery and ground",
          "5.0 V, 1 %, 70 mA, input 42 V, output -2 to 42 V",
          "A sensor wire on 12 V must not reach the computer's 5 V.",
          "5 V of the computer through a 50 mA resettable fuse: then a short to 12 V kills it.",
          "TRACKER_5V");

  public static final PartClass CONVERTER_16 =
      of(
          "adc_16",
          "Converter, 16 bit, four inputs, two-wire bus, 5 V",
          "860 samples/s, programmable range 6.144 V, inputs to supply + 0.3 V",
          "Reads the 5 V of the sensors without a divider.",
          "The 12-bit type at 3.3 V with dividers, see converter-3v3.",
          "");

  public static final PartClass CONVERTER_12 =
      of(
          "adc_12",
          "Converter, 12 bit, eight inputs, SPI, 3.3 V",
          "100 000 samples/s at 3.3 V, reference input, inputs to supply + 0.6 V",
          "Eight channels in every tick.",
          "",
          "");

  public static final PartClass LED =
      of("led", "LED, red", "2 mA type", "Warning lamp.", "", "D_LED");

  private Semiconductors() {}
}
