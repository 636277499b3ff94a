package org.boostwright.rig.logs.pulls;

/**
 * Regular swinging of the pressure: turning points of the 100 ms mean about its own mean of one
 * second, that alternate sides and reach at least 2.5 kPa.
 *
 * @param turns alternating turning points
 * @param kpa mean height from one to the next, kPa; 0 without any
 * @param periodSeconds mean time of a full swing, s; NaN with fewer than three turns
 */
public record Swing(int turns, double kpa, double periodSeconds) {
  private static final double REACH_KPA = 2.5;
  private static final double HALF_WINDOW_SECONDS = 0.5;
  private static final int HUNTING_TURNS = 4;

  /** Measures rows {@code from} to before {@code to}. */
  public static Swing of(DriveLog log, int from, int to) {
    double[] means = new double[Math.max(0, to - from)];
    for (int i = 0; i < means.length; i++) {
      means[i] = log.meanKpaAbs(from + i);
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
      if (Math.abs(off) >= REACH_KPA && off * extreme <= 0.0) {
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
