package org.boostwright.core.bench;

import org.jspecify.annotations.Nullable;

/** Switches the coil in a pattern a person can count; without a click asks what tells why. */
final class ClickRoutine implements Routine {
  static final int CLICKS = 5;
  private static final double ON_SECONDS = 0.25;
  private static final double OFF_SECONDS = 0.5;

  private int at;

  @Override
  public BenchStep step() {
    return BenchStep.CLICK;
  }

  @Override
  public @Nullable Action next(BenchRecord record, Outcome last) {
    int now = at++;
    if (now < 2 * CLICKS) {
      boolean on = now % 2 == 0;
      return on
          ? Action.hold(BenchPlan.LOWEST_HZ, 1.0, ON_SECONDS)
          : Action.hold(BenchPlan.LOWEST_HZ, 0.0, OFF_SECONDS);
    }
    switch (now - 2 * CLICKS) {
      case 0:
        record.clicksGiven = CLICKS;
        return new Action.Ask(Question.CLICK_COUNT);
      case 1:
        record.clicksHeard = last.answer();
        return last.answer() == 0.0 ? new Action.Ask(Question.COIL_OHMS) : null;
      case 2:
        record.coilOhms = last.answer();
        return new Action.Ask(Question.BATTERY_CLICK);
      case 3:
        record.batteryClick = last.answer();
        return new Action.Ask(Question.PLUG_COIL);
      default:
        return null;
    }
  }
}
