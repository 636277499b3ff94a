package org.boostwright.rig.plant;

/** What is wrong with a pulse signal right now; write any field at any moment. */
public final class PulseFaults {
  /** No pulse arrives. */
  public boolean lost;

  /** Factor on the number of pulses: 2 doubled, 0.5 halved. */
  public double factor = 1.0;

  /** Share of pulses that are swallowed at random, 0 to 1. */
  public double droppedFraction;

  /** Back to sound. */
  public void clear() {
    lost = false;
    factor = 1.0;
    droppedFraction = 0.0;
  }
}
