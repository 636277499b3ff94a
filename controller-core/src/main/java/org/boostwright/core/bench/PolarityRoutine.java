package org.boostwright.core.bench;

import org.jspecify.annotations.Nullable;

/**
 * Energising must empty the line, and more duty must never mean more pressure. Where the line does
 * not empty, the vent is listened to and the session ends.
 */
final class PolarityRoutine implements Routine {
  /** Share of the rest pressure that may be left while energised. */
  static final double EMPTY_SHARE = 0.12;

  /** Share of the rest pressure that counts as "did not move at all". */
  static final double FULL_SHARE = 0.85;

  private static final double FLAT_SHARE = 0.93;
  private static final double FLAT_DUTY = 0.5;
  private static final double HZ = 23.0;
  private static final double[] DUTIES = {0.15, 0.3, 0.45, 0.6, 0.75, 0.9};

  private final ListenSequence listen = new ListenSequence();
  private boolean listening;
  private int at;

  @Override
  public BenchStep step() {
    return BenchStep.POLARITY;
  }

  @Override
  public @Nullable Action next(BenchRecord record, Outcome last) {
    if (listening) {
      return listen.next(record, last);
    }
    int now = at++;
    if (record.clicksHeard == 0.0) {
      record.stop = true;
      return null;
    }
    if (now == 0) {
      return Action.settle(BenchPlan.LOWEST_HZ, 1.0, 0.5);
    }
    if (now == 1) {
      record.energised = last.driven();
      if (record.gauge(last.driven()) > EMPTY_SHARE * record.restKpaGauge()) {
        record.stop = true;
        listening = true;
        return listen.next(record, Outcome.NONE);
      }
      return Action.settle(BenchPlan.LOWEST_HZ, 0.0, 0.3);
    }
    if (now > 2) {
      record.polarity.add(last.driven());
    }
    if (now - 2 < DUTIES.length) {
      return Action.settle(HZ, DUTIES[now - 2], 0.3);
    }
    if (!doesNotEmpty(record)) {
      return null;
    }
    record.stop = true;
    listening = true;
    return listen.next(record, Outcome.NONE);
  }

  /**
   * True when the line stays full while the valve works, even if a leak empties it in the end: what
   * left the line did not leave through the valve.
   */
  static boolean doesNotEmpty(BenchRecord record) {
    for (Reading reading : record.polarity) {
      if (reading.dutyFraction() > FLAT_DUTY
          && reading.dutyFraction() < 0.7
          && record.gauge(reading) > FLAT_SHARE * record.restKpaGauge()) {
        return true;
      }
    }
    return false;
  }
}
