package org.boostwright.rig.link;

import java.util.concurrent.locks.LockSupport;

/** The rig's monotonic clock, and waiting for it; stepped in tests. */
interface RigClock {
  /** Time now, ns; only differences mean anything. */
  long nanoTime();

  /** Returns at or shortly after the given time, or at once when it has passed. */
  void sleepUntil(long nanos);

  /** The machine's clock. */
  RigClock SYSTEM =
      new RigClock() {
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
