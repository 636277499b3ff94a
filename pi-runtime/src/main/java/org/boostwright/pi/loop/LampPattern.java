package org.boostwright.pi.loop;

import org.boostwright.core.Outputs;
import org.boostwright.core.monitor.FaultCode;
import org.boostwright.core.monitor.Reaction;
import org.boostwright.core.monitor.Roadside;
import org.jspecify.annotations.Nullable;

/**
 * The warning lamp: steady = spring only, off = controlling or ready to, blinking = a fault holds
 * the valve at rest.
 *
 * <p>A fault blinks its number, then pauses: 0.25 s on, 0.25 s off, pause 1.25 s. One that stays
 * until the key has been off begins with a long flash of 1 s.
 */
public final class LampPattern {
  private static final long BLINK_NANOS = 250_000_000L;
  private static final long PAUSE_NANOS = 1_250_000_000L;
  private static final long LONG_NANOS = 1_000_000_000L;
  private static final FaultCode[] CODES = FaultCode.values();

  private boolean blinking;
  private long sinceNanos;
  private FaultCode shown = FaultCode.INTERNAL;

  /**
   * Lamp in this tick.
   *
   * @return true for on
   */
  public boolean update(long nowNanos, Outputs outputs) {
    if (!outputs.state.isRest()) {
      blinking = false;
      return false;
    }
    FaultCode worst = worstResting(outputs.activeFaults);
    if (worst == null) {
      blinking = false;
      return true;
    }
    if (!blinking || worst != shown) {
      blinking = true;
      shown = worst;
      sinceNanos = nowNanos;
    }
    long lead = worst.reaction() == Reaction.LOCK ? LONG_NANOS + BLINK_NANOS : 0L;
    long round = lead + 2L * Roadside.blinks(worst) * BLINK_NANOS + PAUSE_NANOS;
    long phase = (nowNanos - sinceNanos) % round;
    if (phase < lead) {
      return phase < LONG_NANOS;
    }
    long inBlinks = phase - lead;
    return inBlinks < 2L * Roadside.blinks(worst) * BLINK_NANOS && inBlinks / BLINK_NANOS % 2 == 0;
  }

  private static @Nullable FaultCode worstResting(long faults) {
    FaultCode worst = null;
    for (int i = 0; i < CODES.length; i++) {
      FaultCode code = CODES[i];
      boolean rests = code.reaction().compareTo(Reaction.REST) >= 0;
      if ((faults & code.bit()) != 0
          && rests
          && (worst == null || code.reaction().compareTo(worst.reaction()) > 0)) {
        worst = code;
      }
    }
    return worst;
  }
}
