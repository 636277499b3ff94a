package org.boostwright.rig.logs.pulls;

import java.util.ArrayList;
import java.util.Arrays;
import java.util.EnumSet;
import java.util.List;
import java.util.Set;
import org.boostwright.core.monitor.FaultCode;
import org.boostwright.core.monitor.Reaction;

/** Finds the pulls of a log and judges whether each may be learnt from. */
public final class PullFinder {
  private static final double RUNNING_RPM = 500.0;
  private static final double SHORT_SECONDS = 1.5;
  private static final double SHORT_RPM = 500.0;
  private static final double SLOWEST_REFRESH_SECONDS = 0.0501;
  private static final double OPENING_SECONDS = 0.3;
  private static final double SHIFT_DROP = 0.85;
  private static final double SLIP = 0.06;
  private static final double SHUTTING_SECONDS = 0.06;
  private static final double SLIP_SECONDS = 0.1;
  private static final double SLOWEST_ROAD_KMH = 10.0;
  private static final long RESTING = resting();

  private final DriveLog log;
  private final PullRules rules;

  private PullFinder(DriveLog log, PullRules rules) {
    this.log = log;
    this.rules = rules;
  }

  private static long resting() {
    long bits = 0L;
    for (FaultCode code : FaultCode.values()) {
      if (code.reaction().compareTo(Reaction.REST) >= 0) {
        bits |= code.bit();
      }
    }
    return bits;
  }

  /** The pulls of a log in the order of time, the flawed ones too. */
  public static List<Pull> find(DriveLog log, PullRules rules) {
    return new PullFinder(log, rules).all();
  }

  private List<Pull> all() {
    List<int[]> stretches = new ArrayList<>();
    int from = -1;
    for (int r = 0; r < log.rows(); r++) {
      if (from >= 0 && (log.startsAgain(r) || !(log.demandPct(r) >= rules.shutPct()))) {
        stretches.add(new int[] {from, r});
        from = -1;
      }
      if (from < 0 && log.demandPct(r) >= rules.openPct() && log.rpm(r) > RUNNING_RPM) {
        from = r;
      }
    }
    if (from >= 0) {
      stretches.add(new int[] {from, log.rows()});
    }
    List<Pull> pulls = new ArrayList<>();
    for (int i = 0; i < stretches.size(); i++) {
      int[] first = stretches.get(i);
      boolean lifted = false;
      int to = first[1];
      while (i + 1 < stretches.size() && joins(to, stretches.get(i + 1)[0])) {
        to = stretches.get(++i)[1];
        lifted = true;
      }
      to = clearOfShutting(first[0], to);
      if (log.seconds(to - 1) - log.seconds(first[0]) >= rules.leastSeconds()) {
        pulls.add(PullMeter.measure(log, first[0], to, gear(first[0], to), flaws(first[0], to, lifted)));
      }
    }
    return pulls;
  }

  /** The last means must not hold rows in which the throttle was shut already. */
  private int clearOfShutting(int from, int to) {
    int end = to;
    while (end - 1 > from && log.seconds(to - 1) - log.seconds(end - 1) < SHUTTING_SECONDS) {
      end--;
    }
    return end;
  }

  private boolean joins(int end, int next) {
    for (int r = end; r <= next; r++) {
      if (log.startsAgain(r)) {
        return false;
      }
    }
    return log.seconds(next) - log.seconds(end) < rules.mergeSeconds();
  }

  private int gear(int from, int to) {
    return log.gear(from + (to - from) / 2);
  }

  private Set<PullFlaw> flaws(int from, int to, boolean lifted) {
    EnumSet<PullFlaw> flaws = EnumSet.noneOf(PullFlaw.class);
    double highest = 0.0;
    boolean finite = true;
    long faults = 0L;
    for (int r = from; r < to; r++) {
      highest = Math.max(highest, log.rpm(r));
      if (log.rpm(r) < SHIFT_DROP * highest) {
        flaws.add(PullFlaw.GEAR_CHANGED);
      }
      finite &= log.mapKpaAbs(r) > 0.0 && log.rpm(r) > 0.0;
      faults |= log.faults(r);
      boolean opening = log.seconds(r) - log.seconds(from) < OPENING_SECONDS;
      lifted |= !opening && !(log.demandPct(r) >= rules.shutPct());
    }
    if (lifted) {
      flaws.add(PullFlaw.THROTTLE_LIFTED);
    }
    if (!finite) {
      flaws.add(PullFlaw.SENSOR_DOUBT);
    }
    if ((faults & RESTING) != 0L) {
      flaws.add(PullFlaw.FAULT);
    }
    if (log.seconds(to - 1) - log.seconds(from) < SHORT_SECONDS
        || !(log.rpm(to - 1) - log.rpm(from) >= SHORT_RPM)) {
      flaws.add(PullFlaw.TOO_SHORT);
    }
    if (!(log.refreshSeconds() <= SLOWEST_REFRESH_SECONDS)) {
      flaws.add(PullFlaw.SAMPLED_TOO_SLOWLY);
    }
    if (!flaws.contains(PullFlaw.GEAR_CHANGED) && slipped(from, to)) {
      flaws.add(PullFlaw.WHEELSPIN);
    }
    return flaws;
  }

  /** Engine speed over road speed above its own median for a tenth of a second. */
  private boolean slipped(int from, int to) {
    double[] ratios = new double[to - from];
    int n = 0;
    for (int r = from; r < to; r++) {
      if (log.roadKmh(r) > SLOWEST_ROAD_KMH) {
        ratios[n++] = log.rpm(r) / log.roadKmh(r);
      }
    }
    if (n < (to - from) / 2) {
      return false;
    }
    double[] sorted = Arrays.copyOf(ratios, n);
    Arrays.sort(sorted);
    double median = sorted[n / 2];
    double since = Double.NaN;
    for (int r = from; r < to; r++) {
      boolean slips = log.roadKmh(r) > SLOWEST_ROAD_KMH
          && log.rpm(r) / log.roadKmh(r) > (1.0 + SLIP) * median;
      since = !slips ? Double.NaN : Double.isNaN(since) ? log.seconds(r) : since;
      if (log.seconds(r) - since >= SLIP_SECONDS) {
        return true;
      }
    }
    return false;
  }
}
