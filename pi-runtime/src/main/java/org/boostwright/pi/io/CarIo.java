package org.boostwright.pi.io;

import org.boostwright.core.Inputs;
import org.boostwright.core.Outputs;

/**
 * Everything between one tick and the car's wires: the Pi's own pins or the serial link.
 *
 * <p>Called by the tick thread only, except {@link #rest} and {@link #close}, which may come from
 * any thread at any time. Nothing here blocks.
 */
public interface CarIo extends AutoCloseable {
  /**
   * Writes what is newest on every wire. What cannot be read is left to age, or reads as its safe
   * position; an old value is never marked as new.
   */
  void read(long nowNanos, Inputs inputs);

  /**
   * Takes over the commands of this tick and reads them back.
   *
   * @return true when the outputs are as commanded
   */
  boolean apply(long nowNanos, Outputs outputs);

  /**
   * One heartbeat edge, and the end of the tick. The edges hold the coil supply closed; without
   * them it opens.
   *
   * @param beat give an edge
   * @param lamp warning lamp on
   */
  void endTick(long nowNanos, Outputs outputs, boolean beat, boolean lamp);

  /**
   * PWM frequency, Hz, for a bench procedure.
   *
   * @return false when it could not be set; the outputs then are at rest
   */
  boolean setPwmHz(double hz);

  /** Duty 0, channel disabled, no heartbeat; safe from any thread, at any time and twice. */
  void rest();

  /** Words about the state of the wires, for people. */
  String health();

  /** Rests for good: nothing energises the coil afterwards. */
  @Override
  void close();
}
