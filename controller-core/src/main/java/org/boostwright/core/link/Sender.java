package org.boostwright.core.link;

/** One end's outgoing side: sequence numbers, when each was sent, and the regular handshake. */
final class Sender {
  /** Both ends repeat their handshake this often, whatever else they send. */
  static final long HELLO_NANOS = 500_000_000L;

  private static final int REMEMBERED = 256;

  private final FrameWriter writer = new FrameWriter();
  private final HelloFrame hello = new HelloFrame();
  private final long[] sentNanos = new long[REMEMBERED];
  private int sequence = Frame.FIRST_SEQUENCE;
  private long sent;
  private boolean greeted;
  private long helloNanos;

  Sender(int role, int session, long settingsDigest) {
    hello.protocol = Frame.PROTOCOL;
    hello.role = role;
    hello.session = session;
    hello.settingsDigest = settingsDigest;
  }

  FrameWriter writer() {
    return writer;
  }

  /** True when a handshake is due; it then stands in the writer. */
  boolean writeHello(long nowNanos) {
    if (greeted && nowNanos - helloNanos < HELLO_NANOS) {
      return false;
    }
    greeted = true;
    helloNanos = nowNanos;
    hello.write(writer, sequence);
    return true;
  }

  /** Sequence number of the next data frame. */
  int next(long nowNanos) {
    sequence++;
    sent++;
    sentNanos[sequence & (REMEMBERED - 1)] = nowNanos;
    return sequence;
  }

  /** Number of the newest data frame. */
  int sequence() {
    return sequence;
  }

  /** Time since the frame with this number was sent, ns; {@link Long#MAX_VALUE} if too long ago. */
  long sinceSent(int number, long nowNanos) {
    int back = sequence - number;
    if (!(back >= 0 && back < REMEMBERED && back < sent)) {
      return Long.MAX_VALUE;
    }
    return nowNanos - sentNanos[number & (REMEMBERED - 1)];
  }

  long sent() {
    return sent;
  }
}
