package org.boostwright.rig.wiring;

/**
 * The classes of parts without semiconductors the circuit uses. Ratings are limits a data sheet
 * must meet, chosen for this circuit; the reasons stand beside them.
 */
public final class PartClasses {
  /** Where the circuit ends; nothing to buy. */
  public static final PartClass TERMINAL = of("terminal", "Terminal", "", "", "", "");

  public static final PartClass RESISTOR =
      of(
          "resistor_1pct",
          "Resistor, metal film, 1 %",
          "0.25 W, 1 %, 100 ppm/K, 200 V",
          "Everywhere no better one is asked for.",
          "5 % only where the value is 10 kΩ or more and no time or level depends on it.",
          "");

  public static final PartClass RESISTOR_EXACT =
      of(
          "resistor_0p1pct",
          "Resistor, thin film, 0.1 %",
          "0.1 W, 0.1 %, 25 ppm/K",
          "A ratio of two of these sets a scale that goes straight into the pressure reading.",
          "1 % after calibration against a gauge; then drift over temperature remains.",
          "");

  public static final PartClass RESISTOR_HIGH_VOLTAGE =
      of(
          "resistor_hv",
          "Resistor for pulse voltage",
          "0.6 W, 5 %, 350 V each, pulse-proof film",
          "Two share the 400 V spike of an ignition coil.",
          "Three ordinary 250 V resistors in series of one third the value each.",
          "");

  public static final PartClass RESISTOR_SHUNT =
      of(
          "resistor_shunt",
          "Current-sense resistor",
          "0.47 Ω, 1 W, 1 %",
          "Carries the coil current; 0.13 W at 16 V, the rest is for a shorted coil until the"
              + " fuse acts.",
          "A wire link where no coil feedback is wanted.",
          "");

  public static final PartClass CAPACITOR =
      of(
          "capacitor_x7r",
          "Capacitor, ceramic X7R",
          "50 V, 10 %",
          "Decoupling and filters.",
          "C0G up to 10 nF, film above; never Y5V or Z5U: they lose most of their value.",
          "");

  public static final PartClass CAPACITOR_FILM =
      of(
          "capacitor_film",
          "Capacitor, film",
          "63 V, 5 %",
          "Sets the hold time of the heartbeat gate and the filter of the pressure input.",
          "C0G of the same value. X7R would widen the hold time beyond 30 to 100 ms.",
          "");

  public static final PartClass CAPACITOR_BULK =
      of(
          "capacitor_bulk",
          "Capacitor, aluminium electrolytic",
          "63 V, 105 degC, low impedance",
          "Carries the regulators through ignition noise; 63 V because a load dump reaches 33 V.",
          "50 V at the least.",
          "");

  public static final PartClass FUSE =
      of(
          "fuse_blade",
          "Fuse, blade type, in a sealed holder",
          "32 V, time-lag as usual in cars",
          "Protects the wire. The coil has its own fuse of 2 A: 30 Ω draws 0.5 A.",
          "3 A for a coil below 12 Ω. Never a bigger one to stop it from blowing.",
          "");

  public static final PartClass SPRING_SWITCH =
      of(
          "switch_spring_only",
          "Spring-only switch: toggle with a guard",
          "14 V DC, 5 A, positive opening",
          "Breaks the coil feed by hand; must be reached with the belts on.",
          "A latching push button with the same DC rating.",
          "");

  public static final PartClass LINK =
      of("link", "Wire link or solder bridge", "2 A", "Fitted on purpose or left open.", "", "");

  public static final PartClass RELAY =
      of(
          "relay",
          "Relay, 12 V, one make contact",
          "coil 160 Ω, contact 2 A at 14 V DC, drops out above 1.2 V",
          "Engine-cut contact, free of any potential.",
          "Reed relay with its own diode.",
          "RELAY_12V");

  public static final PartClass VALVE_COIL =
      of(
          "valve",
          "Three-port valve, rest joins supply and actuator",
          "12 V, coil 24 to 40 Ω, picks up at 0.20 A or less, drops out above 0.05 A",
          "Coil off must pass pressure to the actuator.",
          "A two-port bleed valve cannot do this job.",
          "");

  public static final PartClass MODULE =
      of("module", "Ready-made module", "see wiring/README.md", "", "", "");

  private PartClasses() {}

  static PartClass of(
      String id, String title, String ratings, String why, String alternatives, String model) {
    return new PartClass(id, title, ratings, why, alternatives, model);
  }
}
