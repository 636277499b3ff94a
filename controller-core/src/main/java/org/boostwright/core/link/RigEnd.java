package org.boostwright.core.link;

import org.boostwright.core.Inputs;

/** The rig's end of the link: {@link Inputs} in, bytes out, bytes in, controller frames out. */
public final class RigEnd {
  /** Gets every new controller frame. */
  public interface Listener {
    /**
     * @param frame valid during the call only
     * @param arrivedNanos when it arrived
     * @param tickNanos when the controller's tick began, on this end's clock: by the frame's stamp,
     *     so that a late frame tells the same time as a quick one
     * @param roundTripNanos from sending the frame it echoes to its arrival, without the time the
     *     controller held it; {@link Long#MAX_VALUE} when unknown
     */
    void outputs(OutputsFrame frame, long arrivedNanos, long tickNanos, long roundTripNanos);
  }

  private final Peer peer = new Peer(HelloFrame.RIG);
  private final Sender sender;
  private final StampClock stamps;
  private final InputsFrame in = new InputsFrame();
  private final OutputsFrame out = new OutputsFrame();

  /**
   * @param session any number that differs from the last start's
   * @param settingsDigest first eight bytes of the settings digest; 0 when it has none
   */
  public RigEnd(long nowNanos, int session, long settingsDigest) {
    sender = new Sender(HelloFrame.RIG, session, settingsDigest);
    stamps = new StampClock(nowNanos);
  }

  /** Takes received bytes. */
  public void receive(byte[] bytes, int length, long arrivedNanos, Listener listener) {
    for (int i = 0; i < length; i++) {
      if (peer.take(bytes[i], Frame.OUTPUTS, arrivedNanos)) {
        out.read(peer.decoder());
        long tickNanos = peer.clock().arrived(out.stampMicros, arrivedNanos);
        listener.outputs(out, arrivedNanos, tickNanos, roundTrip(arrivedNanos));
      }
    }
  }

  private long roundTrip(long arrivedNanos) {
    long since = out.echoValid ? sender.sinceSent(out.echo, arrivedNanos) : Long.MAX_VALUE;
    return since == Long.MAX_VALUE ? since : since - 1000L * out.heldMicros;
  }

  /** True when a handshake is due; it then stands in {@link #frame()} and is to be sent. */
  public boolean writeHello(long nowNanos) {
    return sender.writeHello(nowNanos);
  }

  /** Makes the frame of this tick; it then stands in {@link #frame()} and is to be sent. */
  public void write(long nowNanos, Inputs inputs) {
    in.stampMicros = stamps.stampMicros(nowNanos);
    in.echoValid = peer.sequence().started();
    in.echo = peer.sequence().last();
    in.inputs.copyFrom(inputs);
    in.write(sender.writer(), sender.next(nowNanos), stamps);
  }

  /** The frame last made. */
  public FrameWriter frame() {
    return sender.writer();
  }

  /** The other end. */
  public Peer peer() {
    return peer;
  }

  /** Number of the next data frame. */
  public int nextSequence() {
    return sender.sequence() + 1;
  }

  /** Frames sent. */
  public long sent() {
    return sender.sent();
  }
}
