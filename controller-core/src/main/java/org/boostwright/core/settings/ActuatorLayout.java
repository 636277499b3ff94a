package org.boostwright.core.settings;

/**
 * How the wastegate is moved. There is one layout only: with a single port, a dead coil leaves
 * boost on the actuator and the gate opens at spring pressure.
 */
public enum ActuatorLayout {
  /** One pressure port, spring against it: more pressure at the port opens the gate. */
  SINGLE_PORT
}
