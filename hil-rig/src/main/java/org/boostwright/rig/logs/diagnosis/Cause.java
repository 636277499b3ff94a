package org.boostwright.rig.logs.diagnosis;

/** What can be wrong with boost, in a workshop's words, and what to check next. */
public enum Cause {
  SENSOR_OFFSET(
      "pressure sensor off",
      "compare the reading with the engine stopped against a weather report or another gauge; check"
          + " calibration, supply and ground of the sensor"),
  HOSE_OFF(
      "hose off at the actuator",
      "do not drive: look at the hoses between compressor, valve and actuator"),
  NO_AUTHORITY(
      "valve has no effect",
      "listen for the valve on the bench; look for a stuck valve, a swapped port or a blocked vent"),
  CREEP(
      "boost creep: the gate cannot pass enough exhaust",
      "lower the target or enlarge gate and port; more duty is never the answer"),
  OVERBOOST_CUT(
      "overboost cut without a cause in the car",
      "the limit stands too near the target: lower the target, or prove a higher limit"),
  HUNTING("boost hunts", "work out new gains with 'gains', calm first"),
  SPIKE(
      "boost spike at the end of spooling",
      "raise spool.lead_s; look whether the actuator's hose is long or narrow"),
  LEAK(
      "charge air leak",
      "pressure-test intake and charge hoses, clamps and the recirculation valve"),
  SLOW_SPOOL(
      "slow spool",
      "look for an exhaust leak before the turbine, a blocked filter or exhaust, a worn turbo"),
  SAG(
      "boost sags toward the red line",
      "a stiffer spring; more duty cannot hold a gate that the exhaust pushes open"),
  DUTY_WINDOW(
      "duty window wrong",
      "repeat the bench: other valve, frequency or clamp than the settings were made for"),
  TABLE_HOLE("hole or hump in base duty", "correct the table with 'correct'");

  private final String words;
  private final String next;

  Cause(String words, String next) {
    this.words = words;
    this.next = next;
  }

  /** As shown to people. */
  public String words() {
    return words;
  }

  /** What to check next. */
  public String next() {
    return next;
  }

  /** More duty could make it worse, or would hide it. */
  public boolean forbidsRaising() {
    return this == SENSOR_OFFSET
        || this == HOSE_OFF
        || this == NO_AUTHORITY
        || this == CREEP
        || this == LEAK
        || this == DUTY_WINDOW
        || this == SAG;
  }
}
