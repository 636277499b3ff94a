package org.boostwright.core.bench;

import org.jspecify.annotations.Nullable;

/**
 * Air off, coil off: ambient pressure and the sensor's noise; catches a sensor in other units. Asks
 * the controller for the bench while the line still shows that the engine stands.
 */
final class AmbientRoutine implements Routine {
  static final double LOWEST_KPA = 60.0;
  static final double HIGHEST_KPA = 108.0;

  private static final double ASK_SECONDS = 0.1;

  private int at;

  @Override
  public BenchStep step() {
    return BenchStep.AMBIENT;
  }

  @Override
  public @Nullable Action next(BenchRecord record, Outcome last) {
    switch (at++) {
      case 0:
        return new Action.Ask(Question.AIR_OFF);
      case 1:
        return Action.dead(0.5);
      case 2:
        record.noiseKpa = last.line().spreadKpa();
        record.ambientKpaAbs = last.driven().meanKpaAbs();
        // Air must not be let on while the sensor cannot be believed.
        record.stop = !plausible(record.ambientKpaAbs);
        return record.stop ? null : Action.hold(BenchPlan.LOWEST_HZ, 0.0, ASK_SECONDS);
      default:
        return null;
    }
  }

  static boolean plausible(double kpaAbs) {
    return kpaAbs >= LOWEST_KPA && kpaAbs <= HIGHEST_KPA;
  }
}
