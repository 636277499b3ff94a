package org.boostwright.core.link;

/** Turns this end's monotonic clock into the 32-bit microsecond stamps of its frames. */
public final class StampClock {
  private final long originNanos;

  /** Stamps start at {@link Frame#FIRST_STAMP_MICROS} now. */
  public StampClock(long nowNanos) {
    originNanos = nowNanos;
  }

  /** Stamp of a time of this end's clock, us, modulo 2^32. */
  public int stampMicros(long nanos) {
    return (int) Math.floorDiv(nanos - originNanos, 1000L) + Frame.FIRST_STAMP_MICROS;
  }
}
