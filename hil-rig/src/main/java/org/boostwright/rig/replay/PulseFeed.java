package org.boostwright.rig.replay;

import org.boostwright.core.Controller;
import org.boostwright.rig.replay.csv.RecordedLog;
import org.boostwright.rig.replay.csv.SignalTrace;
import org.jspecify.annotations.Nullable;

/**
 * Turns a recorded speed into pulses.
 *
 * <p>Pulses come many times between two rows, so a speed has to be assumed there: it runs straight
 * from one fresh value to the next, because neither an engine nor a car changes speed in steps. The
 * phase is the integral of the speed, so every pulse has its exact time within the tick.
 */
final class PulseFeed {
  private static final double TICK_SECONDS = Controller.TICK_NANOS * 1e-9;

  private final @Nullable SignalTrace trace;
  private final RecordedLog log;
  private final double pulsesPerSecondPerUnit;

  private int row;
  private int nextRow;
  private int endRow;
  private double phase;
  private double lastRate;
  private boolean seen;
  private long pulseNanos;
  private double periodNanos;

  /**
   * @param trace recorded speed; null feeds no pulse ever
   * @param pulsesPerSecondPerUnit pulse rate of one unit of speed, 1/s
   */
  PulseFeed(@Nullable SignalTrace trace, RecordedLog log, double pulsesPerSecondPerUnit) {
    this.trace = pulsesPerSecondPerUnit > 0.0 ? trace : null;
    this.log = log;
    this.pulsesPerSecondPerUnit = pulsesPerSecondPerUnit;
  }

  /** Begins a stretch of the log at {@code start}, which ends before {@code end}. */
  void begin(int first, int start, int end, boolean forget) {
    if (trace == null) {
      return;
    }
    endRow = end;
    row = -1;
    nextRow = trace.nextFresh(first);
    lastRate = 0.0;
    if (forget) {
      phase = 0.0;
      seen = false;
      pulseNanos = 0L;
      periodNanos = 0.0;
    }
    advance(log.nanos(start));
  }

  /** Runs one tick up to {@code nowNanos} since the first row. */
  void feed(long nowNanos) {
    if (trace == null) {
      return;
    }
    advance(nowNanos);
    double rate = rateAt(nowNanos);
    double mean = 0.5 * (lastRate + rate);
    lastRate = rate;
    phase += mean * TICK_SECONDS;
    if (phase >= 1.0) {
      phase -= Math.floor(phase);
      pulseNanos = nowNanos - Math.round(phase / mean * 1e9);
      periodNanos = 1e9 / mean;
      seen = true;
    }
  }

  private void advance(long nowNanos) {
    SignalTrace speed = trace;
    while (speed != null && nextRow >= 0 && nextRow < endRow && log.nanos(nextRow) <= nowNanos) {
      row = nextRow;
      nextRow = speed.nextFresh(row + 1);
    }
  }

  private double rateAt(long nowNanos) {
    SignalTrace speed = trace;
    if (speed == null || row < 0) {
      return 0.0;
    }
    double here = speed.value(row);
    if (nextRow >= 0 && nextRow < endRow) {
      double f =
          (double) (nowNanos - log.nanos(row)) / (double) (log.nanos(nextRow) - log.nanos(row));
      here += f * (speed.value(nextRow) - here);
    }
    return here * pulsesPerSecondPerUnit;
  }

  /** Ends the pulses: the logger paused and nothing is known. */
  void silence() {
    row = -1;
    nextRow = -1;
  }

  boolean seen() {
    return seen;
  }

  long pulseNanos() {
    return pulseNanos;
  }

  double periodNanos() {
    return periodNanos;
  }
}
