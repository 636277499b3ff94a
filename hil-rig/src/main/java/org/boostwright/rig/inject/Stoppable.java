package org.boostwright.rig.inject;

/** Whether the valve's coil can keep the pressure down while a fault stands. */
public enum Stoppable {
  /** Coil off is spring pressure: the full rule for unsafe runs holds. */
  BY_REST,
  /** The low-side driver no longer obeys: only the coil supply switch takes the current away. */
  BY_SUPPLY_SWITCH,
  /** The coil supply switch no longer opens: only the low-side driver takes the current away. */
  BY_DRIVER,
  /**
   * Nothing the coil does reaches the wastegate: only the engine cut, the driver's foot and the
   * mechanic can stop it. Reported apart, with its peak.
   */
  ONLY_BY_ENGINE_CUT,
  /** The program stands still: the heartbeat circuit opens the coil supply. */
  BY_HEARTBEAT
}
