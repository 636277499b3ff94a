package org.boostwright.core.bench.proof;

/** A text that should be a proof was changed, cut short or is none; the message says which. */
public final class DamagedProofException extends Exception {
  private static final long serialVersionUID = 1L;

  /** With what is wrong, for people. */
  public DamagedProofException(String message) {
    super(message);
  }
}
