package org.boostwright.rig.cli;

import org.boostwright.rig.result.Verdict;

/** Exit codes, the same for every command. */
final class ExitCode {
  /** Passed. */
  static final int PASSED = 0;

  /** A verdict failed, or the command refused. */
  static final int FAILED = 1;

  /** Wrong use or unreadable input. */
  static final int WRONG_USE = 2;

  /** A defect of the program itself. */
  static final int INTERNAL = 3;

  private ExitCode() {}

  static int of(Verdict verdict) {
    return verdict == Verdict.PASSED ? PASSED : FAILED;
  }
}
