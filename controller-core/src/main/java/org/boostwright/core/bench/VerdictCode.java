package org.boostwright.core.bench;

import java.util.Locale;

/**
 * What a bench session can conclude, in the user's words: what it means and what to do.
 *
 * <p>Order is severity: dangerous ones first.
 */
public enum VerdictCode {
  PORTS_SWAPPED(
      Grade.DANGEROUS,
      "Supply and vent hoses are exchanged: with the coil off the actuator sees no pressure, so the"
          + " wastegate would stay shut and boost would rise without limit.",
      "Exchange the two hoses at the valve, then run the bench again."),
  ACTUATOR_ON_VENT(
      Grade.DANGEROUS,
      "The actuator hose sits on the vent port: the actuator never sees pressure, boost would rise"
          + " without limit.",
      "Move the actuator hose to the port that blows while the coil is off, then run again."),
  DRIVER_INVERTED(
      Grade.DANGEROUS,
      "The driver works the wrong way round: the coil is energised when it should be off, also while"
          + " the computer starts. The actuator sees no pressure then: boost without limit.",
      "Rewire the driver so that a low pin switches the coil off; use a pin that boots low."),
  DRIVER_STUCK_ON(
      Grade.DANGEROUS,
      "The driver conducts all the time: the coil is on whenever its supply is on.",
      "Replace the MOSFET and its clamp diode; check the gate's pull-down and wire."),
  VALVE_STUCK_ENERGISED(
      Grade.DANGEROUS,
      "The valve hangs in its energised place: the actuator never sees pressure.",
      "Clean or replace the valve."),
  REST_SEES_NOTHING(
      Grade.DANGEROUS,
      "With the coil off the actuator line sees no pressure. Ports exchanged, driver inverted, valve"
          + " stuck, supply hose off or the gauge on the wrong line: this cannot tell which.",
      "Pull the coil's plug: pressure comes = driver; otherwise put the gauge straight on the supply"
          + " hose: no pressure = supply; then listen at the open port while the coil switches:"
          + " a puff = gauge on the wrong line, steady while off = hoses exchanged."),
  NO_AIR_AT_ACTUATOR(
      Grade.PROBLEM,
      "No air reaches the actuator line although the valve clicks and no port blows: supply hose off,"
          + " blocked or shut, or the hose between valve and gauge off. In the car: boost without"
          + " limit.",
      "Look for the hiss; put the gauge straight on the supply hose, then on the valve's actuator"
          + " port."),
  SENSOR_ON_WRONG_LINE(
      Grade.PROBLEM,
      "The gauge or sensor is not on the actuator line: the valve puffs at its vent with every click,"
          + " yet the reading does not follow.",
      "Tee the gauge into the hose between the valve's actuator port and the actuator."),
  SUPPLY_AND_ACTUATOR_EXCHANGED(
      Grade.PROBLEM,
      "Supply and actuator hoses are exchanged: at rest all looks right, but energising blows the"
          + " supply off and traps the pressure in the actuator, so duty has no effect.",
      "Exchange the two hoses at the valve, then run the bench again."),
  VENT_BLOCKED(
      Grade.PROBLEM,
      "The valve clicks but nothing leaves its vent: the vent is blocked, so duty has no effect.",
      "Open the vent: plug, filter, kinked hose."),
  LINE_DOES_NOT_EMPTY(
      Grade.PROBLEM,
      "Energising does not empty the actuator line. Vent blocked, supply and actuator hoses exchanged,"
          + " or the gauge on the supply hose: this cannot tell which.",
      "Listen at the vent while the coil switches: nothing = blocked; steady while on = hoses"
          + " exchanged; a puff = gauge on the wrong line."),
  BLEED_VALVE(
      Grade.PROBLEM,
      "Fully energised the line keeps part of its pressure and the vent blows all the while: a"
          + " two-port bleed valve, or a valve that leaks inside. It cannot hold the wastegate shut.",
      "Fit a three-port valve that shuts the supply when it vents."),
  COIL_OPEN(
      Grade.PROBLEM,
      "The coil or its wire is broken: no click and no resistance between its pins.",
      "Check the plug and its pins; replace the valve if the coil itself is open."),
  COIL_SHORT(
      Grade.PROBLEM,
      "The coil is shorted: too little resistance between its pins to be a coil.",
      "Replace the valve; check the MOSFET and fuse afterwards."),
  NO_DRIVE(
      Grade.PROBLEM,
      "The coil is sound and clicks on a battery, but not from the driver.",
      "Check fuse, coil supply switch, spring-only switch, gate wire and ground."),
  VALVE_STUCK_AT_REST(
      Grade.PROBLEM,
      "The coil has its resistance but the valve does not click, not even on a battery: the spool"
          + " hangs at rest. Spring boost is safe, control is not possible.",
      "Clean or replace the valve."),
  NO_CLICK(
      Grade.PROBLEM,
      "Nothing clicks. Coil open, spool stuck or no drive: this cannot tell which.",
      "Measure the coil between its pins: open = coil; then touch it to a 9 to 12 V battery: a click"
          + " = driver, none = valve."),
  CLICKS_MISSING(
      Grade.PROBLEM,
      "Clicks are missing from the pattern: a loose contact or a sticking spool.",
      "Move the plug and the wires while it clicks; clean the valve."),
  LEAK(
      Grade.PROBLEM,
      "The actuator line leaks. It costs boost control and, when it grows, lets boost rise.",
      "Soap water on every joint; check the actuator's diaphragm."),
  SUPPLY_DROOPS(
      Grade.PROBLEM,
      "The bench's air cannot keep up: its pressure sags while the valve works, so the numbers do not"
          + " belong to the valve.",
      "Use a larger regulator, a tank or a shorter hose, then run again."),
  SUPPLY_RESTRICTED(
      Grade.PROBLEM,
      "The line fills much more slowly than it empties although the regulator holds: the supply hose"
          + " is kinked, too thin or has a restrictor in it.",
      "Clear the supply hose; take any restrictor out."),
  VENT_RESTRICTED(
      Grade.PROBLEM,
      "The line empties much more slowly than it fills: the vent is nearly blocked.",
      "Clear the vent: filter, kinked hose."),
  GAUGE_UNITS(
      Grade.PROBLEM,
      "The numbers are in other units than declared.",
      "Check the unit of each gauge and the sensor's calibration: kPa, psi or bar, gauge or"
          + " absolute."),
  FREQUENCY_TOO_HIGH(
      Grade.PROBLEM,
      "At this PWM frequency the valve has no usable duty window: a pulse is over before the spool has"
          + " moved both ways.",
      "Use the recommended frequency."),
  SETTINGS_WINDOW(
      Grade.PROBLEM,
      "The settings use duty outside what the valve can do: there it hangs at one end and a step of"
          + " duty becomes a jump in boost.",
      "Enter the measured window in the [valve] section, then run the bench again for the proof."),
  COIL_TOO_HOT(
      Grade.PROBLEM,
      "The coil would get hotter than its insulation allows.",
      "Measure the coil's resistance: it should be near 30 ohm. Use the right valve or a lower"
          + " voltage."),
  DUTY_NOT_MONOTONE(
      Grade.PROBLEM,
      "More duty did not always mean less actuator pressure.",
      "Look for a loose hose, a sticking spool or a supply that wanders; run again."),
  EDGES_NOT_FOUND(
      Grade.PROBLEM,
      "The edges of the duty window could not be found.",
      "Look for a sticking spool or a very noisy sensor; run again."),
  MODEL_MISFIT(
      Grade.PROBLEM,
      "The readings do not fit a three-port valve with a chamber behind it.",
      "Check that nothing else hangs on the line; run again."),
  ACTUATOR_LEAKS(
      Grade.PROBLEM,
      "The actuator does not hold its pressure for a minute.",
      "Replace the actuator or its hose: its diaphragm leaks."),
  STOPPED(Grade.PROBLEM, "The session stopped before its end; the coil is off.", "See above."),
  LINE_UNSTEADY(
      Grade.ADVICE,
      "The line did not settle in some readings.",
      "Steady the air supply; let nobody else use the compressor."),
  GAUGES_DISAGREE(
      Grade.ADVICE,
      "At rest the line shows less than the regulator's gauge.",
      "Check the regulator's gauge; the line's reading is the one used."),
  WINDOW_NARROW(
      Grade.ADVICE,
      "The duty window at this PWM frequency is narrow.",
      "Use the recommended frequency."),
  ACTUATOR_SPRING(
      Grade.ADVICE,
      "The actuator cracks outside the 48 to 69 kPa (7 to 10 psi) usual for a factory spring.",
      "Right for a changed spring; otherwise check preload and rod.");

  /** How much a verdict matters. */
  public enum Grade {
    /** Could let boost rise without limit: nothing may be driven. */
    DANGEROUS,
    /** Must be put right before the proof. */
    PROBLEM,
    /** Good to know; does not stand in the way of the proof. */
    ADVICE
  }

  private final Grade grade;
  private final String meaning;
  private final String next;

  VerdictCode(Grade grade, String meaning, String next) {
    this.grade = grade;
    this.meaning = meaning;
    this.next = next;
  }

  /** Stable name, snake_case. */
  public String id() {
    return name().toLowerCase(Locale.ROOT);
  }

  /** How much it matters. */
  public Grade grade() {
    return grade;
  }

  /** What it means. */
  public String meaning() {
    return meaning;
  }

  /** What to do. */
  public String next() {
    return next;
  }
}
