package org.boostwright.rig.electrical;

import java.io.BufferedReader;
import java.io.IOException;
import java.io.InputStreamReader;
import java.nio.charset.StandardCharsets;
import java.util.ArrayList;
import java.util.List;
import java.util.Queue;
import java.util.concurrent.ConcurrentLinkedQueue;
import org.jspecify.annotations.Nullable;

/**
 * Edges of wires as the kernel times them, through {@code gpiomon} of libgpiod 1.6 (Debian 12):
 * {@code --format "%o %e %s %n"} prints line, 1 for rising and 0 for falling, seconds and
 * nanoseconds of the monotonic clock. Its options are from memory and were not tried on a board.
 */
final class EdgeLog implements AutoCloseable {
  /**
   * One edge.
   *
   * @param line number of the line on its chip
   * @param nanos when, on the monotonic clock
   */
  record Edge(int line, boolean rising, long nanos) {}

  private final Process gpiomon;
  private final Queue<Edge> edges = new ConcurrentLinkedQueue<>();
  private volatile String trouble = "";

  /** Starts watching lines of a chip, such as {@code gpiochip0}. */
  EdgeLog(String chip, List<Integer> lines) throws IOException {
    this(command(chip, lines));
  }

  /** Takes the lines of another program instead. */
  EdgeLog(List<String> command) throws IOException {
    try {
      gpiomon = new ProcessBuilder(command).redirectErrorStream(true).start();
    } catch (IOException e) {
      throw new IOException("gpiomon is needed to watch wires: apt install gpiod", e);
    }
    Thread reader = new Thread(this::read, "edges");
    reader.setDaemon(true);
    reader.setPriority(Thread.MAX_PRIORITY);
    reader.start();
  }

  private static List<String> command(String chip, List<Integer> lines) {
    List<String> words = new ArrayList<>(List.of("gpiomon", "--format=%o %e %s %n"));
    words.add("--line-buffered");
    words.add(chip);
    lines.forEach(line -> words.add(Integer.toString(line)));
    return words;
  }

  private void read() {
    try (BufferedReader in =
        new BufferedReader(
            new InputStreamReader(gpiomon.getInputStream(), StandardCharsets.UTF_8))) {
      for (String line = in.readLine(); line != null; line = in.readLine()) {
        Edge edge = parse(line);
        if (edge == null) {
          trouble = line;
        } else {
          edges.add(edge);
        }
      }
    } catch (IOException e) {
      trouble = "gpiomon ended: " + e.getMessage();
    }
  }

  /** An edge from a line of gpiomon; null when it is none. */
  static @Nullable Edge parse(String line) {
    String[] cells = line.strip().split("\\s+");
    try {
      if (cells.length != 4 || !(cells[1].equals("0") || cells[1].equals("1"))) {
        return null;
      }
      long nanos = Long.parseLong(cells[2]) * 1_000_000_000L + Long.parseLong(cells[3]);
      return new Edge(Integer.parseInt(cells[0]), cells[1].equals("1"), nanos);
    } catch (NumberFormatException e) {
      return null;
    }
  }

  /** The next edge; null when there is none yet. */
  @Nullable Edge poll() {
    return edges.poll();
  }

  /** What gpiomon said that is no edge; empty when nothing. */
  String trouble() {
    return trouble;
  }

  @Override
  public void close() {
    gpiomon.destroy();
  }
}
