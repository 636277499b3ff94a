package org.boostwright.rig.inject;

/** Where a fault shows first, and so where the proof is looked for that it took effect. */
public enum Site {
  /** Volts, times and answers of the pressure sensor. */
  MAP_INPUT,
  /** Volts, times and answers of any other sensor. */
  OTHER_INPUT,
  /** Pulses of engine or road speed. */
  PULSES,
  /** Key, permit, switches, feedback and read-back. */
  SWITCHES,
  /** Coil current or spool. */
  COIL,
  /** Spool alone: current that moves nothing has no effect on the car. */
  SPOOL,
  /** Pressures, lift or throttle of the car itself. */
  CAR,
  /** Time of the ticks. */
  TIME
}
