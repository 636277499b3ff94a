package org.boostwright.core.settings.file;

/**
 * Something about a settings file that its writer should know.
 *
 * @param severity how much it matters
 * @param code stable snake_case name of the kind of problem
 * @param file the file's name as the user wrote it
 * @param line line, from 1
 * @param column column, from 1
 * @param text where, what with value, unit and limit, and what to do
 */
public record Problem(
    Severity severity, String code, String file, int line, int column, String text) {

  /** {@code car.toml:41:7: target table, row 3: 310 kPa absolute is above ...}. */
  @Override
  public String toString() {
    String word = severity == Severity.ERROR ? "" : severity.word() + ": ";
    return file + ":" + line + ":" + column + ": " + word + text;
  }
}
