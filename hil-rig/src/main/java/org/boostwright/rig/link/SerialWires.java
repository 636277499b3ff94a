package org.boostwright.rig.link;

import java.util.function.Supplier;
import org.boostwright.core.Inputs;
import org.boostwright.core.link.ChunkQueue;
import org.boostwright.core.link.Peer;
import org.boostwright.core.link.RigEnd;

/** The wires as frames on a serial line (docs/link.md), with whatever goes wrong on it. */
public final class SerialWires implements ControllerWires {
  /** Enough for a block of frames in reverse order. */
  private static final int OUTGOING_FRAMES = 32;

  private final ChunkQueue incoming;
  private final Supplier<String> trouble;
  private final Runnable closer;
  private final RigEnd end;
  private final LineFaults faults;

  /**
   * Frames over something that carries bytes.
   *
   * @param incoming what has come
   * @param trouble why nothing can be carried; empty when it can
   * @param closer ends it
   * @param settingsDigest first eight bytes of the digest of the settings the rig assumes
   * @param seed seed of what goes wrong
   */
  SerialWires(
      LineFaults.Out out,
      ChunkQueue incoming,
      Supplier<String> trouble,
      Runnable closer,
      long nowNanos,
      long settingsDigest,
      long seed) {
    this.incoming = incoming;
    this.trouble = trouble;
    this.closer = closer;
    int session = (int) (nowNanos ^ ProcessHandle.current().pid() << 20);
    end = new RigEnd(nowNanos, session, settingsDigest);
    faults = new LineFaults(seed, out);
  }

  /** Frames over a serial port, which is opened now or as soon as it is there. */
  static SerialWires open(String port, int baud, long settingsDigest, long seed) {
    SerialLine line = new SerialLine(port, baud, OUTGOING_FRAMES);
    SerialWires wires =
        new SerialWires(
            line::send,
            line.line().incoming(),
            line.line()::trouble,
            line::close,
            System.nanoTime(),
            settingsDigest,
            seed);
    line.start();
    return wires;
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
    String why = trouble.get();
    return why.isEmpty() ? words : words + "; " + why;
  }

  @Override
  public void close() {
    closer.run();
  }
}
