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
 * @param overshootKpa highest true pressure over target in the second after that, at least 0; NaN
 * @param settledErrorKpa mean distance from the target from one second after that to the end of
 *     full throttle, kPa; NaN when there was less than half a second of it
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
    double peakTurboKrpm,
    double pullSeconds,
    long faults,
    long findings,
    long outsideTable) {

  private static final double TICK_SECONDS = Controller.TICK_NANOS * 1e-9;
  private static final double REACHED_KPA = 2.0;
  private static final double SETTLING_SECONDS = 1.0;
  private static final double SHORTEST_SECONDS = 0.5;
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
    double limit = run.settings().limits().cutoffKpaAbs();
    double peak = 0.0;
    double turbo = 0.0;
    int above = 0;
    long seen = 0L;
    for (int i = 0; i < run.rows().size(); i++) {
      double map = run.truths().get(i).mapKpaAbs();
      peak = Math.max(peak, map);
      turbo = Math.max(turbo, run.truths().get(i).turboKrpm());
      above += map > limit ? 1 : 0;
      seen |= (long) run.rows().get(i)[LogFormat.FAULTS];
      seen |= (long) run.rows().get(i)[LogFormat.FINDINGS];
    }
    int reached = reached(run);
    boolean came = reached >= 0;
    int settled = reached + (int) Math.round(SETTLING_SECONDS / TICK_SECONDS);
    return new PullMeasures(
        peak,
        above * TICK_SECONDS,
        came ? (reached - run.openedAt()) * TICK_SECONDS : Double.NaN,
        came ? run.truths().get(reached).engineRpm() : Double.NaN,
        came ? overshoot(run, reached, Math.min(settled, run.shutAt())) : Double.NaN,
        came ? meanError(run, settled) : Double.NaN,
        turbo,
        (run.shutAt() - run.openedAt()) * TICK_SECONDS,
        seen & RESTING,
        seen & ~RESTING,
        (long) run.rows().get(run.rows().size() - 1)[OUTSIDE]);
  }

  private static double overTarget(PullRun run, int i) {
    return run.truths().get(i).mapKpaAbs() - run.rows().get(i)[TARGET];
  }

  private static int reached(PullRun run) {
    for (int i = run.openedAt(); i < run.shutAt(); i++) {
      if (overTarget(run, i) >= -REACHED_KPA) {
        return i;
      }
    }
    return -1;
  }

  private static double overshoot(PullRun run, int from, int to) {
    double most = 0.0;
    for (int i = from; i < to; i++) {
      most = Math.max(most, overTarget(run, i));
    }
    return most;
  }

  private static double meanError(PullRun run, int from) {
    if (!((run.shutAt() - from) * TICK_SECONDS >= SHORTEST_SECONDS)) {
      return Double.NaN;
    }
    double sum = 0.0;
    for (int i = from; i < run.shutAt(); i++) {
      sum += Math.abs(overTarget(run, i));
    }
    return sum / (run.shutAt() - from);
  }
}
