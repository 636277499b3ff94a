package org.boostwright.core.monitor;

import org.boostwright.core.record.LogFormat;

/**
 * Counts, confirms and clears faults; keeps what was true when each was confirmed.
 *
 * <p>Every watch reports its samples with {@link #sample}; {@link #endTick} applies the clear
 * rules. Clearing one fault never touches another. Knowledge has three levels: a watch that never
 * ran is not the same as one that passed ({@link #ran}).
 */
public final class FaultTable {
  private static final FaultCode[] CODES = FaultCode.values();

  private final int[] count = new int[FaultCode.COUNT];
  private final long[] lastBadNanos = new long[FaultCode.COUNT];
  private final boolean[] good = new boolean[FaultCode.COUNT];
  private final long[] goodSinceNanos = new long[FaultCode.COUNT];
  private final long[] lastGoodNanos = new long[FaultCode.COUNT];
  private final long[] firstConfirmedNanos = new long[FaultCode.COUNT];
  private final long[] lastConfirmedNanos = new long[FaultCode.COUNT];
  private final long[] lastClearedNanos = new long[FaultCode.COUNT];
  private final int[] confirmations = new int[FaultCode.COUNT];
  private final double[][] frames = new double[FaultCode.COUNT][LogFormat.COLUMN_COUNT];
  private long active;
  private long ran;
  private long newlyConfirmed;

  /** Begins a tick. */
  public void beginTick() {
    newlyConfirmed = 0L;
  }

  /** One judged sample of a watch: counts up when bad, down when good. */
  public void sample(FaultCode code, boolean bad, long nowNanos) {
    int i = code.ordinal();
    ran |= code.bit();
    if (bad) {
      good[i] = false;
      lastBadNanos[i] = nowNanos;
      count[i] = Math.min(FaultCode.CONFIRM_AT, count[i] + code.upCount());
      if (count[i] >= FaultCode.CONFIRM_AT) {
        confirm(code, nowNanos);
      }
      return;
    }
    if (!good[i]) {
      good[i] = true;
      goodSinceNanos[i] = nowNanos;
    }
    lastGoodNanos[i] = nowNanos;
    if (count[i] > 0) {
      count[i]--;
    }
  }

  /** Like {@link #sample}, but one good sample resets the count: only bad ones in a row confirm. */
  public void sampleInARow(FaultCode code, boolean bad, long nowNanos) {
    if (!bad) {
      count[code.ordinal()] = 0;
    }
    sample(code, bad, nowNanos);
  }

  private void confirm(FaultCode code, long nowNanos) {
    int i = code.ordinal();
    if ((active & code.bit()) != 0) {
      return;
    }
    active |= code.bit();
    newlyConfirmed |= code.bit();
    if (confirmations[i] == 0) {
      firstConfirmedNanos[i] = nowNanos;
    }
    lastConfirmedNanos[i] = nowNanos;
    confirmations[i]++;
  }

  /**
   * Takes back the faults whose clear rule is met.
   *
   * @param throttleReleased a valid throttle has been below 20 % for 2 s
   * @param keyCycled the key is off, or the engine is known to be stopped where no key is wired
   */
  public void endTick(long nowNanos, boolean throttleReleased, boolean keyCycled) {
    if (active == 0L) {
      return;
    }
    for (int i = 0; i < CODES.length; i++) {
      FaultCode code = CODES[i];
      if ((active & code.bit()) == 0 || (newlyConfirmed & code.bit()) != 0) {
        continue;
      }
      // Time without a sample is no proof: the good ones themselves have to span the clear time.
      boolean causeGone =
          good[i] && lastGoodNanos[i] - goodSinceNanos[i] >= (long) (code.clearSeconds() * 1e9);
      boolean clear;
      switch (code.clearRule()) {
        case GOOD_FOR_CLEAR_TIME:
          clear = causeGone;
          break;
        case THROTTLE_RELEASED:
          clear = causeGone && throttleReleased;
          break;
        case KEY_OFF:
        default:
          clear = keyCycled && nowNanos - lastBadNanos[i] > 0;
          break;
      }
      if (clear) {
        active &= ~code.bit();
        count[i] = 0;
        lastClearedNanos[i] = nowNanos;
      }
    }
  }

  /** Confirmed faults as bits. */
  public long active() {
    return active;
  }

  /** True while the fault is confirmed. */
  public boolean isActive(FaultCode code) {
    return (active & code.bit()) != 0;
  }

  /** Watches that have judged at least one sample since start, as bits. */
  public long ran() {
    return ran;
  }

  /** Faults confirmed in this tick, as bits. */
  public long newlyConfirmed() {
    return newlyConfirmed;
  }

  /** The most severe reaction among the confirmed faults; REPORT when there is none. */
  public Reaction worstReaction() {
    Reaction worst = Reaction.REPORT;
    for (int i = 0; i < CODES.length; i++) {
      if ((active & CODES[i].bit()) != 0 && CODES[i].reaction().compareTo(worst) > 0) {
        worst = CODES[i].reaction();
      }
    }
    return worst;
  }

  /** Current count of a fault, 0 to {@link FaultCode#CONFIRM_AT}. */
  public int count(FaultCode code) {
    return count[code.ordinal()];
  }

  /** How often the fault has been confirmed since start. */
  public int confirmations(FaultCode code) {
    return confirmations[code.ordinal()];
  }

  /** When the fault was first confirmed, ns; meaningless while never confirmed. */
  public long firstConfirmedNanos(FaultCode code) {
    return firstConfirmedNanos[code.ordinal()];
  }

  /** When the fault was last confirmed, ns. */
  public long lastConfirmedNanos(FaultCode code) {
    return lastConfirmedNanos[code.ordinal()];
  }

  /** When the fault was last cleared, ns; 0 when never. */
  public long lastClearedNanos(FaultCode code) {
    return lastClearedNanos[code.ordinal()];
  }

  /** Stores what was true in this tick for every fault that was confirmed in it. */
  public void storeFrames(double[] row) {
    for (int i = 0; i < CODES.length; i++) {
      if ((newlyConfirmed & CODES[i].bit()) != 0) {
        System.arraycopy(row, 0, frames[i], 0, row.length);
      }
    }
  }

  /**
   * Freeze frame: the log row of the tick in which the fault was last confirmed. Columns as in
   * {@link LogFormat}; all zero when it never was.
   */
  public double[] frame(FaultCode code) {
    return frames[code.ordinal()].clone();
  }
}
