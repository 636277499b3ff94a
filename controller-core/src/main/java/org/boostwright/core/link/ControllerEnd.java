package org.boostwright.core.link;

import org.boostwright.core.Inputs;
import org.boostwright.core.Outputs;
import org.jspecify.annotations.Nullable;

/**
 * The controller's end of the link: bytes in, {@link Inputs} out, {@link Outputs} in, bytes out.
 *
 * <p>How old a rig frame is has two answers and both must be good. The other end's clock, placed by
 * {@link PeerClock}, times every sample, and the core's own watch on old samples does the rest. And
 * the rig echoes the number of the newest controller frame it had: it cannot have sent its frame
 * before it received that one, so the time since that one was sent is an upper bound of the age
 * that no clock can spoil. A frame beyond {@link #OLDEST_NANOS} by that bound is not used.
 */
public final class ControllerEnd {
  /** Oldest rig frame that is used, ns. */
  public static final long OLDEST_NANOS = 40_000_000L;

  private final Peer peer = new Peer(HelloFrame.CONTROLLER);
  private final Sender sender;
  private final StampClock stamps;
  private final OutputsFrame out = new OutputsFrame();
  private InputsFrame newest = new InputsFrame();
  private InputsFrame spare = new InputsFrame();
  private boolean hasNewest;
  private long arrivedNanos;
  private long tooOld;
  private long roundTripNanos = Long.MAX_VALUE;

  /**
   * @param session any number that differs from the last start's
   * @param settingsDigest first eight bytes of the settings digest
   */
  public ControllerEnd(long nowNanos, int session, long settingsDigest) {
    sender = new Sender(HelloFrame.CONTROLLER, session, settingsDigest);
    stamps = new StampClock(nowNanos);
  }

  /** Takes received bytes. */
  public void receive(byte[] bytes, int length, long nowNanos) {
    for (int i = 0; i < length; i++) {
      long sessionsBefore = peer.sessions();
      if (peer.take(bytes[i], Frame.INPUTS, nowNanos)) {
        take(nowNanos);
      }
      if (peer.sessions() != sessionsBefore) {
        hasNewest = false;
      }
    }
  }

  private void take(long nowNanos) {
    spare.read(peer.decoder());
    peer.clock().arrived(spare.stampMicros, nowNanos);
    @Nullable InputsFrame before = hasNewest ? newest : null;
    spare.place(peer.clock(), before);
    InputsFrame swap = newest;
    newest = spare;
    spare = swap;
    hasNewest = true;
    arrivedNanos = nowNanos;
  }

  /**
   * Writes the newest frame's values, or leaves {@code inputs} as they are when it must not be
   * used; they then age, and the core rests.
   *
   * @return true when the newest frame was used
   */
  public boolean read(long nowNanos, Inputs inputs) {
    if (!hasNewest || peer.state() != Peer.State.AGREED) {
      return false;
    }
    roundTripNanos = newest.echoValid ? sender.sinceSent(newest.echo, nowNanos) : Long.MAX_VALUE;
    if (!(roundTripNanos >= 0 && roundTripNanos <= OLDEST_NANOS)) {
      tooOld++;
      return false;
    }
    boolean bench = inputs.benchRequest;
    double benchDuty = inputs.benchDutyFraction;
    boolean wrong = inputs.outputsWrong;
    inputs.copyFrom(newest.inputs);
    inputs.benchRequest = bench;
    inputs.benchDutyFraction = benchDuty;
    inputs.outputsWrong = wrong;
    return true;
  }

  /** True when a handshake is due; it then stands in {@link #frame()} and is to be sent. */
  public boolean writeHello(long nowNanos) {
    return sender.writeHello(nowNanos);
  }

  /**
   * Makes the frame of this tick; it then stands in {@link #frame()} and is to be sent.
   *
   * @param heartbeatLevel level of the heartbeat wire; every change is an edge
   */
  public void write(
      long nowNanos, Outputs outputs, double pwmHz, boolean heartbeatLevel, boolean lamp) {
    out.stampMicros = stamps.stampMicros(nowNanos);
    out.echoValid = hasNewest;
    out.echo = peer.sequence().last();
    out.heldMicros = hasNewest ? (int) ((nowNanos - arrivedNanos) / 1000L) : 0;
    out.pwmHz = pwmHz;
    out.heartbeatLevel = heartbeatLevel;
    out.lamp = lamp;
    out.write(sender.writer(), sender.next(nowNanos), outputs);
  }

  /** The frame last made. */
  public FrameWriter frame() {
    return sender.writer();
  }

  /** The other end. */
  public Peer peer() {
    return peer;
  }

  /** Ticks that found the newest frame too old to use. */
  public long tooOld() {
    return tooOld;
  }

  /** Upper bound of the newest frame's age when last read, ns. */
  public long roundTripNanos() {
    return roundTripNanos;
  }

  /** Frames sent. */
  public long sent() {
    return sender.sent();
  }
}
