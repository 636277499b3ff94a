package org.boostwright.pi.link;

import org.boostwright.core.Inputs;
import org.boostwright.core.Outputs;
import org.boostwright.core.link.ChunkQueue;
import org.boostwright.core.link.ControllerEnd;
import org.boostwright.core.link.Peer;
import org.boostwright.pi.io.CarIo;

/**
 * A car behind the serial link: the rig reads the commands and answers what the wires say.
 *
 * <p>The commands go out at the end of each tick in one frame, the heartbeat as a level that
 * changes. What the rig did with them cannot be read back, so {@link #apply} is true as long as
 * frames of it arrive.
 */
public final class LinkIo implements CarIo {
  /** Few, so that a rig that stopped reading finds no old frames when it comes back. */
  public static final int OUTGOING_FRAMES = 4;

  private static final long SILENT_NANOS = 100_000_000L;

  private final SerialLine line;
  private final ControllerEnd end;
  private final Outputs resting = new Outputs();
  private double pwmHz;
  private boolean level;
  private volatile boolean closed;

  /**
   * @param session any number that differs from the last start's
   * @param settingsDigest first eight bytes of the settings digest
   */
  public LinkIo(SerialLine line, long nowNanos, int session, long settingsDigest, double pwmHz) {
    this.line = line;
    this.pwmHz = pwmHz;
    end = new ControllerEnd(nowNanos, session, settingsDigest);
  }

  /** The protocol's end, for its counters. */
  public ControllerEnd end() {
    return end;
  }

  @Override
  public void read(long nowNanos, Inputs inputs) {
    ChunkQueue incoming = line.line().incoming();
    while (!incoming.isEmpty()) {
      end.receive(incoming.bytes(), incoming.length(), incoming.nanos());
      incoming.remove();
    }
    if (!end.read(nowNanos, inputs)) {
      // An old "energised" after the coil was let go would look like a driver that is stuck on.
      inputs.coilEnergised = false;
    }
  }

  @Override
  public boolean apply(long nowNanos, Outputs outputs) {
    return !outputs.coilSupplyClosed || end.peer().silenceNanos(nowNanos) <= SILENT_NANOS;
  }

  @Override
  public void endTick(long nowNanos, Outputs outputs, boolean beat, boolean lamp) {
    level ^= beat;
    if (end.writeHello(nowNanos)) {
      line.send(end.frame().wire(), end.frame().wireLength());
    }
    if (end.peer().present(nowNanos)) {
      end.write(nowNanos, closed ? resting : outputs, pwmHz, level, lamp);
      line.send(end.frame().wire(), end.frame().wireLength());
    }
  }

  @Override
  public boolean setPwmHz(double hz) {
    pwmHz = hz;
    return true;
  }

  /** The next frame is at rest, whatever the tick says. */
  @Override
  public void rest() {
    // The tick's own outputs are at rest when this is called from it; from outside, close follows.
  }

  @Override
  public String health() {
    Peer peer = end.peer();
    String trouble = line.line().trouble();
    StringBuilder words = new StringBuilder("link ");
    switch (peer.state()) {
      case AGREED -> words.append("up");
      case SILENT -> words.append("waiting for the rig");
      case SAME_ROLE -> words.append("refused: another controller is at the other end");
      case OTHER_PROTOCOL ->
          words.append("refused: the other end speaks protocol ").append(peer.protocol());
    }
    words.append(", missed ").append(peer.sequence().missed());
    words.append(", dropped ").append(peer.decoder().rejected());
    words.append(", not new ").append(peer.sequence().notNew());
    words.append(", too old ").append(end.tooOld());
    words.append(", unsent ").append(line.line().unsent());
    return trouble.isEmpty() ? words.toString() : words + ", " + trouble;
  }

  @Override
  public void close() {
    closed = true;
    line.close();
  }
}
