package org.boostwright.rig.replay;

import org.boostwright.rig.replay.csv.LogSignal;

/** Which recorded signal stands for what the driver asks for. */
public enum Demand {
  /** The throttle plate. */
  THROTTLE(LogSignal.THROTTLE),
  /** The pedal: for engines whose throttle does not follow the driver, such as a diesel's. */
  PEDAL(LogSignal.PEDAL);

  private final LogSignal signal;

  Demand(LogSignal signal) {
    this.signal = signal;
  }

  /** The signal fed into the controller's throttle channel. */
  public LogSignal signal() {
    return signal;
  }
}
