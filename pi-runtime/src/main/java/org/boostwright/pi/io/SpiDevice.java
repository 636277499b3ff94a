package org.boostwright.pi.io;

import java.io.IOException;

/** One device on an SPI bus. */
public interface SpiDevice extends AutoCloseable {
  /**
   * Exchanges bytes in one transfer.
   *
   * @param out sent
   * @param in received, as many bytes
   * @throws IOException when the kernel refuses
   */
  void transfer(byte[] out, byte[] in) throws IOException;

  @Override
  void close();
}
