package org.boostwright.rig.link;

import java.io.IOException;
import java.util.ArrayList;
import java.util.List;
import java.util.function.Consumer;
import org.boostwright.rig.link.FaultCase.Start;

/**
 * Runs fault cases one after the other: inject, measure the reaction at the wire, prove that the
 * fault took effect, take it back, recover. Each is run once, whatever comes of it.
 */
final class FaultRunner {
  private static final double LONGEST_WAIT_SECONDS = 6.0;
  private static final double AFTER_SECONDS = 0.8;
  private static final double RESTART_SECONDS = 15.0;
  private static final double RESTART_WATCH_SECONDS = 0.5;

  private final FaultBench bench;
  private final CaseJudge judge;
  private final List<CaseOutcome> outcomes = new ArrayList<>();
  private double peakKpaAbs;
  private double restartSeconds = Double.NaN;
  private boolean restartAtRest = true;
  private long restartFrames;

  /**
   * @param mapRefreshMillis declared time between pressure samples, ms
   */
  FaultRunner(FaultBench bench, double mapRefreshMillis) {
    this.bench = bench;
    judge = new CaseJudge(mapRefreshMillis);
  }

  /** Runs cases; the engine idles before and after. */
  void run(List<FaultCase> cases, Consumer<CaseOutcome> each) throws Exception {
    for (FaultCase fault : cases) {
      CaseOutcome outcome = run(fault);
      outcomes.add(outcome);
      each.accept(outcome);
    }
  }

  private CaseOutcome run(FaultCase fault) throws Exception {
    RoadDriver driver = bench.driver();
    RigLoop loop = bench.loop();
    loop.arm();
    if (fault.start() == Start.STOPPED) {
      driver.stopEngine();
    } else if (!driver.toBoost()) {
      CaseOutcome none = CaseJudge.notRun(fault, seen(fault, false, false, 0L), notAtBoost());
      driver.release();
      return none;
    }
    peakKpaAbs = 0.0;
    loop.arm();
    long injected = loop.nanoTime();
    fault.inject().run(bench);
    boolean effect = fault.effect().shown(bench);
    boolean reacted = false;
    if (!fault.watched()) {
      long waitTicks = Math.round(LONGEST_WAIT_SECONDS / 0.005);
      for (long i = 0; i < waitTicks && !reacted(fault); i++) {
        tick();
        effect |= fault.effect().shown(bench);
      }
      reacted = reacted(fault);
    }
    CaseJudge.Seen atReaction = seen(fault, effect, reacted, injected);
    for (long i = Math.round(AFTER_SECONDS / 0.005); i > 0; i--) {
      tick();
      effect |= fault.effect().shown(bench);
    }
    reacted |= fault.watched() && reacted(fault);
    CaseJudge.Seen after = seen(fault, effect, reacted, injected);
    CaseOutcome outcome = judge.judge(fault, after.at(atReaction.millis()));
    fault.clear().run(bench);
    recover(fault);
    return outcome;
  }

  private void tick() {
    bench.loop().tick();
    peakKpaAbs = Math.max(peakKpaAbs, bench.car().mapKpaAbs());
  }

  private void recover(FaultCase fault) throws IOException {
    if (bench.runtime() != null && !bench.runtime().alive()) {
      restart();
    }
    if (fault.start() == Start.STOPPED) {
      bench.driver().stopEngine();
      bench.car().sensors().keyOn = false;
      bench.loop().run(0.5);
      bench.driver().startEngine();
    }
    bench.driver().release();
  }

  private boolean reacted(FaultCase fault) {
    WireObserver observer = bench.loop().observer();
    return switch (fault.reaction()) {
      case REST -> observer.rested();
      case SUPPLY_OPEN -> !observer.gate().closed(bench.loop().nanoTime());
      case REPORTED -> fault.reportedIn(observer.faultsSeen());
      case NOTHING -> !observer.rested();
      case NEVER_READY -> observer.highestDuty() == 0.0 && !observer.everReady();
    };
  }

  private CaseJudge.Seen seen(FaultCase fault, boolean effect, boolean reacted, long injected) {
    WireObserver observer = bench.loop().observer();
    long reactionNanos =
        switch (fault.reaction()) {
          case REST -> observer.restNanos();
          case SUPPLY_OPEN -> observer.stampedGate().opensNanos();
          case REPORTED, NOTHING, NEVER_READY -> observer.lastTickNanos();
        };
    boolean timed = reacted && !fault.watched();
    long begin = timed ? CaseJudge.beginNanos(fault, observer, injected) : 0L;
    return new CaseJudge.Seen(
        effect,
        reacted,
        timed ? (reactionNanos - begin) * 1e-6 : Double.NaN,
        observer.faultsSeen(),
        observer.rested(),
        CaseJudge.lineMillis(fault, observer),
        bench.loop().latestNanos() * 1e-6,
        peakKpaAbs);
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
    bench.loop().arm();
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

  private String notAtBoost() {
    return "the controller did not come to boost before it: "
        + bench.outputs().state.words()
        + ", waiting for "
        + bench.outputs().waiting.words()
        + ", faults: "
        + CaseJudge.names(bench.loop().observer().faultsSeen());
  }

  /** What came of the cases so far. */
  List<CaseOutcome> outcomes() {
    return List.copyOf(outcomes);
  }

  /** From starting the killed program again to its first frame, s; NaN when that never happened. */
  double restartSeconds() {
    return restartSeconds;
  }

  /** True when every start so far came up at rest and stayed there for half a second. */
  boolean restartAtRest() {
    return restartAtRest && (Double.isNaN(restartSeconds) || restartFrames > 0L);
  }
}
