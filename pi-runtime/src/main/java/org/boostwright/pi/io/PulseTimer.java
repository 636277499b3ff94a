package org.boostwright.pi.io;

/**
 * Period and time of the newest pulse of one line: edges handed from the thread that waits for them
 * to the tick thread without a lock.
 *
 * <p>An edge sooner after the last good one than an engine can is a spike of the wire: skipped and
 * counted. A storm of edges fills the queue and is counted, too; it costs the tick nothing.
 */
@SuppressWarnings("NonAtomicVolatileUpdate") // every counter has exactly one writing thread
public final class PulseTimer {
  private static final int SIZE = 64;

  private final long shortestNanos;
  private final long[] edges = new long[SIZE];
  private volatile int puts;
  private volatile int takes;
  private volatile long refused;

  private boolean seen;
  private long lastNanos;
  private double periodNanos;
  private long spikes;

  /**
   * @param shortestNanos shortest time between two real pulses, ns
   */
  public PulseTimer(long shortestNanos) {
    this.shortestNanos = shortestNanos;
  }

  /** Takes one edge; by the thread that waits for them. */
  public void edge(long atNanos) {
    int at = puts;
    if (at - takes >= SIZE) {
      refused++;
      return;
    }
    edges[at & (SIZE - 1)] = atNanos;
    puts = at + 1;
  }

  /** Works through the edges that came; by the tick thread, as everything below. */
  public void update() {
    int end = puts;
    for (int at = takes; at != end; at++) {
      judge(edges[at & (SIZE - 1)]);
    }
    takes = end;
  }

  private void judge(long atNanos) {
    if (seen && !(atNanos - lastNanos >= shortestNanos)) {
      spikes++;
      return;
    }
    periodNanos = seen ? atNanos - lastNanos : 0.0;
    lastNanos = atNanos;
    seen = true;
  }

  /** True once a pulse was seen. */
  public boolean seen() {
    return seen;
  }

  /** Time of the last pulse, ns. */
  public long lastNanos() {
    return lastNanos;
  }

  /** Time between the last two pulses, ns; 0 while there was only one. */
  public double periodNanos() {
    return periodNanos;
  }

  /** Edges skipped because no engine is that fast. */
  public long spikes() {
    return spikes;
  }

  /** Edges that found the queue full. */
  public long refused() {
    return refused;
  }
}
