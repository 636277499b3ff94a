package org.boostwright.pi.io;

import java.io.IOException;
import org.boostwright.core.settings.ScanPlan;

/**
 * ADS1115 on I2C, one-shot conversions at 860 SPS (Texas Instruments, SBAS444, sections 9.3 and
 * 9.6).
 *
 * <p>Configuration word: bit 15 start, 14..12 input against ground (4 + n), 11..9 range, 8
 * one-shot, 7..5 rate 860 SPS, 1..0 comparator off. The rate may be 10 % low: a conversion takes up
 * to 1.29 ms. A result is used only after the chip says that its conversion has ended and that its
 * configuration is the one asked for, so a chip that reset or hangs never passes an old result. It
 * measures against its own reference: a sensor supply that is 2 % high reads 2 % high.
 */
public final class Ads1115 implements Converter {
  /** Lowest of the four addresses; the highest is three more. */
  public static final int FIRST_ADDRESS = 0x48;

  /** Longest conversion: the rate may be 10 % low, ns. */
  private static final long CONVERSION_NANOS = (long) (1e9 / (860.0 * 0.9));

  private static final int CONVERSION = 0;
  private static final int CONFIG = 1;
  private static final int START = 0x8000;
  private static final int ONE_SHOT_860_COMPARATOR_OFF = 0x01E3;
  private static final int CODES = 32768;
  private static final int POLLS = 3;
  private static final long POLL_NANOS = 200_000L;
  private static final double[] RANGES_VOLTS = {6.144, 4.096, 2.048, 1.024, 0.512, 0.256};

  private final I2cDevice device;
  private final Clock clock;
  private final int rangeBits;
  private final double stepVolts;
  private final byte[] command = new byte[3];
  private final byte[] word = new byte[2];

  /**
   * @param rangeVolts full scale: 6.144, 4.096, 2.048, 1.024, 0.512 or 0.256 V
   */
  public Ads1115(I2cDevice device, Clock clock, double rangeVolts) {
    this.device = device;
    this.clock = clock;
    this.rangeBits = rangeBits(rangeVolts);
    this.stepVolts = rangeVolts / CODES;
  }

  private static int rangeBits(double rangeVolts) {
    for (int i = 0; i < RANGES_VOLTS.length; i++) {
      if (RANGES_VOLTS[i] == rangeVolts) {
        return i;
      }
    }
    throw new IllegalArgumentException(
        "an ADS1115 has no range of " + rangeVolts + " V; it has 6.144, 4.096, 2.048 and below");
  }

  /** Configuration word that starts a conversion of an input, 0 to 3. */
  int startWord(int input) {
    if (!(input >= 0 && input <= 3)) {
      throw new IllegalArgumentException("an ADS1115 has inputs 0 to 3, not " + input);
    }
    return START | (4 + input) << 12 | rangeBits << 9 | ONE_SHOT_860_COMPARATOR_OFF;
  }

  @Override
  public void check() throws IOException {
    // There is no identity register: a chip that keeps and ends a conversion as told is one.
    int started = startWord(0);
    start(started);
    clock.sleepUntil(clock.nanoTime() + 2 * CONVERSION_NANOS);
    int config = read(CONFIG);
    if (config != started) {
      throw new IOException(
          String.format(
              "the device does not behave like an ADS1115: configuration 0x%04X was written and"
                  + " 0x%04X read back; check address and part",
              started, config));
    }
  }

  @Override
  public double convert(int input) throws IOException {
    int started = startWord(input);
    start(started);
    clock.sleepUntil(clock.nanoTime() + CONVERSION_NANOS);
    for (int poll = 0; poll < POLLS; poll++) {
      int config = read(CONFIG);
      if (config == started) { // reads as written once the conversion has ended
        return (short) read(CONVERSION) * stepVolts;
      }
      if (config != (started & ~START)) {
        throw new IOException(
            String.format(
                "the ADS1115 lost its configuration: 0x%04X instead of 0x%04X", config, started));
      }
      clock.sleepUntil(clock.nanoTime() + POLL_NANOS);
    }
    throw new IOException("the ADS1115 does not end its conversion");
  }

  private void start(int config) throws IOException {
    command[0] = CONFIG;
    command[1] = (byte) (config >> 8);
    command[2] = (byte) config;
    device.write(command);
  }

  private int read(int register) throws IOException {
    device.readRegister(register, word);
    return (word[0] & 0xFF) << 8 | (word[1] & 0xFF);
  }

  @Override
  public long convertNanos() {
    return ScanPlan.ads1115ConvertNanos(ScanPlan.I2C_HZ);
  }

  @Override
  public double stepVolts() {
    return stepVolts;
  }

  @Override
  public void close() {
    device.close();
  }
}
