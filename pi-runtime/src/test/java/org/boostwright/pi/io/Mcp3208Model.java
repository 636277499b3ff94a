package org.boostwright.pi.io;

/** An MCP3208 at the level of SPI bits, written from its data sheet (Microchip DS21298). */
final class Mcp3208Model implements SpiDevice {
  /** Volts at CH0 to CH7. */
  final double[] pinVolts = new double[8];

  double referenceVolts = 5.0;

  /** Level of the data line when no chip drives it; null while the chip is there. */
  Boolean openLine;

  byte[] lastOut = new byte[0];

  @Override
  public void transfer(byte[] out, byte[] in) {
    lastOut = out.clone();
    if (openLine != null) {
      java.util.Arrays.fill(in, (byte) (openLine ? 0xFF : 0));
      return;
    }
    int bits = (out[0] & 0xFF) << 16 | (out[1] & 0xFF) << 8 | (out[2] & 0xFF);
    // Leading zeros, start bit, single-ended, three address bits; then sampling, null bit, code.
    int start = 23;
    while (start >= 0 && (bits >> start & 1) == 0) {
      start--;
    }
    boolean single = (bits >> (start - 1) & 1) != 0;
    if (!single) {
      throw new IllegalStateException("the driver asked for a difference");
    }
    int channel = bits >> (start - 4) & 7;
    int code = (int) Math.floor(4096.0 * pinVolts[channel] / referenceVolts);
    code = Math.max(0, Math.min(4095, code));
    int nullAt = start - 6;
    int answer = code << (nullAt - 12);
    // Before the null bit the data line floats; here high.
    answer |= ~0 << (nullAt + 1) & 0xFFFFFF;
    in[0] = (byte) (answer >> 16);
    in[1] = (byte) (answer >> 8);
    in[2] = (byte) answer;
  }

  @Override
  public void close() {}
}
