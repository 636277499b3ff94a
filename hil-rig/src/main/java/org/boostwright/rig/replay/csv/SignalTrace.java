package org.boostwright.rig.replay.csv;

import java.util.BitSet;

/**
 * One signal of a log in its base unit, with what is known about its source.
 *
 * <p>A logger that asks a car for one signal at a time repeats the old values of the others in each
 * row. {@link #isFresh} tells the rows in which this signal was read anew from those in which an
 * old value is held; only a fresh row is a sample.
 */
public final class SignalTrace {
  private final LogSignal signal;
  private final String header;
  private final String unit;
  private final double[] values;
  private final BitSet fresh;
  private final Step resolution;
  private final Refresh refresh;
  private final double noise;

  /**
   * Smallest step of a signal.
   *
   * @param size base units; NaN when the signal never changes
   * @param origin where it comes from
   */
  public record Step(double size, Origin origin) {}

  /**
   * How often a signal is read anew.
   *
   * @param rows rows from one fresh value to the next; 1 when every row is fresh
   * @param millis usual time between fresh values, ms
   * @param longestMillis longest time the logger took for it outside pauses, ms
   * @param origin where it comes from
   */
  public record Refresh(double rows, double millis, double longestMillis, Origin origin) {}

  SignalTrace(
      ColumnUse use,
      double[] values,
      BitSet fresh,
      Step resolution,
      Refresh refresh,
      double noise) {
    this.signal = use.signal();
    this.header = use.header();
    String reference = use.gauge() ? " gauge" : " absolute";
    boolean pressure = signal.quantity() == Quantity.PRESSURE;
    this.unit = use.unit().label() + (pressure ? reference : "");
    this.values = values;
    this.fresh = fresh;
    this.resolution = resolution;
    this.refresh = refresh;
    this.noise = noise;
  }

  /** What it is. */
  public LogSignal signal() {
    return signal;
  }

  /** Header of its column. */
  public String header() {
    return header;
  }

  /** Unit it was recorded in. */
  public String unit() {
    return unit;
  }

  /** Value of a row in base units; NaN where the row has none. */
  public double value(int row) {
    return values[row];
  }

  /** True when the signal was read anew for this row. */
  public boolean isFresh(int row) {
    return fresh.get(row);
  }

  /** Number of fresh rows. */
  public int freshRows() {
    return fresh.cardinality();
  }

  /** First fresh row at or after {@code row}; -1 when there is none. */
  public int nextFresh(int row) {
    return fresh.nextSetBit(row);
  }

  /** Smallest step of the source. */
  public Step resolution() {
    return resolution;
  }

  /** How often the source is read anew. */
  public Refresh refresh() {
    return refresh;
  }

  /** Declared noise floor, standard deviation in base units; NaN when not declared. */
  public double noise() {
    return noise;
  }
}
