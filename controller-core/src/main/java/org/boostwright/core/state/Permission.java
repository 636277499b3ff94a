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

  private static final String NOTHING = "none";
  private static final String TRIM = "+trim";

  /** In one word without blanks, for the first row of a recording: {@code 0.27}, {@code 1.0+trim}. */
  public String text() {
    return controlAllowed ? dutyCeilingFraction + (feedbackAllowed ? TRIM : "") : NOTHING;
  }

  /**
   * Reads {@link #text}.
   *
   * @throws IllegalArgumentException when it is none
   */
  public static Permission parse(String text) {
    if (text.equals(NOTHING)) {
      return NONE;
    }
    boolean trim = text.endsWith(TRIM);
    String number = trim ? text.substring(0, text.length() - TRIM.length()) : text;
    double ceiling = Double.parseDouble(number);
    if (!(ceiling >= 0.0 && ceiling <= 1.0)) {
      throw new IllegalArgumentException("'" + text + "' is no permission");
    }
    return new Permission(true, ceiling, trim);
  }
}
