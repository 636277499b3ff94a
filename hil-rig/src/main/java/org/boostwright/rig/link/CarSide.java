package org.boostwright.rig.link;

import org.boostwright.core.Inputs;

/** What stands in for the car: the virtual one, or a recorded trace. */
public interface CarSide {
  /**
   * Lets time pass.
   *
   * @param nanos time since the last call
   * @return false when there is no more of it
   */
  boolean advance(long nanos);

  /** What its wires say. */
  void read(long nowNanos, Inputs inputs);

  /**
   * Coil as the wires drive it.
   *
   * @param supplyClosed the coil supply is closed, heartbeat gate included
   */
  void coil(double dutyFraction, double pwmHz, boolean pwmEnabled, boolean supplyClosed);

  /** The engine cut is asked for. */
  void engineCut(boolean requested);
}
