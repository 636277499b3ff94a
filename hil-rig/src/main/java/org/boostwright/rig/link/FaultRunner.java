package org.boostwright.rig.link;

import java.io.IOException;
import java.util.ArrayList;
import java.util.List;
import java.util.Locale;
import java.util.function.Consumer;
import org.boostwright.core.monitor.FaultCode;
import org.boostwright.rig.link.CaseOutcome.Verdict;
import org.boostwright.rig.link.FaultCase.Reaction;

/**
 * Runs fault cases one after the other at full boost: inject, measure the reaction at the wire,
 * prove that the fault took effect, take it back, recover.
 */
final class FaultRunner {
  private static final double LONGEST_WAIT_SECONDS = 6.0;
  private static final double AFTER_SECONDS = 0.8;
  private static final double UNREPORTED_SECONDS = 3.0;
  private static final double RESTART_SECONDS = 15.0;
  private static final double RESTART_WATCH_SECONDS = 0.5;

  private static final int ATTEMPTS = 6;

  /** Round trip and the rig's own tick on a quiet machine, ms. */
  private static final double USUAL_LATE_MILLIS = 1.0;

  private static final long STALE_BITS =
      FaultCode.MAP_STALE.bit()
          | FaultCode.THROTTLE_STALE.bit()
          | FaultCode.SUPPLY_SIGNAL.bit()
          | FaultCode.INTAKE_AIR_SIGNAL.bit();

  private final FaultBench bench;
  private final RoadDriver driver;
  private final double lateEnoughForStaleMillis;
  private final List<CaseOutcome> outcomes = new ArrayList<>();
  private double restartSeconds = Double.NaN;
  private boolean restartAtRest = true;
  private long restartFrames;
  private int disturbed;

  /**
   * @param mapRefreshMillis declared time between pressure samples, ms
   */
  FaultRunner(FaultBench bench, RoadDriver driver, double mapRefreshMillis) {
    this.bench = bench;
    this.driver = driver;
    // Old after three periods; up to two ticks pass between sampling and reading anyway.
    lateEnoughForStaleMillis = Math.max(1.0, 3.0 * mapRefreshMillis - 10.0);
  }

  /** Runs cases; the engine idles before and after. */
  void run(List<FaultCase> cases, Consumer<CaseOutcome> each) throws Exception {
    for (FaultCase fault : cases) {
      CaseOutcome outcome = run(fault);
      outcomes.add(outcome);
      each.accept(outcome);
    }
  }

  /**
   * A run whose wire was late by itself, as its round trips or the rig's own ticks show, proves
   * nothing when it looks too late; it is measured again. One that failed on its own is not.
   */
  private CaseOutcome run(FaultCase fault) throws Exception {
    CaseOutcome outcome = attempt(fault);
    for (int i = 1; i < ATTEMPTS && outcome.verdict() == Verdict.DISTURBED; i++) {
      disturbed++;
      outcome = attempt(fault);
    }
    return outcome;
  }

  private CaseOutcome attempt(FaultCase fault) throws Exception {
    if (!driver.toBoost()) {
      CaseOutcome none =
          invalid(fault, "the controller did not come to boost before it: " + seen());
      driver.release();
      return none;
    }
    WireObserver observer = bench.loop().observer();
    bench.loop().arm();
    double[] peak = {0.0};
    long injected = System.nanoTime();
    fault.inject().run(bench);
    long waitTicks = Math.round(LONGEST_WAIT_SECONDS / 0.005);
    boolean effect = false;
    for (long i = 0; i < waitTicks && !reacted(fault); i++) {
      bench.loop().tick();
      peak[0] = Math.max(peak[0], bench.car().mapKpaAbs());
      effect |= fault.effect().shown(bench);
    }
    boolean reacted = reacted(fault);
    boolean timed = reacted && !(fault.reaction() == Reaction.REPORTED && fault.expected().isEmpty());
    double millis = timed ? (reactionNanos(fault) - injected) * 1e-6 : Double.NaN;
    bench
        .loop()
        .runUntil(
            () -> {
              peak[0] = Math.max(peak[0], bench.car().mapKpaAbs());
              return false;
            },
            fault.expected().isEmpty() && fault.reaction() == Reaction.REPORTED
                ? UNREPORTED_SECONDS
                : AFTER_SECONDS);
    effect |= fault.effect().shown(bench);
    CaseOutcome outcome = judge(fault, effect, reacted, millis, peak[0]);
    fault.clear().run(bench);
    if (bench.runtime() != null && !bench.runtime().alive()) {
      restart();
    }
    driver.release();
    return outcome;
  }

