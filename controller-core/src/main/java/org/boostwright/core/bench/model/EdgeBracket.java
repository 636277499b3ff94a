package org.boostwright.core.bench.model;

/**
 * One edge of the duty window as searched for at one frequency: a pulse this short still moved
 * nothing, one this long did.
 *
 * @param frequencyHz PWM frequency, Hz
 * @param onEdge true: energising pulses, bracket of t_on; false: pauses, bracket of t_off
 * @param stillSeconds longest pulse that moved nothing, s
 * @param movedSeconds shortest pulse that moved the spool, s
 */
public record EdgeBracket(
    double frequencyHz, boolean onEdge, double stillSeconds, double movedSeconds) {
  /** Middle of the bracket, s. */
  public double middleSeconds() {
    return 0.5 * (stillSeconds + movedSeconds);
  }

  /** Standard deviation of a value that may lie anywhere inside, s. */
  public double sigmaSeconds() {
    return (movedSeconds - stillSeconds) / Math.sqrt(12.0);
  }
}
