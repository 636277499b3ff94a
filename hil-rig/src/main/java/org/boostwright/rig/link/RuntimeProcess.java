package org.boostwright.rig.link;

import java.io.IOException;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.List;
import java.util.concurrent.TimeUnit;

/** The controller's program as a child of the rig, so that it can be stopped, killed, restarted. */
public final class RuntimeProcess implements AutoCloseable {
  private static final long END_SECONDS = 5L;

  private final List<String> command;
  private final Path log;
  private Process process;
  private long startedNanos;

  /**
   * Starts it.
   *
   * @param command command line, as words
   * @param log file that takes what it says
   */
  public RuntimeProcess(List<String> command, Path log) throws IOException {
    this.command = List.copyOf(command);
    this.log = log;
    process = begin();
  }

  private Process begin() throws IOException {
    startedNanos = System.nanoTime();
    return new ProcessBuilder(command)
        .redirectErrorStream(true)
        .redirectOutput(ProcessBuilder.Redirect.appendTo(log.toFile()))
        .start();
  }

  /** Starts it again after it has ended. */
  public void restart() throws IOException {
    process = begin();
  }

  /** When it was last started, ns. */
  public long startedNanos() {
    return startedNanos;
  }

  /** Its number on this machine. */
  long pid() {
    return process.pid();
  }

  /** True while it runs. */
  public boolean alive() {
    return process.isAlive();
  }

  /** Ends it without any warning, as {@code kill -9} does. */
  public void kill() {
    process.destroyForcibly();
  }

  /** Freezes it as a whole. */
  public void freeze() throws IOException {
    signal("STOP");
  }

  /** Lets it go on. */
  public void thaw() throws IOException {
    signal("CONT");
  }

  private void signal(String name) throws IOException {
    List<String> words = new ArrayList<>(List.of("kill", "-" + name));
    words.add(Long.toString(pid()));
    try {
      Process kill = new ProcessBuilder(words).redirectErrorStream(true).start();
      if (!kill.waitFor(END_SECONDS, TimeUnit.SECONDS) || kill.exitValue() != 0) {
        throw new IOException("signal " + name + " did not reach the controller's program");
      }
    } catch (InterruptedException e) {
      Thread.currentThread().interrupt();
      throw new IOException("interrupted", e);
    }
  }

  /** Asks it to end, and ends it when it does not. */
  @Override
  public void close() {
    process.destroy();
    try {
      if (!process.waitFor(END_SECONDS, TimeUnit.SECONDS)) {
        process.destroyForcibly();
        process.waitFor(END_SECONDS, TimeUnit.SECONDS);
      }
    } catch (InterruptedException e) {
      process.destroyForcibly();
      Thread.currentThread().interrupt();
    }
  }
}
