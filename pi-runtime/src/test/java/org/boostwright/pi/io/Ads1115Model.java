package org.boostwright.pi.io;

import java.io.IOException;
import java.util.ArrayList;
import java.util.List;

/**
 * An ADS1115 at the level of bus transfers, written from its data sheet (Texas Instruments,
 * SBAS444): registers, conversion time, one-shot and continuous mode, what it does when it fails.
 * Transfers take their time on the bus.
 */
final class Ads1115Model implements I2cDevice {
  static final int RESET_CONFIG = 0x8583;

  private static final double[] RANGES = {6.144, 4.096, 2.048, 1.024, 0.512, 0.256, 0.256, 0.256};
  private static final double[] RATES = {8, 16, 32, 64, 128, 250, 475, 860};

  private final SteppedClock clock;
  private final double busHz;

  /** Volts at AIN0 to AIN3. */
  final double[] pinVolts = new double[4];

  /** Supply: no code is above it. */
  double supplyVolts = 5.0;

  /** Rate over its nominal value; the data sheet allows 0.9 to 1.1. */
  double rateFactor = 1.0;

  /** Transfers that are not acknowledged from now on. */
  int nacks;

  /** Every transfer hangs until the kernel gives up after a second. */
  boolean hangs;

  /** The conversion register no longer changes. */
  boolean stuckData;

  /** A conversion never ends. */
  boolean stuckBusy;

  /** Another chip: keeps no configuration. */
  boolean wrongPart;

  /** Bytes written, one entry per transfer. */
  final List<byte[]> writes = new ArrayList<>();

  private int config = RESET_CONFIG;
  private int conversion;
  private boolean converting;
  private long readyNanos;
  private int pendingCode;

  Ads1115Model(SteppedClock clock, double busHz) {
    this.clock = clock;
    this.busHz = busHz;
  }

  /** Power dips: everything is as after power-up. */
  void reset() {
    config = RESET_CONFIG;
    conversion = 0;
    converting = false;
  }

  private void transfer(int bytes, int extraClocks) throws IOException {
    if (hangs) {
      clock.advance(1_000_000_000L);
      throw new IOException("transfer timed out");
    }
    if (nacks > 0) {
      nacks--;
      clock.advance((long) (1e9 * 11 / busHz)); // address and missing acknowledge
      throw new IOException("no acknowledge");
    }
    clock.advance((long) (1e9 * (9 * bytes + extraClocks) / busHz));
  }

  @Override
  public void write(byte[] bytes) throws IOException {
    transfer(1 + bytes.length, 2);
    writes.add(bytes.clone());
    if (bytes[0] == 1 && !wrongPart) {
      config = (bytes[1] & 0xFF) << 8 | (bytes[2] & 0xFF);
      if ((config & 0x8000) != 0 && (config & 0x0100) != 0) {
        startConversion();
      }
    }
  }

  private void startConversion() {
    int mux = config >> 12 & 7;
    if (mux < 4) {
      throw new IllegalStateException("the driver asked for a difference: " + mux);
    }
    double range = RANGES[config >> 9 & 7];
    double volts = Math.min(pinVolts[mux - 4], supplyVolts);
    pendingCode = (int) Math.max(-32768, Math.min(32767, Math.round(volts / (range / 32768))));
    double rate = RATES[config >> 5 & 7] * rateFactor;
    readyNanos = clock.nanoTime() + (long) (1e9 / rate);
    converting = true;
  }

  private void update() {
    if (converting && !stuckBusy && clock.nanoTime() - readyNanos >= 0) {
      converting = false;
      conversion = stuckData ? conversion : pendingCode;
    }
  }

  @Override
  public void readRegister(int register, byte[] into) throws IOException {
    transfer(2 + 1 + into.length, 3);
    update();
    int word;
    if (wrongPart) {
      word = 0xFFFF;
    } else if (register == 0) {
      word = conversion;
    } else {
      word = (config & 0x7FFF) | (converting ? 0 : 0x8000);
    }
    into[0] = (byte) (word >> 8);
    into[1] = (byte) word;
  }

  @Override
  public void close() {}
}
