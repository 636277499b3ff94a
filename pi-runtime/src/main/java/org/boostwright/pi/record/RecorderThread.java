package org.boostwright.pi.record;

import java.util.concurrent.locks.LockSupport;

/** Steps a {@link Recorder} ten times a second until it is closed. */
public final class RecorderThread implements AutoCloseable {
  private static final long STEP_NANOS = 100_000_000L;
  private static final long CLOSE_MILLIS = 5_000L;

  private final Recorder recorder;
  private final Thread thread;
  private volatile boolean stopping;

  /** Starts at once. */
  public RecorderThread(Recorder recorder) {
    this.recorder = recorder;
    thread = new Thread(this::run, "recorder");
    thread.setDaemon(true);
    thread.start();
  }

  private void run() {
    while (!stopping) {
      recorder.step(System.nanoTime());
      LockSupport.parkNanos(STEP_NANOS);
    }
    recorder.close(System.nanoTime());
  }

  /** Writes what is left and waits until that is done. */
  @Override
  public void close() {
    stopping = true;
    LockSupport.unpark(thread);
    try {
      thread.join(CLOSE_MILLIS);
    } catch (InterruptedException e) {
      Thread.currentThread().interrupt();
    }
  }
}
