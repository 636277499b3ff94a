package org.boostwright.core.bench.proof;

/**
 * One measured number of a proof.
 *
 * @param id dotted snake_case name
 * @param value the number
 * @param unit its unit
 * @param low lower end of its 95 % interval, NaN when there is none
 * @param high upper end, NaN when there is none
 */
public record ProofMeasurement(String id, double value, String unit, double low, double high) {
  /** First field of its written line. */
  public static final String FIRST_FIELD = "measured";

  /** The fields of its written line. */
  public String[] fields() {
    return new String[] {
      FIRST_FIELD, id, Double.toString(value), unit, Double.toString(low), Double.toString(high)
    };
  }

  /**
   * Reads {@link #fields}.
   *
   * @throws IllegalArgumentException when a number is none
   * @throws ArrayIndexOutOfBoundsException when a field is missing
   */
  public static ProofMeasurement of(String[] f) {
    return new ProofMeasurement(
        f[1], Double.parseDouble(f[2]), f[3], Double.parseDouble(f[4]), Double.parseDouble(f[5]));
  }
}
