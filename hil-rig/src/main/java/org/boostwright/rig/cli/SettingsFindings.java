package org.boostwright.rig.cli;

import org.boostwright.core.settings.file.Problem;
import org.boostwright.rig.result.Finding;
import org.boostwright.rig.result.Severity;

/** Problems of a settings file as findings. */
final class SettingsFindings {
  private SettingsFindings() {}

  static Finding of(Problem problem) {
    String text = problem.toString();
    // The loader's sentence ends with what to do, after a semicolon.
    int cut = text.lastIndexOf("; ");
    return cut < 0
        ? new Finding(problem.code(), severity(problem), text, "")
        : new Finding(
            problem.code(), severity(problem), text.substring(0, cut), text.substring(cut + 2));
  }

  private static Severity severity(Problem problem) {
    return switch (problem.severity()) {
      case ERROR -> Severity.PROBLEM;
      case WARNING -> Severity.CAUTION;
      case NOTE -> Severity.NOTE;
    };
  }
}
