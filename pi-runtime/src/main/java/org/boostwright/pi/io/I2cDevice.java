package org.boostwright.pi.io;

import java.io.IOException;

/** One device on an I2C bus. */
public interface I2cDevice extends AutoCloseable {
  /**
   * Writes bytes in one transfer.
   *
   * @throws IOException when the device does not acknowledge or the bus times out
   */
  void write(byte[] bytes) throws IOException;

  /**
   * Reads a register: its number written, then as many bytes as {@code into} holds read after a
   * repeated start.
   *
   * @throws IOException when the device does not acknowledge or the bus times out
   */
  void readRegister(int register, byte[] into) throws IOException;

  @Override
  void close();
}
