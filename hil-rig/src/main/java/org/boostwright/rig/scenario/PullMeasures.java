package org.boostwright.rig.scenario;

import org.boostwright.core.Controller;
import org.boostwright.core.monitor.FaultCode;
import org.boostwright.core.monitor.Reaction;
import org.boostwright.core.record.LogFormat;

/**
 * What a pull came to, from the true pressures and the controller's log.
 *
 * @param peakMapKpaAbs highest true manifold pressure, kPa absolute
 * @param aboveLimitSeconds time above the overboost limit, s
 * @param reachSeconds from the throttle opening to within 2 kPa of the target, s; NaN when it never
 *     came there
 * @param reachRpm engine speed then, 1/min; NaN
 * @param overshootKpa highest true pressure over target during full throttle, at least 0; NaN
 * @param settledErrorKpa from one second after that to the end of full throttle: the mean over 100
 *     ms that lies farthest from the target, with its sign, kPa; NaN when there was less than half
 *     a second of it
 * @param settledErrorRpm engine speed there, 1/min; NaN
 * @param peakTurboKrpm highest turbo speed, 1000/min
 * @param pullSeconds full throttle lasted, s
 * @param faults confirmed faults that rest the valve, as bits
 * @param findings other confirmed faults and findings, as bits
 * @param outsideTable lookups outside the tables
 */
public record PullMeasures(
    double peakMapKpaAbs,
    double aboveLimitSeconds,
    double reachSeconds,
    double reachRpm,
    double overshootKpa,
    double settledErrorKpa,
    double settledErrorRpm,
    double peakTurboKrpm,
    double pullSeconds,
    long faults,
    long findings,
    long outsideTable) {

  private static final double TICK_SECONDS = Controller.TICK_NANOS * 1e-9;
  private static final double REACHED_KPA = 2.0;
  private static final double SETTLING_SECONDS = 1.0;
  private static final double SHORTEST_SECONDS = 0.5;
  private static final int MEAN_ROWS = 20;
  private static final int TARGET = LogFormat.column("target_kpa_abs");
  private static final int OUTSIDE = LogFormat.column("outside_table");
  private static final long RESTING = resting();

  private static long resting() {
    long bits = 0L;
    for (FaultCode code : FaultCode.values()) {
      if (code.reaction().compareTo(Reaction.REST) >= 0) {
        bits |= code.bit();
      }
    }
    return bits;
  }

  /** Measures a run. */
  public static PullMeasures of(PullRun run) {
    RunLog log = run.log();
    double limit = run.settings().limits().cutoffKpaAbs();
    double peak = 0.0;
    double turbo = 0.0;
    int above = 0;
    long seen = 0L;
    for (int r = 0; r < log.rows(); r++) {
      double map = log.get(r, RunLog.TRUE_MAP);
      peak = Math.max(peak, map);
      turbo = Math.max(turbo, log.get(r, RunLog.TRUE_TURBO));
      above += map > limit ? 1 : 0;
      seen |= (long) log.get(r, LogFormat.FAULTS) | (long) log.get(r, LogFormat.FINDINGS);
    }
    int reached = reached(run);
    boolean came = reached >= 0;
    int worst = came ? worstSettledRow(run, reached + rows(SETTLING_SECONDS)) : -1;
    return new PullMeasures(
        peak,
        above * TICK_SECONDS,
        came ? (reached - run.openedAt() + 1) * TICK_SECONDS : Double.NaN,
        came ? log.get(reached, RunLog.TRUE_RPM) : Double.NaN,
        came ? overshoot(run, reached) : Double.NaN,
        worst >= 0 ? meanError(log, worst) : Double.NaN,
        worst >= 0 ? log.get(worst, RunLog.TRUE_RPM) : Double.NaN,
        turbo,
        (run.shutAt() - run.openedAt()) * TICK_SECONDS,
        seen & RESTING,
        seen & ~RESTING,
        (long) log.get(log.rows() - 1, OUTSIDE));
  }

  private static int rows(double seconds) {
    return (int) Math.round(seconds / TICK_SECONDS);
  }

  private static double overTarget(RunLog log, int row) {
    return log.get(row, RunLog.TRUE_MAP) - log.get(row, TARGET);
  }

  private static int reached(PullRun run) {
    for (int r = run.openedAt(); r < run.shutAt(); r++) {
      if (overTarget(run.log(), r) >= -REACHED_KPA) {
        return r;
      }
    }
    return -1;
  }

  private static double overshoot(PullRun run, int from) {
    double most = 0.0;
    for (int r = from; r < run.shutAt(); r++) {
      most = Math.max(most, overTarget(run.log(), r));
    }
    return most;
  }

  /**
   * Last row of the 100 ms whose mean lies farthest from the target; -1 when there is too little.
   */
  private static int worstSettledRow(PullRun run, int from) {
    if (run.shutAt() - from < rows(SHORTEST_SECONDS)) {
      return -1;
    }
    int worst = -1;
    for (int r = from + MEAN_ROWS - 1; r < run.shutAt(); r++) {
      if (worst < 0 || Math.abs(meanError(run.log(), r)) > Math.abs(meanError(run.log(), worst))) {
        worst = r;
      }
    }
    return worst;
  }

  /** Mean over target of the 100 ms that end with a row, kPa. */
  private static double meanError(RunLog log, int last) {
    double sum = 0.0;
    for (int r = last - MEAN_ROWS + 1; r <= last; r++) {
      sum += overTarget(log, r);
    }
    return sum / MEAN_ROWS;
  }
}
