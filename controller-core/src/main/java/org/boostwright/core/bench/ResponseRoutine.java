package org.boostwright.core.bench;

import org.jspecify.annotations.Nullable;

/**
 * Time to vent and to fill, with the delay before anything moves. A running PWM takes a duty over
 * at its next period only, so the coil goes on from rest, by another frequency, and off by its
 * supply.
 */
final class ResponseRoutine implements Routine {
  private int at;

  @Override
  public BenchStep step() {
    return BenchStep.RESPONSE;
  }

  @Override
  public @Nullable Action next(BenchRecord record, Outcome last) {
    switch (at++) {
      case 0:
        return Action.settle(BenchPlan.HIGHEST_HZ, 0.0, 0.3);
      case 1:
        return Action.settle(BenchPlan.LOWEST_HZ, 1.0, 0.3);
      case 2:
        record.ventDeadSeconds = dead(record, last, true);
        record.ventSeconds = share(record, last, true, 0.9);
        return Action.dead(0.3);
      default:
        record.fillDeadSeconds = dead(record, last, false);
        record.fillSeconds = share(record, last, false, 0.9);
        return null;
    }
  }

  private static double share(BenchRecord record, Outcome last, boolean vent, double share) {
    double full = record.ambientKpaAbs + record.restKpaGauge();
    double empty = record.ambientKpaAbs;
    return vent
        ? last.line().timeToShare(full, empty, share)
        : last.line().timeToShare(empty, full, share);
  }

  /** Straight line through 10 % and 30 % of the way, drawn back to where it began. */
  private static double dead(BenchRecord record, Outcome last, boolean vent) {
    double tenth = share(record, last, vent, 0.1);
    double third = share(record, last, vent, 0.3);
    return Math.max(0.0, tenth - 0.5 * (third - tenth));
  }
}
