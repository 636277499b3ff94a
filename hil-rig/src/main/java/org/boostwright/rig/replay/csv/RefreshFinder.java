package org.boostwright.rig.replay.csv;

import java.util.Arrays;
import java.util.BitSet;

/**
 * Finds how many rows lie between two fresh values of a signal, and which rows those are.
 *
 * <p>A logger that reads one of {@code n} signals per row lets a signal change only every {@code n}
 * rows, so the rows from change to change are multiples of {@code n}. A signal read at its own pace
 * instead shows changes that are never close together though each is larger than one step. Cells
 * that are empty except where the signal was read settle the question at once.
 */
final class RefreshFinder {
  /** Fewer changes than this prove nothing. */
  private static final int FEWEST_CHANGES = 8;

  private static final int MOST_ROWS = 64;
  private static final double MULTIPLE_SHARE = 0.9;
  private static final double LARGE_STEP_SHARE = 0.3;
  private static final double SPARSE_SHARE = 0.2;

  private final double[] values;
  private final BitSet breaks;
  private final int[] changes;
  private final boolean sparse;

  /**
   * @param values one per row, NaN where empty
   * @param breaks rows at which the recording starts again
   */
  RefreshFinder(double[] values, BitSet breaks) {
    this.values = values;
    this.breaks = breaks;
    int[] found = new int[values.length];
    int n = 0;
    int present = 0;
    int first = -1;
    double last = Double.NaN;
    for (int row = 0; row < values.length; row++) {
      if (Double.isNaN(values[row])) {
        continue;
      }
      present++;
      if (first < 0) {
        first = row;
      } else if (values[row] != last) {
        found[n++] = row;
      }
      last = values[row];
    }
    changes = Arrays.copyOf(found, n);
    int since = first < 0 ? 0 : values.length - first;
    sparse = since - present > SPARSE_SHARE * since;
  }

  /** True when cells are filled only where the signal was read or had changed. */
  boolean isSparse() {
    return sparse;
  }

  /**
   * Rows per fresh value; 0 when the data do not tell.
   *
   * @param step smallest step of the signal
   */
  double rowsPerRefresh(double step) {
    if (sparse) {
      return sparseRows();
    }
    int[] gaps = gaps();
    if (gaps.length < FEWEST_CHANGES) {
      return 0.0;
    }
    for (int n = MOST_ROWS; n > 1; n--) {
      int multiples = 0;
      for (int gap : gaps) {
        multiples += gap % n == 0 ? 1 : 0;
      }
      if (multiples >= MULTIPLE_SHARE * gaps.length) {
        return n;
      }
    }
    Arrays.sort(gaps);
    int few = gaps[gaps.length / 10];
    return few > 1 && largeSteps(step) >= LARGE_STEP_SHARE * changes.length ? few : 1.0;
  }

  private double sparseRows() {
    int present = 0;
    for (double value : values) {
      present += Double.isNaN(value) ? 0 : 1;
    }
    return present == 0 ? 0.0 : (double) values.length / present;
  }

  /** Rows from change to change, leaving out those across a pause. */
  private int[] gaps() {
    int[] gaps = new int[changes.length];
    int n = 0;
    for (int i = 1; i < changes.length; i++) {
      int pause = breaks.nextSetBit(changes[i - 1] + 1);
      if (pause < 0 || pause > changes[i]) {
        gaps[n++] = changes[i] - changes[i - 1];
      }
    }
    return Arrays.copyOf(gaps, n);
  }

  private int largeSteps(double step) {
    int large = 0;
    for (int row : changes) {
      int before = row - 1;
      while (before >= 0 && Double.isNaN(values[before])) {
        before--;
      }
      large += before >= 0 && Math.abs(values[row] - values[before]) > 1.5 * step ? 1 : 0;
    }
    return large;
  }

  /**
   * The fresh rows when a fresh value comes every {@code rows} rows: every change, and evenly
   * between two changes the readings that found the same value again. Nothing is assumed to be
   * fresh across a pause before it was seen to change or its turn has come.
   */
  BitSet freshRows(double rows) {
    BitSet fresh = new BitSet(values.length);
    if (sparse || rows <= 1.0) {
      for (int row = 0; row < values.length; row++) {
        fresh.set(row, !Double.isNaN(values[row]));
      }
      return fresh;
    }
    int start = 0;
    while (start < values.length) {
      int next = breaks.nextSetBit(start + 1);
      int end = next < 0 ? values.length : next;
      freshBetweenBreaks(fresh, start, end, rows);
      start = end;
    }
    return fresh;
  }

  private void freshBetweenBreaks(BitSet fresh, int start, int end, double rows) {
    int last = firstReading(start, end, rows);
    if (last >= end) {
      return;
    }
    fresh.set(last);
    for (int change : changes) {
      if (change > last && change < end) {
        fill(fresh, last, change, Math.max(1, (int) Math.round((change - last) / rows)));
        last = change;
      }
    }
    for (double row = last + rows; Math.round(row) < end; row += rows) {
      setIfPresent(fresh, (int) Math.round(row));
    }
  }

  /** The first row whose value is known to be read in this stretch. */
  private int firstReading(int start, int end, double rows) {
    int first = start;
    while (first < end && Double.isNaN(values[first])) {
      first++;
    }
    if (first > start || start == 0) {
      return first; // the cell was empty until it was read
    }
    int turn = start + (int) Math.ceil(rows) - 1;
    for (int change : changes) {
      if (change >= start) {
        return Math.min(change, turn);
      }
    }
    return turn;
  }

  private void fill(BitSet fresh, int from, int to, int parts) {
    for (int part = 1; part <= parts; part++) {
      setIfPresent(fresh, from + (int) Math.round((double) (to - from) * part / parts));
    }
  }

  private void setIfPresent(BitSet fresh, int row) {
    if (!Double.isNaN(values[row])) {
      fresh.set(row);
    }
  }
}
