package org.boostwright.core.bench;

import org.jspecify.annotations.Nullable;

/**
 * Duty from 0 to 100 % and back in steps of 5 % at one frequency; then half duty for two seconds,
 * for the person to watch the regulator.
 */
final class SweepRoutine implements Routine {
  private static final int STEPS = 20;

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
      return Action.hold(frequencyHz, 0.5, 2.0);
    }
    int k = at <= STEPS ? at : 2 * STEPS + 1 - at;
    at++;
    return Action.settle(frequencyHz, (double) k / STEPS, 0.3);
  }

  private @Nullable Action after(BenchRecord record, Outcome last) {
    if (last.reading() != null) {
      return new Action.Ask(Question.REGULATOR_WORKING);
    }
    record.regulatorWorkingKpaGauge = last.answer();
    return null;
  }
}
