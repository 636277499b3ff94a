package org.boostwright.rig.card;

import java.util.List;
import org.boostwright.rig.logs.pulls.DriveLog;
import org.boostwright.rig.logs.pulls.Pull;

/** How far pulls went to one side of their target once spooled up. */
public final class OffTarget {
  private static final double SPOOLED_SECONDS = 0.3;

  private OffTarget() {}

  /** Farthest over target (negative: always below), kPa; NaN without a pull. */
  public static double over(List<Pull> pulls) {
    return farthest(pulls, 1.0);
  }

  /** Farthest under target (negative: always above), kPa; NaN without a pull. */
  public static double under(List<Pull> pulls) {
    return farthest(pulls, -1.0);
  }

  /** From 0.3 s after 90 % of the boost were reached, or the second half where they never were. */
  private static double farthest(List<Pull> pulls, double side) {
    double most = Double.NaN;
    for (Pull pull : pulls) {
      DriveLog log = pull.log();
      double reached = pull.most().seconds();
      double from = Double.isNaN(reached) ? 0.5 * pull.seconds() : reached + SPOOLED_SECONDS;
      for (int row = pull.from(); row < pull.to(); row++) {
        if (pull.since(row) >= from) {
          double off = side * (log.meanKpaAbs(row) - log.targetKpaAbs(row));
          most = Double.isNaN(most) ? off : Math.max(most, off);
        }
      }
    }
    return most;
  }
}
