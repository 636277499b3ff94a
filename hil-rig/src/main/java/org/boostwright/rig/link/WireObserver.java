package org.boostwright.rig.link;

import org.HdrHistogram.Histogram;
import org.boostwright.core.Outputs;
import org.boostwright.core.link.OutputsFrame;
import org.boostwright.core.link.RigEnd;

/**
 * Watches the controller at the wire: every frame, its timing, and what must hold in each.
 *
 * <p>Reactions are timed by what the frames say of themselves: the stamp of their tick, and when
 * the controller had received the rig frame it echoes. A cable that is late by itself then neither
 * adds to a reaction nor hides one; how late it was is told apart.
 */
public final class WireObserver implements RigEnd.Listener {
  private static final long LONGEST_MICROS = 10_000_000L;

  private final Histogram roundTripMicros = new Histogram(1L, LONGEST_MICROS, 3);
  private final Histogram tickMicros = new Histogram(1L, LONGEST_MICROS, 3);
  private final HeartbeatGate gate = new HeartbeatGate();
  private final HeartbeatGate stampedGate = new HeartbeatGate();
  private final Outputs last = new Outputs();

  private long frames;
  private long broken;
  private boolean stampSeen;
  private int lastStamp;
  private int lastEcho;
  private boolean stampRolled;
  private boolean echoRolled;
  private long lastArrivedNanos;
  private long lastTickNanos;
  private double pwmHz;
  private boolean lamp;
  private long faultsSeen;
  private boolean armed;
  private long restNanos;
  private boolean rested;
  private double highestDuty;
  private boolean everReady;
  private int faultSequence;
  private boolean faultReceived;
  private long faultReceivedNanos;
  private long soundReceivedNanos;
  private long longestOutNanos;
  private long longestHeldNanos;
  private int lateInARow;
  private int mostLateInARow;

  @Override
  public void outputs(OutputsFrame frame, long arrivedNanos, long tickNanos, long roundTripNanos) {
    frames++;
    lastArrivedNanos = arrivedNanos;
    lastTickNanos = tickNanos;
    Outputs out = frame.outputs;
    if (stampSeen) {
      record(tickMicros, frame.stampMicros - lastStamp);
    }
    stampRolled |= lastStamp < 0 && frame.stampMicros >= 0;
    stampSeen = true;
    lastStamp = frame.stampMicros;
    if (roundTripNanos != Long.MAX_VALUE) {
      record(roundTripMicros, roundTripNanos / 1000L);
    }
    longestOutNanos = Math.max(longestOutNanos, arrivedNanos - tickNanos);
    if (frame.echoValid) {
      received(frame, tickNanos);
    }
    gate.level(frame.heartbeatLevel, arrivedNanos);
    stampedGate.level(frame.heartbeatLevel, tickNanos);
    keep(frame);
    boolean restingState = out.state.isRest();
    boolean off = out.dutyFraction == 0.0 && !out.pwmEnabled && !out.coilSupplyClosed;
    boolean possible = out.dutyFraction >= 0.0 && out.dutyFraction <= 1.0;
    if (!possible || (restingState && !off)) {
      broken++;
    }
    faultsSeen |= out.activeFaults;
    everReady |= !restingState;
    highestDuty = Math.max(highestDuty, out.dutyFraction);
    if (armed && !rested && restingState && off) {
      rested = true;
      restNanos = tickNanos;
    }
  }

  /** What the frame says of the newest rig frame its tick had. */
  private void received(OutputsFrame frame, long tickNanos) {
    long heldNanos = 1000L * frame.heldMicros;
    longestHeldNanos = Math.max(longestHeldNanos, heldNanos);
    echoRolled |= lastEcho < 0 && frame.echo >= 0;
    lastEcho = frame.echo;
    if (frame.echo - faultSequence < 0) {
      soundReceivedNanos = tickNanos - heldNanos;
    } else if (!faultReceived) {
      faultReceived = true;
      faultReceivedNanos = tickNanos - heldNanos;
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
    lateInARow = out.lateTicks > last.lateTicks ? lateInARow + 1 : 0;
    mostLateInARow = Math.max(mostLateInARow, lateInARow);
    last.lateTicks = out.lateTicks;
    pwmHz = frame.pwmHz;
    lamp = frame.lamp;
  }

  /**
   * Begins to wait for rest, and forgets faults, highest duty and lateness.
   *
   * @param sequence number of the first rig frame that shows the fault
   */
  public void arm(int sequence) {
    armed = true;
    faultSequence = sequence;
    faultReceived = false;
    rested = false;
    faultsSeen = 0L;
    highestDuty = 0.0;
    everReady = false;
    longestOutNanos = 0L;
    longestHeldNanos = 0L;
    lateInARow = 0;
    mostLateInARow = 0;
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

  /** The first tick at rest since {@link #arm}, ns. */
  public long restNanos() {
    return restNanos;
  }

  /** Most late ticks one after the other since {@link #arm}. */
  public int mostLateInARow() {
    return mostLateInARow;
  }

  /** Faults reported since {@link #arm}, as bits. */
  public long faultsSeen() {
    return faultsSeen;
  }

  /** True when any frame since {@link #arm} was not at rest. */
  public boolean everReady() {
    return everReady;
  }

  /** True once the stamps of the controller and the numbers of the rig's frames rolled over. */
  public boolean rolledOver() {
    return stampRolled && echoRolled;
  }

  /** Highest duty since {@link #arm}, 0 to 1. */
  public double highestDuty() {
    return highestDuty;
  }

  /** True once the controller has the first frame that shows the fault. */
  public boolean faultReceived() {
    return faultReceived;
  }

  /** When the controller received the first frame that shows the fault, ns. */
  public long faultReceivedNanos() {
    return faultReceivedNanos;
  }

  /** When the controller received the last frame before the fault, ns. */
  public long soundReceivedNanos() {
    return soundReceivedNanos;
  }

  /** Longest way of a controller frame beyond the quickest since {@link #arm}, ns. */
  public long longestOutNanos() {
    return longestOutNanos;
  }

  /** Longest time a tick had to do with the same rig frame since {@link #arm}, ns. */
  public long longestHeldNanos() {
    return longestHeldNanos;
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

  /** The newest tick that was heard of, ns. */
  public long lastTickNanos() {
    return lastTickNanos;
  }

  /** The coil supply's heartbeat gate, as edges arrive. */
  public HeartbeatGate gate() {
    return gate;
  }

  /** The same by the ticks that gave the edges: what a wire without a delay would show. */
  public HeartbeatGate stampedGate() {
    return stampedGate;
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
