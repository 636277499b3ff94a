package org.boostwright.core.bench;

/**
 * One conclusion of a session.
 *
 * @param code what it is, with meaning and remedy
 * @param measured what was measured, value and unit
 */
public record BenchVerdict(VerdictCode code, String measured) {
  /** Measured, then what it means. */
  public String text() {
    return measured + " " + code.meaning();
  }
}
