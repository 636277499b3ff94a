package org.boostwright.pi.io;

import java.io.IOException;
import java.nio.file.DirectoryStream;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.List;
import java.util.concurrent.TimeUnit;

/**
 * Gives threads a place before those of ordinary programs: SCHED_FIFO through {@code chrt} of
 * util-linux, as Java has no call for it.
 */
public final class RealTime {
  /** Priority of the tick thread and of those it waits for, 1 to 99. */
  public static final int TICK_PRIORITY = 40;

  private static final long LONGEST_SECONDS = 2L;

  private RealTime() {}

  /**
   * Asks for {@link #TICK_PRIORITY} for the calling thread.
   *
   * @return empty when given, else why not, for people
   */
  public static String liftThread() {
    try {
      Path self = Files.readSymbolicLink(Path.of("/proc/thread-self"));
      return chrt(
          "--reset-on-fork",
          "--fifo",
          "--pid",
          Integer.toString(TICK_PRIORITY),
          "" + self.getFileName());
    } catch (IOException e) {
      return "this machine has no /proc";
    }
  }

  /**
   * Asks for it for the Java machine's own threads. The machine stops all others now and then, and
   * the tick then waits for these; they must not wait for other programs. The compilers stay where
   * they are: they would fill every core.
   */
  public static void liftMachine() {
    try (DirectoryStream<Path> tasks = Files.newDirectoryStream(Path.of("/proc/self/task"))) {
      for (Path task : tasks) {
        String name = Files.readString(task.resolve("comm")).strip();
        if (name.startsWith("VM ") || name.startsWith("GC ") || name.startsWith("G1 ")) {
          chrt(
              "--reset-on-fork",
              "--fifo",
              "--pid",
              Integer.toString(TICK_PRIORITY),
              "" + task.getFileName());
        }
      }
    } catch (IOException e) {
      // As without it; the tick thread reports what it was given.
    }
  }

  private static String chrt(String... options) {
    List<String> words = new ArrayList<>(List.of("chrt"));
    words.addAll(List.of(options));
    try {
      Process chrt =
          new ProcessBuilder(words)
              .redirectErrorStream(true)
              .redirectOutput(ProcessBuilder.Redirect.DISCARD)
              .start();
      if (!chrt.waitFor(LONGEST_SECONDS, TimeUnit.SECONDS)) {
        chrt.destroyForcibly();
        return "chrt does not answer";
      }
      return chrt.exitValue() == 0 ? "" : "not allowed (LimitRTPRIO in the service, or root)";
    } catch (IOException e) {
      return "chrt is not installed";
    } catch (InterruptedException e) {
      Thread.currentThread().interrupt();
      return "interrupted";
    }
  }
}
