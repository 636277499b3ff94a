package org.boostwright.rig.card;

/** What to do after a pull. */
public enum Advice {
  /** Below target, repeated, and the person says the engine was fine. */
  RAISE,
  /** Nothing to change, or not enough known to change it. */
  HOLD,
  /** Above target. */
  LOWER,
  /** Something is wrong: no further pull before it is found. */
  STOP
}
