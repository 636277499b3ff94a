package org.boostwright.core.link;

/**
 * Lets every frame through once and in order.
 *
 * <p>A sequence number is new when it lies 1 to {@link #WINDOW} after the last one, counted modulo
 * 2^32. A number further away is not believed: one that slipped through the checksum by chance must
 * not shut out the good ones after it.
 */
public final class SequenceWatch {
  /** Five seconds of ticks: a longer gap needs a new handshake. */
  public static final int WINDOW = 1000;

  private boolean started;
  private int last;
  private long missed;
  private long notNew;

  /**
   * Judges the sequence number of a good frame.
   *
   * @return true when the frame is new and may be used
   */
  public boolean accept(int sequence) {
    int distance = sequence - last;
    if (started && !(distance >= 1 && distance <= WINDOW)) {
      notNew++;
      return false;
    }
    if (started) {
      missed += distance - 1;
    }
    started = true;
    last = sequence;
    return true;
  }

  /** Takes any next number: after a new handshake. */
  public void restart() {
    started = false;
  }

  /** True once a frame was accepted. */
  public boolean started() {
    return started;
  }

  /** Last accepted number. */
  public int last() {
    return last;
  }

  /** Numbers that never came. */
  public long missed() {
    return missed;
  }

  /** Frames that were repeated, out of order or far out of sequence. */
  public long notNew() {
    return notNew;
  }
}
