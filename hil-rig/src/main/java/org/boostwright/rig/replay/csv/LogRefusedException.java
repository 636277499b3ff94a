package org.boostwright.rig.replay.csv;

/**
 * A log or a mapping file that cannot be used, with the place, the value and what to do.
 *
 * <p>The message reads {@code file:line:cell: what is wrong; what to do}. In a log the third number
 * counts cells from 1, in a mapping file characters.
 */
public final class LogRefusedException extends Exception {
  private static final long serialVersionUID = 1L;

  private final int line;
  private final int cell;

  /** The whole file is refused. */
  public LogRefusedException(String file, String message) {
    this(file, 0, 0, message);
  }

  /**
   * One place is refused.
   *
   * @param file name shown
   * @param line line from 1; 0 for the whole file
   * @param cell cell or character from 1; 0 for the whole line
   * @param message what is wrong and what to do
   */
  public LogRefusedException(String file, int line, int cell, String message) {
    super(place(file, line, cell) + ": " + message);
    this.line = line;
    this.cell = cell;
  }

  private static String place(String file, int line, int cell) {
    if (line <= 0) {
      return file;
    }
    return cell <= 0 ? file + ":" + line : file + ":" + line + ":" + cell;
  }

  /** Line from 1; 0 when the whole file is meant. */
  public int line() {
    return line;
  }

  /** Cell (log) or character (mapping file) from 1; 0 when the whole line is meant. */
  public int cell() {
    return cell;
  }
}
