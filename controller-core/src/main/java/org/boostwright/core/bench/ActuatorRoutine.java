package org.boostwright.core.bench;

import org.jspecify.annotations.Nullable;

/** The actuator alone on regulated air, read by eye; the coil stays off throughout. */
final class ActuatorRoutine implements Routine {
  private int at;

  @Override
  public BenchStep step() {
    return BenchStep.ACTUATOR;
  }

  @Override
  public @Nullable Action next(BenchRecord record, Outcome last) {
    switch (at++) {
      case 0:
        return new Action.Ask(Question.ROD_CRACK);
      case 1:
        record.crackKpaGauge = last.answer();
        return new Action.Ask(Question.ROD_FULL);
      case 2:
        record.fullStrokeKpaGauge = last.answer();
        return new Action.Ask(Question.ROD_HELD);
      case 3:
        record.heldKpaGauge = last.answer();
        return new Action.Ask(Question.ROD_PRELOAD);
      default:
        record.preloadMm = last.answer();
        return null;
    }
  }
}
