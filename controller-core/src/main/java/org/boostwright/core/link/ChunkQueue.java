package org.boostwright.core.link;

/**
 * Bytes handed from one thread to one other without a lock: a ring of chunks, each with its time.
 *
 * <p>One thread only calls the {@code put} side, one other only the {@code take} side. A full queue
 * refuses and counts; nobody ever waits.
 */
@SuppressWarnings("NonAtomicVolatileUpdate") // every counter has exactly one writing thread
public final class ChunkQueue {
  private final byte[][] chunks;
  private final int[] lengths;
  private final long[] nanos;
  private final int mask;
  private volatile int puts;
  private volatile int takes;
  private volatile long refused;

  /**
   * @param count number of chunks, a power of two
   * @param chunkBytes longest chunk
   */
  public ChunkQueue(int count, int chunkBytes) {
    if (Integer.bitCount(count) != 1) {
      throw new IllegalArgumentException("the number of chunks must be a power of two: " + count);
    }
    chunks = new byte[count][chunkBytes];
    lengths = new int[count];
    nanos = new long[count];
    mask = count - 1;
  }

  /** Copies bytes in. Returns false when the queue is full or the chunk too long. */
  public boolean put(byte[] bytes, int length, long atNanos) {
    int at = puts;
    if (at - takes > mask || length > chunks[0].length) {
      refused++;
      return false;
    }
    int slot = at & mask;
    System.arraycopy(bytes, 0, chunks[slot], 0, length);
    lengths[slot] = length;
    nanos[slot] = atNanos;
    puts = at + 1;
    return true;
  }

  /** True when there is nothing to take. */
  public boolean isEmpty() {
    return takes == puts;
  }

  /** Bytes of the oldest chunk; valid until {@link #remove}. */
  public byte[] bytes() {
    return chunks[takes & mask];
  }

  /** Length of the oldest chunk. */
  public int length() {
    return lengths[takes & mask];
  }

  /** Time of the oldest chunk, ns. */
  public long nanos() {
    return nanos[takes & mask];
  }

  /** Gives the oldest chunk's place back. */
  public void remove() {
    takes++;
  }

  /** Chunks that found the queue full. */
  public long refused() {
    return refused;
  }
}
