package org.boostwright.core.settings;

import org.boostwright.core.AnalogChannel;

/**
 * Which channels are converted in which pass of 5 ms: pressure in every pass, then as many others
 * as a pass has time for, in turn. Where they have to share, throttle and pedal come before each of
 * the slow ones.
 *
 * <p>An ADS1115 at 860 SPS less 10 % (Texas Instruments, SBAS444) makes 774 conversions a second;
 * its four inputs at 200 Hz would need 800, without a single transfer. So it gets two conversions a
 * pass: pressure and one other. An MCP3208 converts during its transfer of 24 bits and gets all.
 */
public final class ScanPlan {
  /** Time between passes, ns: one tick. */
  public static final long PASS_NANOS = 5_000_000L;

  /** Time of a pass that may be spent converting; the rest is slack, ns. */
  public static final long BUDGET_NANOS = 4_000_000L;

  /** Clock of the I2C bus an ADS1115 needs, Hz. */
  public static final int I2C_HZ = 400_000;

  /** Clock of the SPI bus, Hz; an MCP3208 allows 1 MHz at 2.7 V (Microchip, DS21298). */
  public static final int SPI_HZ = 1_000_000;

  /** Slowest rate of an ADS1115 set to 860 SPS, 1/s. */
  private static final double ADS1115_SLOWEST_PER_SECOND = 860.0 * 0.9;

  private final long convertNanos;
  private final int[] inputs;
  private final int[] others;
  private final int othersPerPass;

  private ScanPlan(ConverterSettings settings, long convertNanos) {
    this.convertNanos = convertNanos;
    inputs = settings.inputs();
    int fast = count(true);
    int slow = count(false);
    int fits = (int) (BUDGET_NANOS / convertNanos) - 1;
    othersPerPass = Math.max(0, Math.min(fits, fast + slow));
    others = fits >= fast + slow ? listed(fast + slow) : inTurn(fast, slow);
  }

  /** The plan for a converter on a bus of the clock it needs. */
  public static ScanPlan of(ConverterSettings settings) {
    return new ScanPlan(
        settings,
        settings.kind() == ConverterSettings.Kind.ADS1115
            ? ads1115ConvertNanos(I2C_HZ)
            : (long) (24 * 1e9 / SPI_HZ));
  }

  /**
   * Longest time of one conversion of an ADS1115 on a bus of some clock, transfers included, ns.
   */
  public static long ads1115ConvertNanos(int busHz) {
    // Nine clocks per byte, and start, repeated start and stop. One transfer starts it, one asks
    // whether it has ended, one fetches it.
    int start = 9 * 4 + 2;
    int readRegister = 9 * 2 + 1 + 9 * 3 + 2;
    return (long) (1e9 / ADS1115_SLOWEST_PER_SECOND + 1e9 * (start + 2.0 * readRegister) / busHz);
  }

  private static boolean isFast(AnalogChannel channel) {
    return channel == AnalogChannel.THROTTLE || channel == AnalogChannel.PEDAL;
  }

  private boolean isOther(AnalogChannel channel, boolean fast) {
    return channel != AnalogChannel.MAP
        && inputs[channel.ordinal()] != ConverterSettings.NOT_WIRED
        && isFast(channel) == fast;
  }

  private int count(boolean fast) {
    int count = 0;
    for (AnalogChannel channel : AnalogChannel.values()) {
      count += isOther(channel, fast) ? 1 : 0;
    }
    return count;
  }

  private int[] listed(int count) {
    int[] order = new int[count];
    int at = 0;
    for (AnalogChannel channel : AnalogChannel.values()) {
      if (isOther(channel, true) || isOther(channel, false)) {
        order[at++] = channel.ordinal();
      }
    }
    return order;
  }

  private int[] inTurn(int fast, int slow) {
    if (slow == 0) {
      return listed(fast);
    }
    int[] order = new int[slow * (fast + 1)];
    int at = 0;
    for (AnalogChannel slowOne : AnalogChannel.values()) {
      if (!isOther(slowOne, false)) {
        continue;
      }
      for (AnalogChannel fastOne : AnalogChannel.values()) {
        if (isOther(fastOne, true)) {
          order[at++] = fastOne.ordinal();
        }
      }
      order[at++] = slowOne.ordinal();
    }
    return order;
  }

  /** Conversions in one pass. */
  public int conversionsPerPass() {
    return 1 + othersPerPass;
  }

  /** Longest time of one conversion, transfers included, ns. */
  public long convertNanos() {
    return convertNanos;
  }

  /** Longest time of a pass in which every conversion succeeds at once, ns. */
  public long passNanos() {
    return conversionsPerPass() * convertNanos;
  }

  /** Number of conversions after which the order of the others repeats. */
  public int turnLength() {
    return others.length;
  }

  /** Ordinal of the channel that is the {@code n}-th of the others since start. */
  public int other(int n) {
    return others[n % others.length];
  }

  /** Input of the chip for a channel's ordinal. */
  public int input(int channel) {
    return inputs[channel];
  }

  /** Longest time between two samples of a channel, ms; infinite when it never comes up. */
  public double periodMillis(AnalogChannel channel) {
    double passMillis = PASS_NANOS * 1e-6;
    if (channel == AnalogChannel.MAP) {
      return passMillis;
    }
    int first = -1;
    int last = -1;
    int gap = 0;
    for (int i = 0; i < others.length; i++) {
      if (others[i] == channel.ordinal()) {
        gap = last < 0 ? gap : Math.max(gap, i - last);
        first = first < 0 ? i : first;
        last = i;
      }
    }
    if (first < 0 || othersPerPass == 0) {
      return Double.POSITIVE_INFINITY;
    }
    gap = Math.max(gap, first + others.length - last);
    return passMillis * ((gap + othersPerPass - 1) / othersPerPass);
  }
}