  private boolean reacted(FaultCase fault) {
    WireObserver observer = bench.loop().observer();
    return switch (fault.reaction()) {
      case REST -> observer.rested();
      case SUPPLY_OPEN -> !observer.gate().closed(System.nanoTime());
      case REPORTED -> fault.reportedIn(observer.faultsSeen());
    };
  }

  private long reactionNanos(FaultCase fault) {
    WireObserver observer = bench.loop().observer();
    return switch (fault.reaction()) {
      case REST -> observer.restNanos();
      case SUPPLY_OPEN -> observer.gate().opensNanos();
      case REPORTED -> observer.lastArrivedNanos();
    };
  }

  private CaseOutcome judge(
      FaultCase fault, boolean effect, boolean reacted, double millis, double peak) {
    WireObserver observer = bench.loop().observer();
    if (!effect) {
      return invalid(fault, "the fault did not take effect");
    }
    double late =
        (observer.longestRoundTripNanos() + bench.loop().latestNanos()) * 1e-6 - USUAL_LATE_MILLIS;
    boolean excused = false;
    List<String> wrong = new ArrayList<>();
    if (!reacted) {
      wrong.add("no reaction");
    }
    if (reacted && !Double.isNaN(fault.withinMillis()) && !(millis <= fault.withinMillis())) {
      wrong.add("too late");
      excused = millis - late <= fault.withinMillis();
    }
    long faults = observer.faultsSeen();
    if (!fault.reportedIn(faults)) {
      wrong.add("not reported");
    }
    long unrelated = faults & ~fault.allowedBits();
    if (unrelated != 0L) {
      wrong.add("an unrelated fault reported");
      // Samples that came late over the wire are old, whatever else is the matter.
      excused |= (unrelated & ~STALE_BITS) == 0L && late >= lateEnoughForStaleMillis;
    }
    if (fault.reaction() == Reaction.REPORTED && observer.rested()) {
      wrong.add("went to rest");
      excused |= (faults & STALE_BITS) != 0L && late >= lateEnoughForStaleMillis;
    }
    Verdict verdict =
        wrong.isEmpty() ? Verdict.PASSED : excused ? Verdict.DISTURBED : Verdict.FAILED;
    String words =
        String.format(
            Locale.ROOT,
            "%s; faults: %s; the wire late by at most %.1f ms",
            wrong.isEmpty() ? "as it must be" : String.join(", ", wrong),
            names(faults),
            Math.max(0.0, late));
    return new CaseOutcome(
        fault.id(),
        fault.text(),
        verdict,
        millis,
        fault.withinMillis(),
        peak,
        words);
  }

  private static CaseOutcome invalid(FaultCase fault, String words) {
    return new CaseOutcome(
        fault.id(),
        fault.text(),
        Verdict.INVALID,
        Double.NaN,
        fault.withinMillis(),
        Double.NaN,
        words);
  }

  /** The killed program comes back while the engine runs: at rest, with no new ambient. */
  private void restart() throws IOException {
    WireObserver observer = bench.loop().observer();
    RuntimeProcess program = bench.program();
    program.restart();
    observer.forgetStamps();
    long before = observer.frames();
    boolean came = bench.loop().runUntil(() -> observer.frames() > before, RESTART_SECONDS);
    restartSeconds =
        came ? (observer.lastArrivedNanos() - program.startedNanos()) * 1e-9 : Double.NaN;
    observer.arm();
    double highest = 0.0;
    long ticks = Math.round(RESTART_WATCH_SECONDS / 0.005);
    for (long i = 0; i < ticks; i++) {
      restartAtRest &= observer.last().state.isRest() && !observer.last().pwmEnabled;
      highest = Math.max(highest, observer.last().dutyFraction);
      bench.loop().tick();
    }
    restartAtRest &= came && highest == 0.0;
    restartFrames = observer.frames() - before;
  }

  private String seen() {
    return bench.outputs().state.words()
        + ", waiting for "
        + bench.outputs().waiting.words()
        + ", faults: "
        + names(bench.outputs().activeFaults);
  }

  static String names(long faults) {
    StringBuilder names = new StringBuilder();
    for (FaultCode code : FaultCode.values()) {
      if ((faults & code.bit()) != 0L) {
        names.append(names.length() == 0 ? "" : " ").append(code.id());
      }
    }
    return names.length() == 0 ? "none" : names.toString();
  }

  /** What came of the cases so far. */
  List<CaseOutcome> outcomes() {
    return List.copyOf(outcomes);
  }

  /** Runs that were measured again because the wire was late by itself. */
  int disturbed() {
    return disturbed;
  }

  /** From starting the killed program again to its first frame, s; NaN when that never happened. */
  double restartSeconds() {
    return restartSeconds;
  }

  /** True when every start so far came up at rest and stayed there for half a second. */
  boolean restartAtRest() {
    return restartAtRest && restartFrames > 0L;
  }
}
