package org.boostwright.rig.replay;

import java.util.List;
import org.boostwright.core.AnalogChannel;
import org.boostwright.core.Inputs;
import org.boostwright.core.settings.AnalogSensor;
import org.boostwright.rig.replay.csv.RecordedLog;
import org.boostwright.rig.replay.csv.SignalTrace;

/**
 * Feeds one recorded channel: each fresh row becomes a sample with the time of the row; until the
 * next one it is held and ages. Faults are spliced in on the way.
 */
final class ChannelFeed {
  private static final double OPEN_VOLTS = 0.0;
  private static final double SENSOR_SUPPLY_VOLTS = 5.0;

  private final AnalogChannel channel;
  private final SignalTrace trace;
  private final RecordedLog log;
  private final InverseCalibration inverse;
  private final List<TraceSplice> splices;
  private final long[] spliced;

  private int row = -1;
  private int nextRow;
  private int endRow;
  private double value;
  private double lastVolts;
  private double frozenVolts;
  private boolean frozen;
  private long clipped;
  private long samples;

  ChannelFeed(
      AnalogChannel channel,
      AnalogSensor sensor,
      SignalTrace trace,
      RecordedLog log,
      List<TraceSplice> splices) {
    this.channel = channel;
    this.trace = trace;
    this.log = log;
    this.inverse = new InverseCalibration(sensor);
    this.splices = splices;
    this.spliced = new long[splices.size()];
  }

  /** Begins a stretch of the log at {@code start}, which ends before {@code end}. */
  void begin(int first, int start, int end) {
    endRow = end;
    nextRow = trace.nextFresh(first);
    row = -1;
    while (nextRow >= 0 && nextRow <= start) {
      take(nextRow);
    }
  }

  private void take(int fresh) {
    row = fresh;
    value = trace.value(fresh);
    samples++;
    clipped += inverse.covers(value) ? 0 : 1;
    nextRow = trace.nextFresh(fresh + 1);
  }

  /** Writes the newest sample at {@code nowNanos} since the first row. */
  void feed(long nowNanos, long tick, Inputs inputs) {
    while (nextRow >= 0 && nextRow < endRow && log.nanos(nextRow) <= nowNanos) {
      take(nextRow);
    }
    boolean freezing = false;
    double volts = row < 0 ? 0.0 : inverse.volts(value);
    long nanos = row < 0 ? 0L : log.nanos(row);
    boolean withheld = row < 0;
    for (int i = 0; i < splices.size(); i++) {
      TraceSplice splice = splices.get(i);
      if (!splice.isActive(nowNanos * 1e-9)) {
        continue;
      }
      double before = volts;
      switch (splice.kind()) {
        case OPEN, SHORT_TO_GROUND -> volts = OPEN_VOLTS;
        case SHORT_TO_SUPPLY -> volts = SENSOR_SUPPLY_VOLTS;
        case NOT_A_NUMBER -> volts = Double.NaN;
        case STUCK -> volts = inverse.volts(splice.amount());
        case OFFSET -> volts = inverse.volts(value + splice.amount());
        case JUMP -> volts = tick % 2 == 0 ? volts : inverse.volts(value + splice.amount());
        case INTERMITTENT -> volts = share(tick) < splice.amount() ? OPEN_VOLTS : volts;
        case FROZEN -> {
          frozenVolts = frozen ? frozenVolts : lastVolts;
          freezing = true;
          volts = frozenVolts;
        }
        case STALE -> withheld = true;
      }
      nanos = splice.kind().everyTick() ? nowNanos : nanos;
      // A fault that changes nothing has not taken effect and must not count as tested.
      spliced[i] += volts != before || splice.kind() == SpliceKind.STALE ? 1 : 0;
    }
    frozen = freezing;
    if (!withheld) {
      inputs.sample(channel, volts, nanos);
      lastVolts = volts;
    }
  }

  /** A share from 0 to 1 that depends on nothing but the tick (SplitMix64, Steele et al. 2014). */
  private static double share(long tick) {
    long z = (tick + 1) * 0x9E3779B97F4A7C15L;
    z = (z ^ (z >>> 30)) * 0xBF58476D1CE4E5B9L;
    z = (z ^ (z >>> 27)) * 0x94D049BB133111EBL;
    z ^= z >>> 31;
    return (z >>> 11) * 0x1.0p-53;
  }

  AnalogChannel channel() {
    return channel;
  }

  /** Samples that lay outside what the sensor can show. */
  long clipped() {
    return clipped;
  }

  /** Samples fed. */
  long samples() {
    return samples;
  }

  /** Ticks in which each splice changed what the controller read, in the order given. */
  long[] splicedTicks() {
    return spliced.clone();
  }

  List<TraceSplice> splices() {
    return splices;
  }
}
