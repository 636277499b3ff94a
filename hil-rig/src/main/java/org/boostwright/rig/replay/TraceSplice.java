package org.boostwright.rig.replay;

import org.boostwright.core.AnalogChannel;

/**
 * A fault spliced into a recorded channel.
 *
 * @param channel the channel
 * @param kind what is wrong with it
 * @param fromSeconds begins this long after the first row, s
 * @param toSeconds ends, s; infinite when it stays
 * @param amount as {@link SpliceKind} says; not used by the others
 */
public record TraceSplice(
    AnalogChannel channel, SpliceKind kind, double fromSeconds, double toSeconds, double amount) {

  /** Checks times and amount. */
  public TraceSplice {
    if (!(fromSeconds >= 0.0 && toSeconds > fromSeconds)) {
      throw new IllegalArgumentException(
          "a splice from "
              + fromSeconds
              + " s to "
              + toSeconds
              + " s; it must end after it begins");
    }
    if (!Double.isFinite(amount)) {
      throw new IllegalArgumentException("amount of a splice is not a number");
    }
    if (kind == SpliceKind.INTERMITTENT && !(amount > 0.0 && amount <= 1.0)) {
      throw new IllegalArgumentException(
          "an intermittent splice with a share of " + amount + "; it lies above 0 up to 1");
    }
  }

  /** A fault that stays from {@code fromSeconds} on. */
  public static TraceSplice from(
      double fromSeconds, AnalogChannel channel, SpliceKind kind, double amount) {
    return new TraceSplice(channel, kind, fromSeconds, Double.POSITIVE_INFINITY, amount);
  }

  boolean isActive(double seconds) {
    return seconds >= fromSeconds && seconds < toSeconds;
  }
}
