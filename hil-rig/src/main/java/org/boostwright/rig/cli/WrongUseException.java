package org.boostwright.rig.cli;

/** Wrong use or unreadable input: exit code 2, with what to do about it. */
final class WrongUseException extends Exception {
  private static final long serialVersionUID = 1L;

  private final String next;

  WrongUseException(String message, String next) {
    super(message);
    this.next = next;
  }

  /** What to do next; empty when nothing comes to mind. */
  String next() {
    return next;
  }
}
