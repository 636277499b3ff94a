package org.boostwright.core.link;

/**
 * Handshake. Its layout never changes, so that two ends of different protocols can say so.
 *
 * <p>It carries the sequence number of the frame before it and counts nothing itself.
 */
public final class HelloFrame {
  /** The controller's end. */
  public static final int CONTROLLER = 1;

  /** The rig's end. */
  public static final int RIG = 2;

  static final int PAYLOAD_BYTES = 15;

  /** Protocol number, {@link Frame#PROTOCOL} of the sender. */
  public int protocol;

  /** {@link #CONTROLLER} or {@link #RIG}. */
  public int role;

  /** Different for every start of the sender's program. */
  public int session;

  /** First eight bytes of the digest of the sender's settings; 0 when it has none. */
  public long settingsDigest;

  /** Writes the frame. */
  void write(FrameWriter to, int sequence) {
    to.begin(Frame.HELLO, sequence);
    to.put16(protocol);
    to.put8(role);
    to.put32(session);
    to.put64(settingsDigest);
    to.end();
  }

  /** Reads the frame just completed. */
  void read(FrameDecoder from) {
    protocol = from.get16();
    role = from.get8();
    session = from.get32();
    settingsDigest = from.get64();
  }
}
