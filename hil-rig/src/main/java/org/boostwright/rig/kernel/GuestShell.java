package org.boostwright.rig.kernel;

import java.io.IOException;
import java.util.Locale;

/** The shell of the guest: types a line, waits for its end, hands back what it said. */
final class GuestShell {
  /** Lets a little time pass in the guest. */
  interface Step {
    void run() throws IOException;
  }

  /**
   * What came of a line.
   *
   * @param exitCode its exit code
   * @param text what it said
   */
  record Answer(int exitCode, String text) {}

  private static final double STEP_SECONDS = KernelRig.STEP_NANOS * 1e-9;
  private static final String END = "bench-end";

  private final GuestOrders orders;
  private final Step step;
  private final StringBuilder heard = new StringBuilder();
  private final StringBuilder everything = new StringBuilder();
  private int lines;

  GuestShell(GuestOrders orders, Step step) {
    this.orders = orders;
    this.step = step;
  }

  void hear(String text) {
    heard.append(text);
    everything.append(text);
  }

  /** A new shell: the old one's words are over. */
  void boot() {
    heard.setLength(0);
    everything.append("\n--- boot ---\n");
  }

  /** Everything the guest's shell has said. */
  String everything() {
    return everything.toString();
  }

  /** What it has said since the last line that was waited for. */
  String heard() {
    return heard.toString();
  }

  /** Types a line and does not wait. */
  void type(String line) {
    everything.append("\n$ ").append(line).append('\n');
    orders.type(line + "\n");
  }

  /**
   * Runs a line to its end; the car lives on meanwhile.
   *
   * @throws IOException when it takes longer than allowed in the guest, or the guest has ended
   */
  Answer run(String line, double longestSeconds) throws IOException {
    String end = "\n" + END + " " + ++lines + " ";
    heard.setLength(0);
    type(line + "\nr=$?; echo; echo \"" + end.substring(1) + "$r\"");
    long steps = Math.round(longestSeconds / STEP_SECONDS);
    for (long i = 0; i < steps; i++) {
      step.run();
      int at = heard.indexOf(end);
      int to = at < 0 ? -1 : heard.indexOf("\n", at + end.length());
      if (to > 0) {
        int code = Integer.parseInt(heard.substring(at + end.length(), to).strip());
        return new Answer(code, heard.substring(0, at).strip());
      }
    }
    throw new IOException(
        String.format(
            Locale.ROOT,
            "the guest's shell did not end '%s' within %.0f s; it said: %s",
            line,
            longestSeconds,
            heard));
  }
}
