package org.boostwright.rig.link;

import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.concurrent.TimeUnit;
import java.util.concurrent.locks.LockSupport;

/** Two pseudo-terminals joined by socat: a serial cable without hardware. */
public final class PtyPair implements AutoCloseable {
  private static final long APPEAR_NANOS = 5_000_000_000L;
  private static final long LOOK_NANOS = 10_000_000L;

  private final Process socat;
  private final Path one;
  private final Path other;

  /**
   * Starts socat.
   *
   * @param folder where the two ends appear as {@code rig-end} and {@code controller-end}
   */
  public PtyPair(Path folder) throws IOException {
    one = folder.resolve("rig-end").toAbsolutePath();
    other = folder.resolve("controller-end").toAbsolutePath();
    Files.deleteIfExists(one);
    Files.deleteIfExists(other);
    String first = "pty,raw,echo=0,link=" + one;
    String second = "pty,raw,echo=0,link=" + other;
    try {
      // A real cable does not wait for a busy processor; where allowed, this one does not either.
      socat =
          RealTimeThread.allowed()
              ? start("chrt", "--fifo", "45", "socat", first, second)
              : start("socat", first, second);
    } catch (IOException e) {
      throw new IOException("socat is needed for a serial cable in software: apt install socat", e);
    }
    long giveUp = System.nanoTime() + APPEAR_NANOS;
    while (!(Files.exists(one) && Files.exists(other))) {
      if (System.nanoTime() - giveUp > 0L || !socat.isAlive()) {
        close();
        throw new IOException("socat did not make two pseudo-terminals in " + folder);
      }
      LockSupport.parkNanos(LOOK_NANOS);
    }
  }

  private static Process start(String... words) throws IOException {
    return new ProcessBuilder(words)
        .redirectErrorStream(true)
        .redirectOutput(ProcessBuilder.Redirect.DISCARD)
        .start();
  }

  /** End for the rig. */
  public Path rigEnd() {
    return one;
  }

  /** End for the controller. */
  public Path controllerEnd() {
    return other;
  }

  @Override
  public void close() {
    socat.destroy();
    try {
      socat.waitFor(1, TimeUnit.SECONDS);
    } catch (InterruptedException e) {
      Thread.currentThread().interrupt();
    }
  }
}
