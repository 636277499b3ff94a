package org.boostwright.pi.io;

/** A clock that only moves when it is told to, or slept on. */
public final class SteppedClock implements Clock {
  private long nanos;

  /** A clock at the given time. */
  public SteppedClock(long nanos) {
    this.nanos = nanos;
  }

  @Override
  public long nanoTime() {
    return nanos;
  }

  @Override
  public void sleepUntil(long untilNanos) {
    if (untilNanos - nanos > 0L) {
      nanos = untilNanos;
    }
  }

  /** Lets time pass, ns. */
  public void advance(long forNanos) {
    nanos += forNanos;
  }
}
