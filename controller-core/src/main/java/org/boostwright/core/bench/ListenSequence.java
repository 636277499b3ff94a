package org.boostwright.core.bench;

import org.jspecify.annotations.Nullable;

/** Holds the valve on and off for a second each, three times, and asks what the vent did. */
final class ListenSequence {
  private static final int TURNS = 3;
  private static final double SECONDS = 1.0;

  private int at;

  @Nullable Action next(BenchRecord record, Outcome last) {
    int now = at++;
    if (now < 2 * TURNS) {
      return Action.hold(BenchPlan.LOWEST_HZ, now % 2 == 0 ? 1.0 : 0.0, SECONDS);
    }
    if (now == 2 * TURNS) {
      return new Action.Ask(Question.LISTEN_AT_VENT);
    }
    record.heard = Heard.of(last.answer());
    return null;
  }
}
