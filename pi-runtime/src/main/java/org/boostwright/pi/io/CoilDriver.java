package org.boostwright.pi.io;

/** The PWM channel and the coil supply switch: together everything that acts through the coil. */
public interface CoilDriver extends AutoCloseable {
  /**
   * Sets duty for the coming PWM periods without disturbing the present one.
   *
   * @param dutyFraction 0 to 1, already through the gate
   */
  void duty(double dutyFraction);

  /** Duty 0, channel disabled and coil supply open; safe to call at any time and twice. */
  void rest();

  /** One heartbeat edge: it holds the coil supply switch closed for a short while. */
  void beat();

  /** Rests first. */
  @Override
  void close();
}
