package org.boostwright.pi.loop;

import org.HdrHistogram.Histogram;
import org.HdrHistogram.SingleWriterRecorder;

/**
 * Timing of the ticks: how late each began against its intended start, how long it took, and how
 * many had to be left out. Recorded by the tick thread without allocation; read by any other.
 */
public final class TickStats {
  /** Longest time kept apart, us; anything longer counts as this. */
  private static final long LONGEST_MICROS = 10_000_000L;

  private static final int DIGITS = 3;

  private final SingleWriterRecorder lateness =
      new SingleWriterRecorder(1L, LONGEST_MICROS, DIGITS);
  private final SingleWriterRecorder duration =
      new SingleWriterRecorder(1L, LONGEST_MICROS, DIGITS);
  private final Histogram latenessSum = new Histogram(1L, LONGEST_MICROS, DIGITS);
  private final Histogram durationSum = new Histogram(1L, LONGEST_MICROS, DIGITS);
  private volatile long ticks;
  private volatile long leftOut;
  private volatile long beats;

  /** A tick began. */
  @SuppressWarnings("NonAtomicVolatileUpdate") // only the tick thread counts
  void began(long lateNanos) {
    ticks++;
    lateness.recordValue(micros(lateNanos));
  }

  /** A tick ended. */
  void ended(long nanos) {
    duration.recordValue(micros(nanos));
  }

  /** Intended starts passed by without a tick. */
  @SuppressWarnings("NonAtomicVolatileUpdate") // only the tick thread counts
  void leftOut(long count) {
    leftOut += count;
  }

  /** A heartbeat edge was given. */
  @SuppressWarnings("NonAtomicVolatileUpdate") // only the tick thread counts
  void beat() {
    beats++;
  }

  private static long micros(long nanos) {
    long micros = nanos / 1000L;
    return micros < 0L ? 0L : Math.min(micros, LONGEST_MICROS);
  }

  /** Ticks so far. */
  public long ticks() {
    return ticks;
  }

  /** Intended starts that were passed by without a tick. */
  public long leftOut() {
    return leftOut;
  }

  /** Heartbeat edges so far. */
  public long beats() {
    return beats;
  }

  /** Lateness of all ticks so far, us. */
  public synchronized Histogram lateness() {
    latenessSum.add(lateness.getIntervalHistogram());
    return latenessSum.copy();
  }

  /** Duration of all ticks so far, us. */
  public synchronized Histogram duration() {
    durationSum.add(duration.getIntervalHistogram());
    return durationSum.copy();
  }
}
