package org.boostwright.core.link;

/**
 * Places the other end's time stamps on this end's clock.
 *
 * <p>Least-delay filter, the idea of the clock filter in NTP (RFC 5905, section 10): the smallest
 * difference between arrival and stamp is the offset, because waiting on the way only ever adds. It
 * follows a slower clock at {@link #DRIFT} at most, so a frame that took longer than usual is seen
 * to be old by just that.
 */
public final class PeerClock {
  /** Two crystals differ by less than this (common practice, no source: 100 ppm each). */
  static final double DRIFT = 200e-6;

  private boolean started;
  private int lastStampMicros;
  private long peerNanos;
  private long lastLocalNanos;
  private long offsetNanos;

  /** Forgets the other end. */
  public void restart() {
    started = false;
  }

  /**
   * Learns from a new frame.
   *
   * @param stampMicros its stamp
   * @param arrivedNanos when it arrived, on this end's clock
   * @return time of the stamp on this end's clock, ns
   */
  public long arrived(int stampMicros, long arrivedNanos) {
    if (!started) {
      started = true;
      peerNanos = 0L;
      offsetNanos = arrivedNanos;
    } else {
      peerNanos += 1000L * (stampMicros - lastStampMicros);
      long offset = arrivedNanos - peerNanos;
      long allowed = (long) (DRIFT * (arrivedNanos - lastLocalNanos));
      long later = offset - offsetNanos;
      offsetNanos += later < allowed ? later : allowed;
    }
    lastStampMicros = stampMicros;
    lastLocalNanos = arrivedNanos;
    return peerNanos + offsetNanos;
  }

  /** Time of another stamp out of the same frame on this end's clock, ns. */
  public long localNanos(int stampMicros) {
    return peerNanos + offsetNanos + 1000L * (stampMicros - lastStampMicros);
  }
}
