package org.boostwright.pi.loop;

import java.lang.invoke.MethodHandles;
import java.lang.invoke.VarHandle;
import org.boostwright.core.record.LogFormat;

/**
 * The newest tick as a row of {@link LogFormat}, for any thread that wants to look.
 *
 * <p>The tick thread writes and never waits: a counter is odd while a row is being written (a
 * sequence lock), and whoever reads across a change reads again. Nothing is allocated.
 */
public final class LatestTick {
  private static final VarHandle ELEMENT = MethodHandles.arrayElementVarHandle(double[].class);
  private static final int ATTEMPTS = 1000;

  private final double[] row = new double[LogFormat.COLUMN_COUNT];
  private volatile long version;

  /** Takes over a row; the tick thread only. */
  @SuppressWarnings("NonAtomicVolatileUpdate") // one thread writes
  void publish(double[] from) {
    version++;
    VarHandle.fullFence();
    for (int i = 0; i < row.length; i++) {
      ELEMENT.setOpaque(row, i, from[i]);
    }
    VarHandle.fullFence();
    version++;
  }

  /**
   * Copies the newest row.
   *
   * @param to at least {@link LogFormat#COLUMN_COUNT} long; columns by {@link LogFormat#column}
   * @return false before the first tick, or when no whole row was to be had; {@code to} then means
   *     nothing
   */
  public boolean read(double[] to) {
    for (int attempt = 0; attempt < ATTEMPTS; attempt++) {
      long before = version;
      if (before == 0L) {
        return false;
      }
      if ((before & 1L) == 0L) {
        for (int i = 0; i < row.length; i++) {
          to[i] = (double) ELEMENT.getOpaque(row, i);
        }
        VarHandle.fullFence();
        if (version == before) {
          return true;
        }
      }
      Thread.onSpinWait();
    }
    return false;
  }
}
