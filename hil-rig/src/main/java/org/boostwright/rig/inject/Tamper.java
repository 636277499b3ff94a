package org.boostwright.rig.inject;

import java.util.Arrays;
import java.util.function.Consumer;
import org.boostwright.core.AnalogChannel;
import org.boostwright.core.Inputs;

/**
 * What is wrong with the inputs between converter and controller: values no converter gives, jumps,
 * delays, broken pulse times, switches, read-back.
 *
 * <p>A plain holder: write any field at any moment. A new holder passes everything on unchanged.
 */
public final class Tamper implements Consumer<Inputs> {
  private static final int DEEPEST = 64;

  /** Volts delivered instead of the converter's, where {@link #replaced}. */
  public final double[] volts = new double[AnalogChannel.COUNT];

  /** Channels whose volts are replaced. */
  public final boolean[] replaced = new boolean[AnalogChannel.COUNT];

  /** Added to every {@link #spikeEvery}-th pressure sample, V. */
  public double spikeVolts;

  /** See {@link #spikeVolts}; 0 = no spikes. */
  public int spikeEvery;

  /** Only the next pressure sample is spiked. */
  public boolean spikeOnce;

  /** Pressure samples come this many ticks late, with their own time; 0 = in time. */
  public int lateTicks;

  /** Pulse period delivered instead of the measured one, ns, where {@link #periodReplaced}. */
  public double periodNanos;

  /** Both speeds get {@link #periodNanos}. */
  public boolean periodReplaced;

  /** The permit contact is open. */
  public boolean permitOpen;

  /** The outputs do not read back as commanded. */
  public boolean outputsWrong;

  private final double[] heldVolts = new double[DEEPEST];
  private final long[] heldNanos = new long[DEEPEST];
  private int held;
  private int samples;

  /** Passes everything on. */
  public Tamper() {
    Arrays.fill(volts, Double.NaN);
  }

  @Override
  public void accept(Inputs in) {
    int map = AnalogChannel.MAP.ordinal();
    delay(in, map);
    for (int i = 0; i < volts.length; i++) {
      if (replaced[i]) {
        in.volts[i] = volts[i];
      }
    }
    if (spikeOnce || spikeEvery > 0 && samples++ % spikeEvery == 0) {
      in.volts[map] += spikeVolts;
      spikeOnce = false;
    }
    if (periodReplaced) {
      in.enginePeriodNanos = periodNanos;
      in.roadPeriodNanos = periodNanos;
    }
    in.permit &= !permitOpen;
    in.outputsWrong = outputsWrong;
  }

  private void delay(Inputs in, int map) {
    int slot = held++ & (DEEPEST - 1);
    heldVolts[slot] = in.volts[map];
    heldNanos[slot] = in.sampleNanos[map];
    if (lateTicks > 0) {
      int old = (held - 1 - Math.min(lateTicks, held - 1)) & (DEEPEST - 1);
      in.volts[map] = heldVolts[old];
      in.sampleNanos[map] = heldNanos[old];
    }
  }
}
