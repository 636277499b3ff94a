package org.boostwright.rig.link;

/**
 * The coil supply's heartbeat gate, simulated: closed only while edges keep coming.
 *
 * <p>Edges are changes of level, so a level that stays, high or low, opens it. The hold time is
 * that of the circuit, 30 to 100 ms over tolerances.
 */
public final class HeartbeatGate {
  /** Hold time of the circuit with its parts as drawn, ns. */
  public static final long HOLD_NANOS = 60_000_000L;

  private final long holdNanos;
  private boolean level;
  private boolean seen;
  private boolean edgeSeen;
  private long edgeNanos;
  private long edges;

  /** A gate with the parts as drawn. */
  public HeartbeatGate() {
    this(HOLD_NANOS);
  }

  /** A gate with another hold time, ns. */
  public HeartbeatGate(long holdNanos) {
    this.holdNanos = holdNanos;
  }

  /** Takes the level of the heartbeat wire. */
  public void level(boolean high, long nowNanos) {
    if (seen && high != level) {
      edgeSeen = true;
      edgeNanos = nowNanos;
      edges++;
    }
    seen = true;
    level = high;
  }

  /** True while the gate lets the coil supply through. */
  public boolean closed(long nowNanos) {
    return edgeSeen && nowNanos - edgeNanos < holdNanos;
  }

  /** When the gate opened, or will open without further edges, ns. */
  public long opensNanos() {
    return edgeNanos + holdNanos;
  }

  /** Edges so far. */
  public long edges() {
    return edges;
  }
}
