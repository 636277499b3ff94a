package org.boostwright.rig.link;

import org.boostwright.core.Inputs;
import org.boostwright.core.link.ChunkQueue;
import org.boostwright.core.link.Peer;
import org.boostwright.core.link.RigEnd;

/** The wires as frames on a serial line (docs/link.md), with whatever goes wrong on it. */
public final class SerialWires implements ControllerWires {
  /** Enough for a block of frames in reverse order. */
  private static final int OUTGOING_FRAMES = 32;

  private final SerialLine line;
  private final RigEnd end;
  private final LineFaults faults;

  /**
   * Opens the port, now or as soon as it is there.
   *
   * @param settingsDigest first eight bytes of the digest of the settings the rig assumes
   * @param seed seed of what goes wrong
   */
  public SerialWires(String port, int baud, long settingsDigest, long seed) {
    line = new SerialLine(port, baud, OUTGOING_FRAMES);
    long now = System.nanoTime();
    int session = (int) (now ^ ProcessHandle.current().pid() << 20);
    end = new RigEnd(now, session, settingsDigest);
    faults = new LineFaults(seed, line::send);
    line.start();
  }

  @Override
  public void put(long nowNanos, Inputs inputs) {
    if (end.writeHello(nowNanos)) {
      faults.send(end.frame().wire(), end.frame().wireLength(), nowNanos);
    }
    if (end.peer().present(nowNanos)) {
      end.write(nowNanos, inputs);
      faults.send(end.frame().wire(), end.frame().wireLength(), nowNanos);
    }
  }

  @Override
  public void poll(long nowNanos, RigEnd.Listener listener) {
    ChunkQueue incoming = line.line().incoming();
    while (!incoming.isEmpty()) {
      end.receive(incoming.bytes(), incoming.length(), incoming.nanos(), listener);
      incoming.remove();
    }
  }

  @Override
  public int nextSequence() {
    return end.nextSequence();
  }

  /** What goes wrong on the line. */
  public LineFaults faults() {
    return faults;
  }

  /** The protocol's end, for its counters. */
  public RigEnd end() {
    return end;
  }

  @Override
  public String health() {
    Peer.State state = end.peer().state();
    String words =
        switch (state) {
          case AGREED -> "the controller answers";
          case SILENT -> "no controller answers";
          case SAME_ROLE -> "another rig is at the other end";
          case OTHER_PROTOCOL ->
              "the other end speaks protocol " + end.peer().protocol() + " of the link";
        };
    String trouble = line.line().trouble();
    return trouble.isEmpty() ? words : words + "; " + trouble;
  }

  @Override
  public void close() {
    line.close();
  }
}
