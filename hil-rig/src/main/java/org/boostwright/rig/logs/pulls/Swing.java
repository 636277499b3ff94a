package org.boostwright.rig.logs.pulls;

import java.util.function.IntToDoubleFunction;

/**
 * Regular swinging of pressure or of the feedback's trim: turning points of the 100 ms mean about
 * its own mean of one second, that alternate sides and reach far enough.
 *
 * <p>Where the duty ceiling cuts every swing of the trim short, the pressure swings less than a
 * limit cycle's would, but the trim still does.
 *
 * @param turns alternating turning points
 * @param height mean from one to the next, kPa or percent duty; 0 without any
 * @param periodSeconds mean time of a full swing, s; NaN with fewer than three turns
 */
public record Swing(int turns, double height, double periodSeconds) {
  private static final double REACH_KPA = 2.5;
  private static final double REACH_PCT = 2.5;
  private static final int HALF_MEAN_ROWS = 10;
  private static final double HALF_WINDOW_SECONDS = 0.5;
  private static final int HUNTING_TURNS = 4;

  /** Swinging of the pressure in rows {@code from} to before {@code to}. */
  public static Swing ofPressure(DriveLog log, int from, int to) {
    return of(log, from, to, log::meanKpaAbs, REACH_KPA);
  }

  /** Swinging of the trim in rows of a run recorded by Boostwright. */
  public static Swing ofTrim(DriveLog log, int from, int to) {
    return of(log, from, to, row -> trimPct(log, row), REACH_PCT);
  }

  private static double trimPct(DriveLog log, int row) {
    int first = Math.max(0, row - HALF_MEAN_ROWS);
    int last = Math.min(log.rows() - 1, row + HALF_MEAN_ROWS);
    double sum = 0.0;
    for (int r = first; r <= last; r++) {
      sum += log.trimFraction(r);
    }
    return 100.0 * sum / (last - first + 1);
  }

  private static Swing of(
      DriveLog log, int from, int to, IntToDoubleFunction mean, double reach) {
    double[] means = new double[Math.max(0, to - from)];
    for (int i = 0; i < means.length; i++) {
      means[i] = mean.applyAsDouble(from + i);
    }
    int half = halfWindow(log, from, to);
    int turns = 0;
    int first = 0;
    int last = 0;
    double heights = 0.0;
    double extreme = 0.0;
    double lastExtreme = 0.0;
    double sum = 0.0;
    int n = 0;
    int head = 0;
    int tail = 0;
    for (int i = 0; i < means.length; i++) {
      while (head < means.length && head <= i + half) {
        sum += means[head++];
        n++;
      }
      while (tail < i - half) {
        sum -= means[tail++];
        n--;
      }
      if (i - half < 0 || i + half >= means.length) {
        continue; // a window cut short leans to one side
      }
      double off = means[i] - sum / n;
      if (Math.abs(off) >= reach && off * extreme <= 0.0) {
        turns++;
        heights += turns > 2 ? Math.abs(extreme - lastExtreme) : 0.0;
        first = turns == 1 ? i : first;
        last = i;
        lastExtreme = extreme;
        extreme = off;
      } else if (off * extreme > 0.0 && Math.abs(off) > Math.abs(extreme)) {
        extreme = off;
      }
    }
    double period =
        turns < 3
            ? Double.NaN
            : 2.0 * (log.seconds(from + last) - log.seconds(from + first)) / (turns - 1);
    return new Swing(turns, turns > 2 ? heights / (turns - 2) : 0.0, period);
  }

  private static int halfWindow(DriveLog log, int from, int to) {
    double span = log.seconds(to - 1) - log.seconds(from);
    return span > 0.0 ? (int) Math.round(HALF_WINDOW_SECONDS * (to - from) / span) : 1;
  }

  /** Swings on and on. */
  public boolean hunting() {
    return turns >= HUNTING_TURNS;
  }
}
