package org.boostwright.rig.link;

import org.HdrHistogram.Histogram;
import org.boostwright.core.Outputs;
import org.boostwright.core.link.OutputsFrame;
import org.boostwright.core.link.RigEnd;

/** Watches the controller at the wire: every frame, its timing, and what must hold in each. */
public final class WireObserver implements RigEnd.Listener {
  private static final long LONGEST_MICROS = 10_000_000L;

  private final Histogram roundTripMicros = new Histogram(1L, LONGEST_MICROS, 3);
  private final Histogram tickMicros = new Histogram(1L, LONGEST_MICROS, 3);
  private final HeartbeatGate gate = new HeartbeatGate();
  private final Outputs last = new Outputs();

  private long frames;
  private long broken;
  private boolean stampSeen;
  private int lastStamp;
  private long lastArrivedNanos;
  private double pwmHz;
  private boolean lamp;
  private long faultsSeen;
  private boolean armed;
  private long restNanos;
  private boolean rested;
  private double highestDuty;
  private long longestRoundTripNanos;

  @Override
  public void outputs(OutputsFrame frame, long arrivedNanos, long roundTripNanos) {
    frames++;
    lastArrivedNanos = arrivedNanos;
    Outputs out = frame.outputs;
    if (stampSeen) {
      record(tickMicros, frame.stampMicros - lastStamp);
    }
    stampSeen = true;
    lastStamp = frame.stampMicros;
    if (roundTripNanos != Long.MAX_VALUE) {
      record(roundTripMicros, roundTripNanos / 1000L);
      longestRoundTripNanos = Math.max(longestRoundTripNanos, roundTripNanos);
    }
    gate.level(frame.heartbeatLevel, arrivedNanos);
    keep(frame);
    boolean restingState = out.state.isRest();
    boolean off = out.dutyFraction == 0.0 && !out.pwmEnabled && !out.coilSupplyClosed;
    boolean possible = out.dutyFraction >= 0.0 && out.dutyFraction <= 1.0;
    if (!possible || (restingState && !off)) {
      broken++;
    }
    faultsSeen |= out.activeFaults;
    highestDuty = Math.max(highestDuty, out.dutyFraction);
    if (armed && !rested && restingState && off) {
      rested = true;
      restNanos = arrivedNanos;
    }
  }

  private static void record(Histogram histogram, long micros) {
    histogram.recordValue(micros < 0L ? 0L : Math.min(micros, LONGEST_MICROS));
  }

  private void keep(OutputsFrame frame) {
    Outputs out = frame.outputs;
    last.dutyFraction = out.dutyFraction;
    last.pwmEnabled = out.pwmEnabled;
    last.coilSupplyClosed = out.coilSupplyClosed;
    last.engineCutRequest = out.engineCutRequest;
    last.heartbeatPermitted = out.heartbeatPermitted;
    last.state = out.state;
    last.waiting = out.waiting;
    last.activeFaults = out.activeFaults;
    last.findings = out.findings;
    last.mapKpaAbs = out.mapKpaAbs;
    last.targetKpaAbs = out.targetKpaAbs;
    last.ambientKpaAbs = out.ambientKpaAbs;
    last.lateTicks = out.lateTicks;
    pwmHz = frame.pwmHz;
    lamp = frame.lamp;
  }

  /** Begins to wait for rest, and forgets faults, highest duty and longest round trip. */
  public void arm() {
    armed = true;
    rested = false;
    faultsSeen = 0L;
    highestDuty = 0.0;
    longestRoundTripNanos = 0L;
  }

  /** Forgets all timing so far: cold programs are slow. */
  public void clearTiming() {
    roundTripMicros.reset();
    tickMicros.reset();
    stampSeen = false;
  }

  /** The controller is another process now: its stamps start anew. */
  public void forgetStamps() {
    stampSeen = false;
  }

  /** True when a frame at rest has arrived since {@link #arm}. */
  public boolean rested() {
    return rested;
  }

  /** When the first frame at rest arrived since {@link #arm}, ns. */
  public long restNanos() {
    return restNanos;
  }

  /** Faults reported since {@link #arm}, as bits. */
  public long faultsSeen() {
    return faultsSeen;
  }

  /** Highest duty since {@link #arm}, 0 to 1. */
  public double highestDuty() {
    return highestDuty;
  }

  /** Longest round trip since {@link #arm}, without the time the controller held a frame, ns. */
  public long longestRoundTripNanos() {
    return longestRoundTripNanos;
  }

  /** Newest outputs, as far as they travel. */
  public Outputs last() {
    return last;
  }

  /** PWM frequency in the newest frame, Hz. */
  public double pwmHz() {
    return pwmHz;
  }

  /** Lamp in the newest frame. */
  public boolean lamp() {
    return lamp;
  }

  /** When the newest frame arrived, ns; meaningless before the first. */
  public long lastArrivedNanos() {
    return lastArrivedNanos;
  }

  /** The coil supply's heartbeat gate. */
  public HeartbeatGate gate() {
    return gate;
  }

  /** Frames so far. */
  public long frames() {
    return frames;
  }

  /** Frames whose duty was no share, or above 0 in a rest state. */
  public long broken() {
    return broken;
  }

  /** Round trips without the time the controller held a frame, us. */
  public Histogram roundTripMicros() {
    return roundTripMicros;
  }

  /** Time from tick to tick by the controller's own stamps, us. */
  public Histogram tickMicros() {
    return tickMicros;
  }
}
