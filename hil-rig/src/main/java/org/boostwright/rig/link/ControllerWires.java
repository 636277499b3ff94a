package org.boostwright.rig.link;

import org.boostwright.core.Inputs;
import org.boostwright.core.link.RigEnd;

/** The wires between rig and controller: frames on a serial line, or real voltages and edges. */
public interface ControllerWires extends AutoCloseable {
  /** Shows the controller what the car's wires say. */
  void put(long nowNanos, Inputs inputs);

  /** Passes on everything the controller has done since the last call. */
  void poll(long nowNanos, RigEnd.Listener listener);

  /** Number of the next frame that shows the controller something; 0 where nothing is numbered. */
  int nextSequence();

  /** Words about the state of the wires, for people. */
  String health();

  @Override
  void close();
}
