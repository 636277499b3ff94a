package org.boostwright.rig.replay.csv;

import java.util.ArrayList;
import java.util.Arrays;
import java.util.BitSet;
import java.util.List;

/**
 * Puts the times of the rows in strict order and finds the pauses.
 *
 * <p>Rows that fall behind and are overtaken again within a few rows are left out; a clock that
 * stays back starts the recording again. Rows that share a time are spread evenly up to the next
 * time, never wider than is usual in this log.
 */
final class TimeLine {
  private static final long DAY_NANOS = 86_400_000_000_000L;
  private static final long LONGEST_NANOS = 100 * DAY_NANOS;
  private static final int LOOK_AHEAD = 10;

  /** Time the replay lets pass where a clock was set back, ns. */
  private static final long UNKNOWN_PAUSE_NANOS = 1_000_000_000L;

  private static final double SHORTEST_PAUSE_SECONDS = 1.0;
  private static final double PAUSE_ROW_INTERVALS = 5.0;

  private final String file;
  private final long[] raw;
  private final int[] lines;
  private final boolean timeOfDay;
  private final RepairLog repairs;

  private final long[] nanos;
  private final int[] kept;
  private final BitSet setBack = new BitSet();
  private final List<Pause> pauses = new ArrayList<>();
  private int count;
  private double typicalSeconds;

  /**
   * @param raw times as read, ns; all readable
   * @param lines line of each row
   */
  TimeLine(
      String file,
      long[] raw,
      int[] lines,
      boolean timeOfDay,
      double pauseSeconds,
      RepairLog repairs)
      throws LogRefusedException {
    this.file = file;
    this.raw = new long[raw.length];
    for (int i = 0; i < raw.length; i++) {
      this.raw[i] = raw[i] - raw[0];
    }
    this.lines = lines;
    this.timeOfDay = timeOfDay;
    this.repairs = repairs;
    this.nanos = new long[raw.length];
    this.kept = new int[raw.length];
    order();
    spread();
    findPauses(pauseSeconds);
  }

  private void order() throws LogRefusedException {
    long offset = 0;
    for (int i = 0; i < raw.length; i++) {
      long t = raw[i] + offset;
      if (count > 0) {
        long last = nanos[count - 1];
        if (timeOfDay && t < last - DAY_NANOS / 2) {
          offset += DAY_NANOS;
          t += DAY_NANOS;
          repairs.add(RepairKind.MIDNIGHT, "", lines[i], "");
        } else if (timeOfDay && t > last + DAY_NANOS / 2) {
          t -= DAY_NANOS; // a straggler from before midnight
        }
        boolean behind = t < last;
        if (behind ? comesBack(i, offset, last) : runsAhead(i, offset, last, t)) {
          repairs.add(RepairKind.BACKWARD_TIME, "", lines[i], "");
          continue;
        }
        if (behind) {
          offset += last + UNKNOWN_PAUSE_NANOS - t;
          t = last + UNKNOWN_PAUSE_NANOS;
          setBack.set(count);
          repairs.add(RepairKind.CLOCK_SET_BACK, "", lines[i], "");
        }
      }
      if (t > LONGEST_NANOS) {
        throw new LogRefusedException(
            file, lines[i], 0, "time jumps to more than 100 days after the first row; remove it");
      }
      nanos[count] = t;
      kept[count] = i;
      count++;
    }
    int disorder = raw.length - count + setBack.cardinality();
    if (disorder > Math.max(3, raw.length / 10)) {
      throw new LogRefusedException(
          file,
          disorder
              + " of "
              + raw.length
              + " rows are out of order in time; sort the log or name another time column");
    }
  }

  /** True when the rows after a step back reach the last time again soon. */
  private boolean comesBack(int i, long offset, long last) {
    int end = Math.min(raw.length, i + 1 + LOOK_AHEAD);
    for (int j = i + 1; j < end; j++) {
      long t = raw[j] + offset;
      if (t >= last && t - last < DAY_NANOS / 2) {
        return true;
      }
    }
    return false;
  }

  /** True when this row alone lies ahead: the next two are back between it and the last. */
  private boolean runsAhead(int i, long offset, long last, long t) {
    if (i + 1 >= raw.length) {
      return false;
    }
    for (int j = i + 1; j < Math.min(raw.length, i + 3); j++) {
      long next = raw[j] + offset;
      if (!(next >= last && next < t)) {
        return false;
      }
    }
    return true;
  }

  private void spread() throws LogRefusedException {
    typicalSeconds = typicalInterval() * 1e-9;
    if (!(typicalSeconds > 0.0)) {
      throw new LogRefusedException(
          file, "time never moves; name the right time column in a mapping file under [time]");
    }
    int from = 0;
    while (from < count) {
      int to = runEnd(from);
      int length = to - from;
      if (length > 1) {
        double step = typicalSeconds * 1e9;
        if (to < count && !setBack.get(to)) {
          step = Math.min(step, (double) (nanos[to] - nanos[from]) / length);
        }
        long start = nanos[from];
        for (int i = 1; i < length; i++) {
          nanos[from + i] = start + Math.round(i * step);
          repairs.add(RepairKind.REPEATED_TIME, "", lines[kept[from + i]], "");
        }
      }
      from = to;
    }
    for (int i = 1; i < count; i++) {
      if (nanos[i] <= nanos[i - 1]) {
        nanos[i] = nanos[i - 1] + 1;
      }
    }
  }

  private int runEnd(int from) {
    int to = from + 1;
    while (to < count && nanos[to] == nanos[from] && !setBack.get(to)) {
      to++;
    }
    return to;
  }

  /** Median time per row, ns; rows that share a time share the time to the next. */
  private double typicalInterval() {
    double[] intervals = new double[count];
    int n = 0;
    for (int from = 0; from < count; ) {
      int to = runEnd(from);
      if (to < count && nanos[to] > nanos[from]) {
        double each = (double) (nanos[to] - nanos[from]) / (to - from);
        for (int i = from; i < to; i++) {
          intervals[n++] = each;
        }
      }
      from = to;
    }
    return n == 0 ? 0.0 : median(intervals, n);
  }

  static double median(double[] values, int n) {
    double[] sorted = Arrays.copyOf(values, n);
    Arrays.sort(sorted);
    return n % 2 == 1 ? sorted[n / 2] : 0.5 * (sorted[n / 2 - 1] + sorted[n / 2]);
  }

  private void findPauses(double declaredSeconds) {
    double longest =
        Double.isNaN(declaredSeconds)
            ? Math.max(SHORTEST_PAUSE_SECONDS, PAUSE_ROW_INTERVALS * typicalSeconds)
            : declaredSeconds;
    for (int i = 1; i < count; i++) {
      int line = lines[kept[i]];
      double seconds = (nanos[i] - nanos[i - 1]) * 1e-9;
      if (setBack.get(i)) {
        pauses.add(new Pause(i, line, Double.NaN));
      } else if (seconds > longest) {
        pauses.add(new Pause(i, line, seconds));
        repairs.add(RepairKind.PAUSE, "", line, "");
      }
    }
  }

  /** Times in strict order, ns, one for each row kept. */
  long[] nanos() {
    return Arrays.copyOf(nanos, count);
  }

  /** Which of the rows given are kept. */
  int[] kept() {
    return Arrays.copyOf(kept, count);
  }

  /** Where the recording starts again. */
  List<Pause> pauses() {
    return pauses;
  }

  /** Median time per row, s. */
  double typicalSeconds() {
    return typicalSeconds;
  }
}
