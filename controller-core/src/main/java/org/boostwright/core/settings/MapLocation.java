package org.boostwright.core.settings;

/** Where the pressure sensor sits; decides what counts as a sign of life. */
public enum MapLocation {
  /** In the intake manifold: sees vacuum at idle. */
  INTAKE_MANIFOLD,
  /** Before the throttle, or on an engine without one: never sees vacuum, must show a rise. */
  BEFORE_THROTTLE
}
