package org.boostwright.core.link;

/**
 * A serial port as a {@link Line} sees it: bytes in and out, and whether it is still there. What
 * stands behind (a library, a device model in tests) is the adapter's business.
 */
public interface BytePort {
  /**
   * Opens it.
   *
   * @return empty when it is open now, else why not, for people
   */
  String open();

  /**
   * Waits a short while for bytes.
   *
   * @return how many came, 0 for none, below 0 when the port has gone
   */
  int read(byte[] into);

  /** When the first of the bytes last read came, ns of the monotonic clock. */
  long readNanos();

  /** Writes bytes; whatever the port does not take is lost. */
  void write(byte[] bytes, int length);

  /** Closes it; it may be opened again. */
  void close();
}
