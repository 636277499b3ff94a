package org.boostwright.core.bench;

import java.util.ArrayList;
import java.util.List;
import org.boostwright.core.bench.model.EdgeBracket;
import org.boostwright.core.bench.model.MeanPoint;
import org.boostwright.core.bench.model.ValveFit;
import org.jspecify.annotations.Nullable;

/**
 * A whole bench session, stepped once per sample: the same code on the virtual valve, over the link
 * and on the Pi.
 *
 * <p>No clock, file or thread. Whatever goes wrong, the outputs are at rest first and stay there;
 * the coil is also off whenever a question is open and at the end.
 */
public final class BenchSession {
  private static final double SWEEP_HZ = 31.0;
  private static final double DRIVE_LIMIT_SECONDS = 30.0;
  // The PWM takes over another frequency only at rest; a few ticks of the slowest caller.
  private static final long CHANGE_NANOS = 20_000_000L;
  private static final double RATE_GUESS = 15.0;
  // Two readings of a dial by eye, each within 1.5 kPa.
  private static final double GAUGE_SIGMA_KPA = 1.3;

  private final BenchPlan plan;
  private final BenchGuard guard;
  private final double sweepHz;
  private final BenchRecord record = new BenchRecord();
  private final List<Routine> routines = new ArrayList<>();
  private final LineTrace trace = new LineTrace();

  private int routineIndex = -1;
  private @Nullable Routine routine;
  private @Nullable Action action;
  private Outcome outcome = Outcome.NONE;
  private long actionStartNanos;
  private long lastSampleNanos;
  private double drivenHz;
  private long changedNanos;
  private boolean heldBack;
  private int actionsDone;
  private double drivenDuty;
  private boolean finished;

  /** A session at rest that has not begun. */
  public BenchSession(BenchPlan plan) {
    this.plan = plan;
    guard = new BenchGuard(plan);
    sweepHz = Double.isNaN(plan.frequencyHz()) ? SWEEP_HZ : plan.frequencyHz();
    Routine[] all = {
      new AmbientRoutine(),
      new ClickRoutine(),
      new RestRoutine(plan.hasCoilSwitch()),
      new PolarityRoutine(),
      new LeakRoutine(),
      new ResponseRoutine(),
      new EdgesRoutine(),
      new SweepRoutine(sweepHz),
      new FrequencyRoutine(),
      new ActuatorRoutine()
    };
    for (Routine candidate : all) {
      if (plan.steps().contains(candidate.step())) {
        routines.add(candidate);
      }
    }
  }

  /** What was measured so far. */
  public BenchRecord record() {
    return record;
  }

  /** What it was asked to do. */
  public BenchPlan plan() {
    return plan;
  }

  /** True once nothing more will happen; the outputs stay at rest. */
  public boolean finished() {
    return finished;
  }

  /** The step that runs now; null before the first and after the last. */
  public @Nullable BenchStep step() {
    return routine == null ? null : routine.step();
  }

  /** Actions done so far, for showing progress. */
  public int actionsDone() {
    return actionsDone;
  }

  /**
   * One sample.
   *
   * @param nowNanos time now on the clock of the inputs, ns
   * @param in what is known; not changed
   * @param out overwritten whole
   */
  public void step(long nowNanos, BenchInputs in, BenchOutputs out) {
    out.rest();
    out.question = null;
    if (finished) {
      return;
    }
    try {
      AbortReason reason = guard.check(nowNanos, in, drivenDuty, record.ambientKpaAbs);
      record.hottestCoilC = guard.hottestC();
      if (reason != null) {
        abort(reason);
      } else {
        run(nowNanos, in, out);
      }
    } catch (RuntimeException e) {
      abort(AbortReason.INTERNAL);
    }
    if (finished) {
      out.rest();
      out.question = null;
    }
    drivenDuty = out.coilSupplyClosed && out.pwmEnabled ? out.dutyFraction : 0.0;
  }

  private void abort(AbortReason reason) {
    record.aborted = reason;
    finished = true;
    routine = null;
  }

