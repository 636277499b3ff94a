package org.boostwright.pi.loop;

import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.concurrent.TimeUnit;

/**
 * Gives the calling thread a place before all ordinary ones: SCHED_FIFO through {@code chrt} of
 * util-linux, as Java has no call for it.
 */
public final class RealTime {
  /** Priority of the tick thread, 1 to 99; above the service's own. */
  public static final int TICK_PRIORITY = 40;

  private static final long LONGEST_SECONDS = 2L;

  private RealTime() {}

  /**
   * Asks for it.
   *
   * @return empty when given, else why not, for people
   */
  public static String lift(int priority) {
    try {
      Path self = Files.readSymbolicLink(Path.of("/proc/thread-self"));
      String thread = String.valueOf(self.getFileName());
      Process chrt =
          new ProcessBuilder("chrt", "--fifo", "--pid", Integer.toString(priority), thread)
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
