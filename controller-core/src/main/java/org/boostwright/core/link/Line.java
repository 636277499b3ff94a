package org.boostwright.core.link;

/**
 * A line over a port that may come and go: bytes received wait with their times, bytes to send wait
 * a moment and are dropped where there is no port. Nobody who puts or takes ever waits.
 *
 * <p>Two threads outside step it, one calls {@link #readStep} and nothing else, one {@link
 * #writeStep}. A dead peer behind a live port shows only as silence; that is the protocol's
 * business.
 */
@SuppressWarnings("NonAtomicVolatileUpdate") // every counter has exactly one writing thread
public final class Line {
  /** Baud rate when none is asked for. */
  public static final int DEFAULT_BAUD = 460_800;

  private static final int INCOMING_CHUNKS = 64;
  private static final int INCOMING_BYTES = 1024;

  private final BytePort port;
  private final byte[] bytes = new byte[INCOMING_BYTES];
  private final ChunkQueue incoming = new ChunkQueue(INCOMING_CHUNKS, INCOMING_BYTES);
  private final ChunkQueue outgoing;
  private volatile boolean open;
  private volatile long opens;
  private volatile String trouble = "not opened yet";

  /**
   * A line that is not open yet.
   *
   * @param outgoingFrames frames that may wait to be sent, a power of two: few, so that a peer that
   *     stopped reading finds no old ones when it comes back
   */
  public Line(BytePort port, int outgoingFrames) {
    this.port = port;
    outgoing = new ChunkQueue(outgoingFrames, Frame.MAX_WIRE_BYTES);
  }

  /**
   * Opens the port, or reads what comes within a short while.
   *
   * @return false when there is no port; try again in a moment
   */
  public boolean readStep() {
    if (!open) {
      trouble = port.open();
      open = trouble.isEmpty();
      opens += open ? 1L : 0L;
      return open;
    }
    int count = port.read(bytes);
    if (count < 0) {
      open = false;
      trouble = "the port has gone";
      port.close();
      return false;
    }
    if (count > 0) {
      incoming.put(bytes, count, port.readNanos());
    }
    return true;
  }

  /**
   * Sends the frame that has waited longest; without a port it is old by the time there is one, and
   * is dropped.
   *
   * @return false when none waits
   */
  public boolean writeStep() {
    if (outgoing.isEmpty()) {
      return false;
    }
    if (open) {
      port.write(outgoing.bytes(), outgoing.length());
    }
    outgoing.remove();
    return true;
  }

  /** Closes the port; the reading thread's last call, or after it has ended. */
  public void close() {
    if (open) {
      open = false;
      port.close();
    }
  }

  /** Received bytes with their times; the caller is the only one to take. */
  public ChunkQueue incoming() {
    return incoming;
  }

  /** Hands over bytes to send. False when the port does not take them fast enough. */
  public boolean send(byte[] frame, int length) {
    return outgoing.put(frame, length, 0L);
  }

  /** Frames not sent because the port did not take them. */
  public long unsent() {
    return outgoing.refused();
  }

  /** How often the port was opened. */
  public long opens() {
    return opens;
  }

  /** Why the port is not open; empty while it is. */
  public String trouble() {
    return trouble;
  }
}
