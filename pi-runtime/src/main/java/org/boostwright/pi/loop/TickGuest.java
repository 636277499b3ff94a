package org.boostwright.pi.loop;

import org.boostwright.core.Inputs;
import org.boostwright.core.Outputs;

/** A bench procedure that rides on the ticks: it asks, the core decides. */
public interface TickGuest {
  /** Before the core's tick; may set {@code benchRequest} and {@code benchDutyFraction} only. */
  void before(long nowNanos, Inputs inputs);

  /**
   * After the core's tick.
   *
   * @return PWM frequency wanted from now on, Hz; taken over only at rest
   */
  double after(long nowNanos, Inputs inputs, Outputs outputs);
}
