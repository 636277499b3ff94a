package org.boostwright.core.ladder;

/** An entry that the ladder does not take; the message says why and what to do. */
public final class LadderRefusedException extends Exception {
  private static final long serialVersionUID = 1L;

  /** With what is wrong, for people. */
  public LadderRefusedException(String message) {
    super(message);
  }
}
