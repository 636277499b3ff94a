package org.boostwright.rig.electrical;

import java.io.IOException;
import java.nio.charset.StandardCharsets;
import java.nio.file.Files;
import java.nio.file.Path;

/**
 * The pressure sensor's voltage from an MCP4725 through the kernel's own driver (Linux,
 * Documentation/ABI/testing/sysfs-bus-iio; driver {@code mcp4725}): a number in a file is a code of
 * 12 bits, the output is supply times code over 4096 (Microchip DS22039).
 */
final class SensorVoltage {
  private static final int TOP_CODE = 4095;
  private static final String CODE = "out_voltage0_raw";
  private static final String POWER_DOWN = "out_voltage0_powerdown";

  private final Path folder;
  private final double voltsPerCode;
  private int code = -1;

  /**
   * Opens the device at 0 V.
   *
   * @param folder such as {@code /sys/bus/iio/devices/iio:device0}
   * @throws IOException when it is no such converter
   */
  SensorVoltage(Path folder) throws IOException {
    this.folder = folder;
    Path scale = folder.resolve("out_voltage_scale");
    if (!Files.exists(scale)) {
      scale = folder.resolve("out_voltage0_scale");
    }
    if (!Files.exists(scale) || !Files.exists(folder.resolve(CODE))) {
      throw new IOException(
          folder
              + " is no voltage output of the kernel; for an MCP4725 at 0x60 on bus 1: echo mcp4725"
              + " 0x60 > /sys/bus/i2c/devices/i2c-1/new_device");
    }
    double milliVolts = Double.parseDouble(Files.readString(scale).strip());
    if (!(milliVolts > 0.0)) {
      throw new IOException(scale + " says " + milliVolts + " mV per step");
    }
    voltsPerCode = 1e-3 * milliVolts;
    set(0.0);
    if (Files.exists(folder.resolve(POWER_DOWN))) {
      write(POWER_DOWN, "0");
    }
  }

  /** Highest voltage it can give, V. */
  double topVolts() {
    return TOP_CODE * voltsPerCode;
  }

  /** Gives a voltage, as near as its steps allow; below 0 and no number are 0 V. */
  void set(double volts) throws IOException {
    double wanted = volts > 0.0 ? volts / voltsPerCode : 0.0;
    int next = (int) Math.round(Math.min(wanted, TOP_CODE));
    if (next != code) {
      write(CODE, Integer.toString(next));
      code = next;
    }
  }

  private void write(String attribute, String text) throws IOException {
    Files.write(folder.resolve(attribute), text.getBytes(StandardCharsets.US_ASCII));
  }
}
