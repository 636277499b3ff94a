package org.boostwright.pi.record;

import org.boostwright.core.record.LogFormat;
import org.jspecify.annotations.Nullable;

/**
 * Log rows handed from the tick thread to the recorder without a lock, preallocated and bounded. A
 * full queue drops the row and counts it; the tick never waits.
 */
@SuppressWarnings("NonAtomicVolatileUpdate") // every counter has exactly one writing thread
public final class RowQueue {
  private final double[][] rows;
  private final int mask;
  private volatile int puts;
  private volatile int takes;
  private volatile long dropped;

  /**
   * @param size number of rows, a power of two
   */
  public RowQueue(int size) {
    if (Integer.bitCount(size) != 1) {
      throw new IllegalArgumentException("the number of rows must be a power of two: " + size);
    }
    rows = new double[size][LogFormat.COLUMN_COUNT];
    mask = size - 1;
  }

  /** The row to fill next; null, and a drop counted, when the queue is full. */
  public double @Nullable [] claim() {
    int at = puts;
    if (at - takes > mask) {
      dropped++;
      return null;
    }
    return rows[at & mask];
  }

  /** Hands the claimed row over. */
  public void publish() {
    puts++;
  }

  /** The oldest row; null when there is none. Valid until {@link #remove}. */
  public double @Nullable [] peek() {
    int at = takes;
    return at == puts ? null : rows[at & mask];
  }

  /** Gives the oldest row's place back. */
  public void remove() {
    takes++;
  }

  /** Rows that found the queue full. */
  public long dropped() {
    return dropped;
  }
}
