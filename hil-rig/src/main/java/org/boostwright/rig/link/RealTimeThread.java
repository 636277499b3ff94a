package org.boostwright.rig.link;

import java.io.IOException;
import java.nio.file.DirectoryStream;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.concurrent.TimeUnit;

/** Gives the calling thread a place before all ordinary ones, where the machine allows it. */
final class RealTimeThread {
  private static final int PRIORITY = 45;
  private static final long LONGEST_SECONDS = 2L;

  private RealTimeThread() {}

  /** Asks for it through {@code chrt} of util-linux; true when given. */
  static boolean lift() {
    try {
      Path self = Files.readSymbolicLink(Path.of("/proc/thread-self"));
      return succeeds(
          "chrt",
          "--reset-on-fork",
          "--fifo",
          "--pid",
          Integer.toString(PRIORITY),
          "" + self.getFileName());
    } catch (IOException e) {
      return false;
    }
  }

  /**
   * The same for the Java machine's own threads, for which all others wait now and then; not for
   * its compilers, which would fill every core.
   */
  static void liftMachine() {
    try (DirectoryStream<Path> tasks = Files.newDirectoryStream(Path.of("/proc/self/task"))) {
      for (Path task : tasks) {
        String name = Files.readString(task.resolve("comm")).strip();
        if (name.startsWith("VM ") || name.startsWith("GC ") || name.startsWith("G1 ")) {
          succeeds(
              "chrt",
              "--reset-on-fork",
              "--fifo",
              "--pid",
              Integer.toString(PRIORITY),
              "" + task.getFileName());
        }
      }
    } catch (IOException e) {
      // As without it; the report says whether the rig had its place.
    }
  }

  /** True when another program may be started so. */
  static boolean allowed() {
    return succeeds("chrt", "--fifo", Integer.toString(PRIORITY), "true");
  }

  private static boolean succeeds(String... words) {
    try {
      Process process =
          new ProcessBuilder(words)
              .redirectErrorStream(true)
              .redirectOutput(ProcessBuilder.Redirect.DISCARD)
              .start();
      return process.waitFor(LONGEST_SECONDS, TimeUnit.SECONDS) && process.exitValue() == 0;
    } catch (IOException e) {
      return false;
    } catch (InterruptedException e) {
      Thread.currentThread().interrupt();
      return false;
    }
  }
}
