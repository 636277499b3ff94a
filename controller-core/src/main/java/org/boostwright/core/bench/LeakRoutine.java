package org.boostwright.core.bench;

import org.boostwright.core.bench.model.ValveModel;
import org.jspecify.annotations.Nullable;

/** Supply shut right before the valve, coil off: how fast the line loses its pressure. */
final class LeakRoutine implements Routine {
  private static final double HOLD_SECONDS = 8.0;
  private static final double USED_SHARE = 0.4;
  private static final double CRITICAL_RATIO = 0.35;

  private int at;

  @Override
  public BenchStep step() {
    return BenchStep.LEAK;
  }

  @Override
  public @Nullable Action next(BenchRecord record, Outcome last) {
    switch (at++) {
      case 0:
        return Action.settle(BenchPlan.LOWEST_HZ, 0.0, 0.3);
      case 1:
        return new Action.Ask(Question.SUPPLY_SHUT);
      case 2:
        return Action.hold(BenchPlan.LOWEST_HZ, 0.0, HOLD_SECONDS);
      case 3:
        evaluate(record, last.line());
        return new Action.Ask(Question.SUPPLY_OPEN);
      case 4:
        return Action.settle(BenchPlan.LOWEST_HZ, 0.0, 0.3);
      default:
        return null;
    }
  }

  /** Mean rate between two short stretches, the later one before the line is much emptier. */
  private static void evaluate(BenchRecord record, LineTrace trace) {
    double ambient = record.ambientKpaAbs;
    double start = record.rest == null ? trace.value(0) : record.rest.meanKpaAbs();
    double until = trace.timeToShare(start, ambient, USED_SHARE);
    double end = Double.isNaN(until) ? trace.seconds() : Math.max(until, 0.1);
    double stretch = Math.min(0.5, 0.25 * end);
    double first = trace.meanBetween(0.0, stretch);
    double second = trace.meanBetween(end - stretch, end);
    double span = end - stretch;
    double middle = Math.max(ambient + 1.0, 0.5 * (first + second));
    double flow = middle * ValveModel.flowFunction(ambient / middle, CRITICAL_RATIO);
    double noise =
        1.4
            * record.noiseKpa
            / Math.sqrt(Math.max(1.0, trace.samples() * stretch / trace.seconds()));
    record.leakKpaPerSecond = Math.max(0.0, (first - second) / span);
    record.leakRatePerSecond = record.leakKpaPerSecond / flow;
    record.leakSigmaPerSecond = noise / span / flow;
  }
}
