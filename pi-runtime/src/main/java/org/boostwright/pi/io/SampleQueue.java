package org.boostwright.pi.io;

import org.boostwright.core.AnalogChannel;
import org.boostwright.core.Inputs;

/**
 * Samples handed from the thread that reads the converter to the tick thread, without a lock.
 *
 * <p>The reading thread calls {@link #put}, the tick thread {@link #drain}. A full queue refuses:
 * the tick has then been away so long that the samples are of no use.
 */
@SuppressWarnings("NonAtomicVolatileUpdate") // every counter has exactly one writing thread
final class SampleQueue {
  private static final int SIZE = 64;

  private final int[] channels = new int[SIZE];
  private final double[] volts = new double[SIZE];
  private final long[] nanos = new long[SIZE];
  private final boolean[] answered = new boolean[SIZE];
  private volatile int puts;
  private volatile int takes;

  void put(int channel, boolean good, double channelVolts, long atNanos) {
    int at = puts;
    if (at - takes >= SIZE) {
      return;
    }
    int slot = at & (SIZE - 1);
    channels[slot] = channel;
    volts[slot] = channelVolts;
    nanos[slot] = atNanos;
    answered[slot] = good;
    puts = at + 1;
  }

  /** Writes everything that came; the newest of each channel stays. */
  void drain(Inputs inputs) {
    int end = puts;
    for (int at = takes; at != end; at++) {
      int slot = at & (SIZE - 1);
      int channel = channels[slot];
      if (answered[slot]) {
        inputs.sample(CHANNELS[channel], volts[slot], nanos[slot]);
      } else {
        inputs.answered[channel] = false;
      }
    }
    takes = end;
  }

  private static final AnalogChannel[] CHANNELS = AnalogChannel.values();
}
