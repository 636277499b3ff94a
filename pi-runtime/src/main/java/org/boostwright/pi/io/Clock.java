package org.boostwright.pi.io;

import java.util.concurrent.locks.LockSupport;

/** The monotonic clock, and waiting for it; stepped in tests. */
public interface Clock {
  /** Time now, ns; only differences mean anything. */
  long nanoTime();

  /** Returns at or shortly after the given time, or at once when it has passed. */
  void sleepUntil(long nanos);

  /** The machine's clock: CLOCK_MONOTONIC, the same that the kernel times edges with. */
  Clock SYSTEM =
      new Clock() {
        @Override
        public long nanoTime() {
          return System.nanoTime();
        }

        @Override
        public void sleepUntil(long nanos) {
          for (long left = nanos - System.nanoTime();
              left > 0L && !Thread.currentThread().isInterrupted();
              left = nanos - System.nanoTime()) {
            LockSupport.parkNanos(left);
          }
        }
      };
}
