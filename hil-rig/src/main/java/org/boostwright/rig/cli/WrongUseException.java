package org.boostwright.rig.cli;

import java.util.List;
import org.boostwright.rig.result.Finding;
import org.boostwright.rig.result.Severity;

/** Wrong use or unreadable input: exit code 2, with what to do about it. */
final class WrongUseException extends Exception {
  private static final long serialVersionUID = 1L;

  private final transient List<Finding> findings;

  WrongUseException(String message, String next) {
    this(message, List.of(new Finding("wrong_use", Severity.PROBLEM, message, next)));
  }

  /** With everything that is wrong, for input that has more than one fault. */
  WrongUseException(String message, List<Finding> findings) {
    super(message);
    this.findings = findings;
  }

  /** Everything that is wrong. */
  List<Finding> findings() {
    return findings;
  }
}
