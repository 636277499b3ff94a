package org.boostwright.core.bench;

import org.jspecify.annotations.Nullable;

/**
 * Duty from 0 to 100 % and back in steps of 5 % at one frequency; then half duty for two seconds,
 * for the person to watch the regulator.
 */
final class SweepRoutine implements Routine {
  private static final int STEPS = 20;
  private static final double MARGIN = 0.03;

  private final double frequencyHz;
  private int at;

  SweepRoutine(double frequencyHz) {
    this.frequencyHz = frequencyHz;
  }

  @Override
  public BenchStep step() {
    return BenchStep.SWEEP;
  }

  @Override
  public @Nullable Action next(BenchRecord record, Outcome last) {
    if (at > 2 * STEPS + 2) {
      return after(record, last);
    }
    if (last.reading() != null) {
      (at <= STEPS + 1 ? record.sweepUp : record.sweepDown).add(last.driven());
    }
    if (at == 2 * STEPS + 2) {
      at++;
      record.workingDuty = workingDuty(record);
      return Action.hold(frequencyHz, record.workingDuty, 2.0);
    }
    int k = at <= STEPS ? at : 2 * STEPS + 1 - at;
    at++;
    return Action.settle(frequencyHz, (double) k / STEPS, 0.3);
  }

  /** Duty at which the line is vented half the time: there the air flows most. */
  private double workingDuty(BenchRecord record) {
    double on = Edges.seconds(record.edges, true);
    double off = Edges.seconds(record.edges, false);
    double half = 0.5 - (off - on) * frequencyHz;
    double low = on * frequencyHz + MARGIN;
    double high = 1.0 - off * frequencyHz - MARGIN;
    return high > low ? Math.max(low, Math.min(high, half)) : 0.5;
  }

  private @Nullable Action after(BenchRecord record, Outcome last) {
    if (last.reading() != null) {
      return new Action.Ask(Question.REGULATOR_WORKING);
    }
    record.regulatorWorkingKpaGauge = last.answer();
    return null;
  }
}
