package org.boostwright.core.monitor;

/** Ticks that come late, early or not at all: each counted, three in a row confirm. */
public final class TimingWatch {
  private final long tickNanos;
  private boolean started;
  private long lastNanos;
  private long late;

  /**
   * @param tickNanos intended distance of ticks, ns
   */
  public TimingWatch(long tickNanos) {
    this.tickNanos = tickNanos;
  }

  /**
   * Judges the distance to the last tick: one and a half ticks or more is late, and so is a tick
   * made up for within half a tick of the one before. A program held up again and again else shows
   * a late tick and a good one in turn, for ever.
   *
   * @return seconds since the last tick, clamped to 0 to 4 ticks, so that no law integrates a gap
   */
  public double update(long nowNanos, FaultTable faults) {
    if (!started) {
      started = true;
      lastNanos = nowNanos;
      return tickNanos * 1e-9;
    }
    long distance = nowNanos - lastNanos;
    lastNanos = nowNanos;
    boolean bad = !(distance > tickNanos / 2 && distance < tickNanos + tickNanos / 2);
    if (bad) {
      late++;
    }
    faults.sampleInARow(FaultCode.TICK_LATE, bad, nowNanos);
    long longest = 4 * tickNanos;
    long used = distance < 0 ? 0 : Math.min(distance, longest);
    return used * 1e-9;
  }

  /** Late ticks since start. */
  public long late() {
    return late;
  }
}
