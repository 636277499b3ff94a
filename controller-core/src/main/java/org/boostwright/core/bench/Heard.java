package org.boostwright.core.bench;

/** What a person heard at the vent port; the answer to {@link Question#LISTEN_AT_VENT}. */
public enum Heard {
  /** No air at all. */
  NOTHING,
  /** A short puff each time the coil went on: the actuator line empties. */
  PUFF,
  /** A steady stream while the coil was on. */
  STEADY_WHILE_ON,
  /** A steady stream while the coil was off. */
  STEADY_WHILE_OFF,
  /** The person does not know. */
  UNKNOWN;

  /** The number this answer travels as. */
  public double asAnswer() {
    return this == UNKNOWN ? Double.NaN : ordinal();
  }

  static Heard of(double answer) {
    for (Heard heard : values()) {
      if (heard != UNKNOWN && answer == heard.ordinal()) {
        return heard;
      }
    }
    return UNKNOWN;
  }
}
