package org.boostwright.pi.io;

import java.io.IOException;

/** Waits for edges of one line on a thread of its own and hands them to a {@link PulseTimer}. */
final class EdgeReader implements AutoCloseable {
  private static final long WAIT_NANOS = 200_000_000L;
  private static final long AFTER_FAILURE_NANOS = 100_000_000L;

  private final EdgeLine line;
  private final PulseTimer timer;
  private final Clock clock;
  private final Thread thread;
  private volatile boolean stopping;
  private volatile String failure = "";

  EdgeReader(String name, EdgeLine line, PulseTimer timer, Clock clock) {
    this.line = line;
    this.timer = timer;
    this.clock = clock;
    thread = new Thread(this::run, name);
    thread.setDaemon(true);
  }

  void start() {
    thread.start();
  }

  private void run() {
    while (!stopping) {
      try {
        long at = line.await(WAIT_NANOS);
        if (at != EdgeLine.NONE) {
          timer.edge(at);
        }
      } catch (IOException e) {
        failure = String.valueOf(e.getMessage());
        clock.sleepUntil(clock.nanoTime() + AFTER_FAILURE_NANOS);
      }
    }
  }

  /** Words about the last failure; empty when there was none. */
  String failure() {
    return failure;
  }

  @Override
  public void close() {
    stopping = true;
    try {
      thread.join(2 * WAIT_NANOS / 1_000_000L); // at once when never started
    } catch (InterruptedException e) {
      Thread.currentThread().interrupt();
    }
    line.close();
  }
}
