package org.boostwright.core.monitor;

/** When a confirmed fault is taken back; part of the fault's definition. */
public enum ClearRule {
  /** The cause has been gone for the fault's clear time. */
  GOOD_FOR_CLEAR_TIME("once it has stayed good for its clear time"),
  /** Throttle below 20 % for 2 s without a break, and the cause gone. */
  THROTTLE_RELEASED("after the throttle has been below 20 % for 2 s"),
  /** Key off, or the engine known to be stopped. */
  KEY_OFF("after the key has been off");

  private final String words;

  ClearRule(String words) {
    this.words = words;
  }

  /** The rule as shown to people, completing "clears". */
  public String words() {
    return words;
  }
}
