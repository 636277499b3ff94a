package org.boostwright.rig.cli;

import java.io.PrintWriter;
import java.nio.charset.StandardCharsets;
import java.util.Map;

/**
 * Where a command writes and how.
 *
 * <p>The launcher looks at the streams, because Java 17 cannot tell a redirected error stream from
 * a terminal: system property {@code boostwright.terminal} holds {@code out}, {@code err} or both.
 * Colours need a terminal and no {@code NO_COLOR} in the environment (no-color.org: any non-empty
 * value).
 *
 * @param out standard output: results only
 * @param err standard error: progress and complaints
 * @param coloursOut whether standard output may be coloured
 * @param movingErr whether standard error can redraw a line
 */
record Terminal(PrintWriter out, PrintWriter err, boolean coloursOut, boolean movingErr) {
  /** Columns of help and text. */
  static final int WIDTH = 100;

  /** The terminal this process was started on. */
  static Terminal ofProcess() {
    return of(System.getProperty("boostwright.terminal", ""), System.getenv());
  }

  /**
   * The terminal of some circumstances.
   *
   * @param streams {@code out}, {@code err} or both, where they are a terminal
   * @param environment names and values
   */
  static Terminal of(String streams, Map<String, String> environment) {
    boolean dumb = "dumb".equals(environment.get("TERM"));
    boolean noColour = !environment.getOrDefault("NO_COLOR", "").isEmpty();
    return new Terminal(
        new PrintWriter(System.out, true, StandardCharsets.UTF_8),
        new PrintWriter(System.err, true, StandardCharsets.UTF_8),
        streams.contains("out") && !dumb && !noColour,
        streams.contains("err") && !dumb);
  }

  /** Text in bold where colours are allowed. */
  String bold(String text) {
    return paint("1", text);
  }

  /** Text in green where colours are allowed. */
  String good(String text) {
    return paint("32", text);
  }

  /** Text in red where colours are allowed. */
  String bad(String text) {
    return paint("31", text);
  }

  private String paint(String code, String text) {
    return coloursOut ? "\u001B[" + code + "m" + text + "\u001B[0m" : text;
  }
}
