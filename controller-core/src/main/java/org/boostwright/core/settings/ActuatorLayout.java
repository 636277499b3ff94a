package org.boostwright.core.settings;

/**
 * How the wastegate is moved. In every layout that is supported a dead coil leaves boost on the one
 * port that opens the gate against its spring, so that it opens at spring pressure.
 */
public enum ActuatorLayout {
  /** Internal gate: one pressure port, spring against it. */
  SINGLE_PORT,
  /**
   * External gate plumbed to the same effect: the valve on the port that opens it, the port on the
   * spring's side open to the air.
   */
  EXTERNAL_GATE
}
