package org.boostwright.rig.logs.gains;

/** How hard the feedback is to work. */
public enum Pace {
  /** Closed-loop time constant of two dead times, Ms at most 1.5: forgiving of a changing car. */
  CALM(2.0, 1.5),
  /** One dead time, as SIMC recommends for speed with good margins; Ms at most 1.65. */
  BRISK(1.0, 1.65);

  /** Largest Ms over every answer the logs leave possible. */
  static final double WORST_SENSITIVITY = 1.8;

  private final double deadTimes;
  private final double maxSensitivity;

  Pace(double deadTimes, double maxSensitivity) {
    this.deadTimes = deadTimes;
    this.maxSensitivity = maxSensitivity;
  }

  /** Closed-loop time constant in dead times. */
  public double deadTimes() {
    return deadTimes;
  }

  /** Largest Ms with the identified answer. */
  public double maxSensitivity() {
    return maxSensitivity;
  }
}
