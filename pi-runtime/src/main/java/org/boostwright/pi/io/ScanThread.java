package org.boostwright.pi.io;

import org.boostwright.core.settings.ScanPlan;

/**
 * Runs the passes of an {@link AnalogScan} on the grid of the ticks, each begun so early that the
 * pressure sample is ready for the tick.
 */
final class ScanThread implements AutoCloseable {
  private final AnalogScan scan;
  private final Clock clock;
  private final long leadNanos;
  private final Thread thread;
  private volatile boolean stopping;

  ScanThread(AnalogScan scan, Clock clock, long leadNanos) {
    this.scan = scan;
    this.clock = clock;
    this.leadNanos = leadNanos;
    thread = new Thread(this::run, "converter");
    thread.setDaemon(true);
    thread.setPriority(Thread.MAX_PRIORITY);
  }

  void start() {
    thread.start();
  }

  private void run() {
    while (!stopping) {
      clock.sleepUntil(nextStart(clock.nanoTime(), leadNanos));
      scan.pass();
    }
  }

  /** Begin of the next pass: {@code leadNanos} before a whole multiple of the tick. */
  static long nextStart(long nowNanos, long leadNanos) {
    long pass = ScanPlan.PASS_NANOS;
    return Math.floorDiv(nowNanos + leadNanos, pass) * pass + pass - leadNanos;
  }

  @Override
  public void close() {
    stopping = true;
    try {
      thread.join(100L); // a bus that hangs holds its thread; it must not hold the end, too
    } catch (InterruptedException e) {
      Thread.currentThread().interrupt();
    }
  }
}
