package org.boostwright.rig.logs.pulls;

import java.util.EnumSet;
import java.util.Set;

/**
 * A pull found in a log, and what it came to. Pressures are the recorded ones, mean of 100 ms; NaN
 * where something was not reached or cannot be known.
 *
 * @param log the log it is in
 * @param from first row
 * @param to row after the last
 * @param gear gear, 0 when not known
 * @param ambientKpaAbs ambient pressure, kPa absolute
 * @param goalKpaAbs target in the second half of the pull (median); the peak where no target is
 *     recorded, kPa absolute
 * @param peakKpaAbs highest pressure, kPa absolute
 * @param onset pressure 10 kPa above ambient, or above its start where ambient is not known
 * @param half half of the way from ambient to the goal
 * @param most 90 % of that way
 * @param overshootKpa highest above target once it was reached, at least 0, kPa
 * @param settledErrorKpa mean over target from one second after it was reached, kPa
 * @param dropKpa from the highest pressure to that of the last 200 ms, kPa
 * @param meanDuty mean duty once 90 % were reached, fraction
 * @param highestDuty highest duty, fraction
 * @param flaws why it is no good; empty when it is
 */
public record Pull(
    DriveLog log,
    int from,
    int to,
    int gear,
    double ambientKpaAbs,
    double goalKpaAbs,
    double peakKpaAbs,
    Moment onset,
    Moment half,
    Moment most,
    double overshootKpa,
    double settledErrorKpa,
    double dropKpa,
    double meanDuty,
    double highestDuty,
    Set<PullFlaw> flaws) {

  /**
   * When something was reached.
   *
   * @param seconds since the throttle opened, s; NaN when it was not
   * @param rpm engine speed then, 1/min
   */
  public record Moment(double seconds, double rpm) {
    /** Not reached. */
    public static final Moment NEVER = new Moment(Double.NaN, Double.NaN);
  }

  /** Copies the set. */
  public Pull {
    flaws = flaws.isEmpty() ? Set.of() : EnumSet.copyOf(flaws);
  }

  /** May be learnt from. */
  public boolean usable() {
    return flaws.isEmpty();
  }

  /** How long it lasted, s. */
  public double seconds() {
    return log.seconds(to - 1) - log.seconds(from);
  }

  /** Time of a row since the throttle opened, s. */
  public double since(int row) {
    return log.seconds(row) - log.seconds(from);
  }

  /** Engine speed at its beginning, 1/min. */
  public double fromRpm() {
    return log.rpm(from);
  }

  /** Engine speed at its end, 1/min. */
  public double toRpm() {
    return log.rpm(to - 1);
  }
}
