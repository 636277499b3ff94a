package org.boostwright.rig.inject;

/** Whether the valve's coil can keep the pressure down while a fault stands. */
public enum Stoppable {
  /** Coil off is spring pressure: the full rule for unsafe runs holds. */
  BY_REST,
  /**
   * Nothing the coil does reaches the wastegate: only the engine cut, the driver's foot and the
   * mechanic can stop it. Reported apart, with its peak.
   */
  ONLY_BY_ENGINE_CUT,
  /** The program stands still: the heartbeat circuit opens the coil supply. */
  BY_HEARTBEAT
}
