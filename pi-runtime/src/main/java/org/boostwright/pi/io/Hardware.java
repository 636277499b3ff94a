package org.boostwright.pi.io;

import java.io.IOException;

/** Opens devices and lines of the machine; device models stand in its place in tests. */
public interface Hardware extends AutoCloseable {
  /** A device on an I2C bus. */
  I2cDevice i2c(int bus, int address) throws IOException;

  /** A device on an SPI bus, mode 0. */
  SpiDevice spi(int bus, int chipSelect, int hz) throws IOException;

  /** An output, low. */
  OutputLine output(int gpio, String name) throws IOException;

  /** An input. */
  InputLine input(int gpio, String name) throws IOException;

  /** An input whose rising edges are timed. */
  EdgeLine edges(int gpio, String name) throws IOException;

  @Override
  void close();
}
