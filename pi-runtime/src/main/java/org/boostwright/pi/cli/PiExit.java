package org.boostwright.pi.cli;

/** Exit codes, the same for every command. */
final class PiExit {
  /** Passed. */
  static final int PASSED = 0;

  /** A verdict failed, or the command refused. */
  static final int FAILED = 1;

  /** Wrong use or unreadable input. */
  static final int WRONG_USE = 2;

  /** A defect of the program itself; systemd restarts it into rest. */
  static final int INTERNAL = 3;

  private PiExit() {}
}
