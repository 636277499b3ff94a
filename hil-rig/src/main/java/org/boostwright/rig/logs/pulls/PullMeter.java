package org.boostwright.rig.logs.pulls;

import java.util.Arrays;
import java.util.Set;
import org.boostwright.rig.logs.pulls.Pull.Moment;

/** Measures one pull. */
final class PullMeter {
  private static final double ONSET_KPA = 10.0;
  private static final double REACHED_KPA = 2.0;
  private static final double SETTLING_SECONDS = 1.0;
  private static final double END_SECONDS = 0.2;
  private static final double HALF = 0.5;
  private static final double MOST = 0.9;

  private PullMeter() {}

  static Pull measure(DriveLog log, int from, int to, int gear, Set<PullFlaw> flaws) {
    double peak = Double.NaN;
    double end = 0.0;
    int endRows = 0;
    for (int r = from; r < to; r++) {
      double mean = log.meanKpaAbs(r);
      peak = Double.isNaN(peak) || mean > peak ? mean : peak;
      if (log.seconds(to - 1) - log.seconds(r) <= END_SECONDS) {
        end += mean;
        endRows++;
      }
    }
    double ambient = log.ambientKpaAbs(from);
    double foot = Double.isNaN(ambient) ? log.meanKpaAbs(from) : ambient;
    double target = median(log, from + (to - from) / 2, to);
    double goal = Double.isNaN(target) ? peak : target;
    Moment most = moment(log, from, to, foot + MOST * (goal - foot));
    int reached = reached(log, from, to);
    return new Pull(
        log,
        from,
        to,
        gear,
        ambient,
        goal,
        peak,
        moment(log, from, to, foot + ONSET_KPA),
        moment(log, from, to, foot + HALF * (goal - foot)),
        most,
        reached < 0 ? Double.NaN : overshoot(log, reached, to),
        reached < 0 ? Double.NaN : settledError(log, reached, to),
        peak - end / endRows,
        meanDuty(log, from, to, most),
        highestDuty(log, from, to),
        flaws);
  }

  private static double median(DriveLog log, int from, int to) {
    double[] targets = new double[to - from];
    for (int r = from; r < to; r++) {
      targets[r - from] = log.targetKpaAbs(r);
    }
    Arrays.sort(targets);
    return targets[targets.length / 2];
  }

  private static Moment moment(DriveLog log, int from, int to, double kpaAbs) {
    for (int r = from; r < to; r++) {
      if (log.meanKpaAbs(r) >= kpaAbs) {
        return new Moment(log.seconds(r) - log.seconds(from), log.rpm(r));
      }
    }
    return Moment.NEVER;
  }

  private static double over(DriveLog log, int row) {
    return log.meanKpaAbs(row) - log.targetKpaAbs(row);
  }

  private static int reached(DriveLog log, int from, int to) {
    for (int r = from; r < to; r++) {
      if (over(log, r) >= -REACHED_KPA) {
        return r;
      }
    }
    return -1;
  }

  private static double overshoot(DriveLog log, int reached, int to) {
    double most = 0.0;
    for (int r = reached; r < to; r++) {
      most = Math.max(most, over(log, r));
    }
    return most;
  }

  private static double settledError(DriveLog log, int reached, int to) {
    double sum = 0.0;
    int n = 0;
    for (int r = reached; r < to; r++) {
      if (log.seconds(r) - log.seconds(reached) >= SETTLING_SECONDS) {
        sum += over(log, r);
        n++;
      }
    }
    return n == 0 ? Double.NaN : sum / n;
  }

  private static double meanDuty(DriveLog log, int from, int to, Moment most) {
    double sum = 0.0;
    int n = 0;
    for (int r = from; r < to; r++) {
      if (log.seconds(r) - log.seconds(from) >= most.seconds()) {
        sum += log.dutyFraction(r);
        n++;
      }
    }
    return n == 0 ? Double.NaN : sum / n;
  }

  private static double highestDuty(DriveLog log, int from, int to) {
    double highest = log.controlled() ? 0.0 : Double.NaN;
    for (int r = from; r < to; r++) {
      highest = Math.max(highest, log.dutyFraction(r));
    }
    return highest;
  }
}