  private void run(long nowNanos, BenchInputs in, BenchOutputs out) {
    if (action != null && actionEnded(nowNanos, in)) {
      actionsDone++;
      action = null;
    }
    while (action == null && !finished) {
      action = nextAction();
      if (action instanceof Action.Drive drive) {
        begin(nowNanos, drive);
        if (drive.frequencyHz() != drivenHz) {
          drivenHz = drive.frequencyHz();
          changedNanos = nowNanos;
        }
      }
    }
    if (action instanceof Action.Ask ask) {
      out.question = ask.question();
    } else if (action instanceof Action.Drive drive) {
      out.frequencyHz = drive.frequencyHz();
      heldBack = nowNanos - changedNanos < CHANGE_NANOS;
      if (heldBack) {
        return;
      }
      boolean driven = drive.coilSupply() && drive.dutyFraction() > 0.0;
      out.dutyFraction = driven ? Math.min(1.0, drive.dutyFraction()) : 0.0;
      out.pwmEnabled = driven;
      out.coilSupplyClosed = drive.coilSupply();
    }
  }

  private void begin(long nowNanos, Action.Drive drive) {
    trace.begin(drive.frequencyHz());
    actionStartNanos = nowNanos;
    lastSampleNanos = nowNanos;
  }

  private boolean actionEnded(long nowNanos, BenchInputs in) {
    if (action instanceof Action.Ask) {
      if (in.answered) {
        outcome = Outcome.answered(in.answer);
        return true;
      }
      return false;
    }
    Action.Drive drive = (Action.Drive) action;
    if (heldBack || in.refused) {
      begin(nowNanos, drive);
      return false;
    }
    if (in.sampleNanos - lastSampleNanos > 0L) {
      lastSampleNanos = in.sampleNanos;
      trace.add((in.sampleNanos - actionStartNanos) * 1e-9, in.lineKpaAbs);
    }
    double elapsed = (nowNanos - actionStartNanos) * 1e-9;
    boolean settled = false;
    if (drive.fixedSeconds() > 0.0) {
      if (elapsed < drive.fixedSeconds()) {
        return false;
      }
    } else {
      settled = trace.settled(drive.measureSeconds(), record.noiseKpa);
      if (!settled && elapsed < DRIVE_LIMIT_SECONDS) {
        return false;
      }
    }
    Reading reading = trace.reading(drive.dutyFraction(), settled, record.noiseKpa);
    outcome = new Outcome(reading, trace, Double.NaN);
    return true;
  }

  private @Nullable Action nextAction() {
    if (routine != null) {
      Action next = routine.next(record, outcome);
      outcome = Outcome.NONE;
      if (next != null) {
        return next;
      }
      record.completed.add(routine.step());
    }
    routineIndex++;
    outcome = Outcome.NONE;
    if (record.stop || routineIndex >= routines.size()) {
      routine = null;
      finished = true;
      fit();
    } else {
      routine = routines.get(routineIndex);
    }
    return null;
  }

  private void fit() {
    double on = Edges.seconds(record.edges, true);
    double off = Edges.seconds(record.edges, false);
    Reading rest = record.rest;
    if (Double.isNaN(on) || Double.isNaN(off) || rest == null) {
      return;
    }
    List<MeanPoint> points = new ArrayList<>();
    List<EdgeBracket> edges = record.edges;
    collect(points, edges, record.sweepUp);
    collect(points, edges, record.sweepDown);
    collect(points, edges, record.frequency);
    collect(points, edges, record.polarity);
    double leak = Double.isNaN(record.leakRatePerSecond) ? 0.0 : record.leakRatePerSecond;
    double leakSigma = Double.isNaN(record.leakSigmaPerSecond) ? 0.2 : record.leakSigmaPerSecond;
    ValveFit fit =
        new ValveFit(
            edges,
            points,
            record.ambientKpaAbs,
            rest.meanKpaAbs(),
            rest.meanSigmaKpa(),
            leak,
            leakSigma);
    fit.withResponse(record.ventSeconds, record.fillSeconds);
    double sag = record.regulatorKpaGauge - record.regulatorWorkingKpaGauge;
    if (!Double.isNaN(sag) && Edges.inside(edges, sweepHz, record.workingDuty)) {
      fit.withSag(sweepHz, record.workingDuty, sag, GAUGE_SIGMA_KPA);
    }
    record.fit = fit.fit(RATE_GUESS);
  }

  private static void collect(
      List<MeanPoint> points, List<EdgeBracket> edges, List<Reading> readings) {
    for (Reading r : readings) {
      if (r.settled() && Edges.inside(edges, r.frequencyHz(), r.dutyFraction())) {
        points.add(
            new MeanPoint(r.frequencyHz(), r.dutyFraction(), r.meanKpaAbs(), r.meanSigmaKpa()));
      }
    }
  }
}
