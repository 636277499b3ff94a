package org.boostwright.core.state;

/**
 * How far the proofs let this run go. A run never gets more than it was built with.
 *
 * @param controlAllowed the valve may be driven at all with the engine running
 * @param dutyCeilingFraction highest duty, 0 to 1
 * @param feedbackAllowed the pressure feedback may trim base duty
 */
public record Permission(
    boolean controlAllowed, double dutyCeilingFraction, boolean feedbackAllowed) {

  /** Everything is proven; for the virtual car. */
  public static final Permission FULL = new Permission(true, 1.0, true);

  /** Nothing is proven: rest, but the bench works. */
  public static final Permission NONE = new Permission(false, 0.0, false);
}
