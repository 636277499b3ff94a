package org.boostwright.core.bench;

/** One thing a routine wants done next. */
sealed interface Action {
  /**
   * Drive the valve and watch the line.
   *
   * @param frequencyHz PWM frequency, Hz
   * @param dutyFraction 0 (channel off) to 1
   * @param coilSupply high-side switch closed
   * @param fixedSeconds how long, s; 0 = until the signal has settled
   * @param measureSeconds shortest stretch of settled signal to average over, s
   */
  record Drive(
      double frequencyHz,
      double dutyFraction,
      boolean coilSupply,
      double fixedSeconds,
      double measureSeconds)
      implements Action {}

  /** Ask the person; the coil is off meanwhile. */
  record Ask(Question question) implements Action {}

  /** Settled reading at a duty. */
  static Drive settle(double frequencyHz, double dutyFraction, double measureSeconds) {
    return new Drive(frequencyHz, dutyFraction, true, 0.0, measureSeconds);
  }

  /** A duty for a fixed time. */
  static Drive hold(double frequencyHz, double dutyFraction, double seconds) {
    return new Drive(frequencyHz, dutyFraction, true, seconds, seconds);
  }

  /** Coil dead by its high-side switch, settled. */
  static Drive dead(double measureSeconds) {
    return new Drive(BenchPlan.LOWEST_HZ, 0.0, false, 0.0, measureSeconds);
  }
}
