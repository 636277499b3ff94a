package org.boostwright.pi.io;

import java.io.IOException;
import org.boostwright.core.settings.ScanPlan;

/**
 * MCP3208 on SPI (Microchip DS21298, section 5 and figure 6-1): eight inputs of 12 bits, converted
 * during the transfer.
 *
 * <p>Three bytes out: 0000 0 start single D2, D1 D0 and zeros; the code stands in the last twelve
 * bits that come back, after a null bit that is 0 from a chip and 1 from an open wire. {@code V =
 * code*Vref/4096}. With the sensor supply as reference it is ratiometric.
 */
public final class Mcp3208 implements Converter {
  private static final int CODES = 4096;
  private static final int NULL_BIT = 0x10;

  private final SpiDevice device;
  private final double referenceVolts;
  private final byte[] out = new byte[3];
  private final byte[] in = new byte[3];

  /**
   * @param referenceVolts voltage at the reference pin, V
   */
  public Mcp3208(SpiDevice device, double referenceVolts) {
    this.device = device;
    this.referenceVolts = referenceVolts;
  }

  @Override
  public void check() throws IOException {
    convert(0);
  }

  @Override
  public double convert(int input) throws IOException {
    if (!(input >= 0 && input <= 7)) {
      throw new IllegalArgumentException("an MCP3208 has inputs 0 to 7, not " + input);
    }
    out[0] = (byte) (0x06 | input >> 2);
    out[1] = (byte) (input << 6);
    out[2] = 0;
    device.transfer(out, in);
    if ((in[1] & NULL_BIT) != 0) {
      throw new IOException(
          "no MCP3208 answers: its null bit is not 0; check wiring and chip select");
    }
    int code = (in[1] & 0x0F) << 8 | (in[2] & 0xFF);
    return code * referenceVolts / CODES;
  }

  @Override
  public long convertNanos() {
    return (long) (24 * 1e9 / ScanPlan.SPI_HZ);
  }

  @Override
  public double stepVolts() {
    return referenceVolts / CODES;
  }

  @Override
  public void close() {
    device.close();
  }
}
