package org.boostwright.core.state;

/** The safety states, in the words a user sees. In every rest state duty is 0. */
public enum SafetyState {
  /** Nothing asked for or something is still missing: the actuator sees boost. */
  RESTING("resting", true),
  /** Everything needed is proven and seen; the driver asks for no boost. */
  READY("ready", false),
  /** Duty follows the tables and the pressure feedback. */
  CONTROLLING("controlling", false),
  /** A confirmed fault holds the valve at rest until its clear rule is met. */
  HELD_AT_SPRING("held at spring", true),
  /** A latched fault holds the valve at rest until the key has been off. */
  LOCKED_UNTIL_RESTART("locked until restart", true),
  /** A bench procedure moves the valve; the engine is known to be stopped. */
  BENCH("bench", false);

  private final String words;
  private final boolean rest;

  SafetyState(String words, boolean rest) {
    this.words = words;
    this.rest = rest;
  }

  /** The state as shown to people. */
  public String words() {
    return words;
  }

  /** True where the coil must be off: duty 0, channel disabled, coil supply open. */
  public boolean isRest() {
    return rest;
  }
}
