package org.boostwright.pi.io;

import java.io.IOException;
import java.nio.ByteBuffer;
import java.nio.file.Files;
import java.nio.file.Path;

/**
 * Where the kernel shows its devices; a folder stands in its place in tests.
 *
 * @param pwm PWM chips, {@code /sys/class/pwm}
 * @param i2c I2C adapters, {@code /sys/class/i2c-adapter}
 */
public record SysfsPlaces(Path pwm, Path i2c) {
  /** The machine's own. */
  public static final SysfsPlaces SYSTEM =
      new SysfsPlaces(Path.of("/sys/class/pwm"), Path.of("/sys/class/i2c-adapter"));

  /**
   * Checks the clock of an I2C bus, as the device tree states it.
   *
   * @throws IOException when it is slower, or not stated
   */
  void requireI2cHz(int bus, int hz) throws IOException {
    Path file = i2c.resolve("i2c-" + bus).resolve("of_node").resolve("clock-frequency");
    if (!Files.exists(file)) {
      throw new IOException(
          "the clock of I2C bus "
              + bus
              + " is not stated ("
              + file
              + "); it has to be "
              + hz / 1000
              + " kHz: dtparam=i2c_arm_baudrate=400000 in config.txt");
    }
    byte[] bytes = Files.readAllBytes(file);
    int stated = bytes.length == 4 ? ByteBuffer.wrap(bytes).getInt() : 0;
    if (!(stated >= hz)) {
      throw new IOException(
          "I2C bus "
              + bus
              + " runs at "
              + stated / 1000
              + " kHz and the converter needs "
              + hz / 1000
              + " kHz to give pressure in every tick:"
              + " dtparam=i2c_arm_baudrate=400000 in config.txt");
    }
  }
}
