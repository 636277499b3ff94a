package org.boostwright.pi.loop;

import java.io.IOException;
import java.nio.ByteBuffer;
import java.nio.channels.FileChannel;
import java.nio.charset.StandardCharsets;
import java.nio.file.AccessDeniedException;
import java.nio.file.FileSystemException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.nio.file.StandardOpenOption;
import java.util.ArrayList;
import java.util.List;

/**
 * Something that restarts program or machine when it is no longer fed. Fed only while the tick
 * ticks; the restart comes up at rest.
 */
public interface Watchdog extends AutoCloseable {
  /** The tick is alive. */
  void feed() throws IOException;

  /** Orderly end: no restart is wanted. */
  @Override
  void close() throws IOException;

  /** All of several. */
  static Watchdog all(List<Watchdog> dogs) {
    List<Watchdog> copy = new ArrayList<>(dogs);
    return new Watchdog() {
      @Override
      public void feed() throws IOException {
        for (Watchdog dog : copy) {
          dog.feed();
        }
      }

      @Override
      public void close() throws IOException {
        for (Watchdog dog : copy) {
          dog.close();
        }
      }
    };
  }

  /**
   * The kernel's watchdog device (Linux, Documentation/watchdog/watchdog-api.rst): any byte feeds
   * it, {@code V} before the end disarms it.
   *
   * @throws IOException when it is missing or no device: an ordinary file would be fed for nothing
   */
  static Watchdog device(Path path) throws IOException {
    if (!Files.exists(path)) {
      throw new IOException(
          path
              + " does not exist: no watchdog driver is loaded (dtparam=watchdog=on in config.txt);"
              + " without one set pins.machine_watchdog = false");
    }
    int mode = (Integer) Files.getAttribute(path, "unix:mode");
    if ((mode & 0170000) != 0020000) {
      throw new IOException(path + " is no character device and resets nothing; remove it");
    }
    FileChannel channel = open(path);
    return new Watchdog() {
      @Override
      public void feed() throws IOException {
        write("\n");
      }

      @Override
      public void close() throws IOException {
        write("V");
        channel.close();
      }

      private void write(String text) throws IOException {
        channel.write(ByteBuffer.wrap(text.getBytes(StandardCharsets.US_ASCII)));
      }
    };
  }

  private static FileChannel open(Path path) throws IOException {
    try {
      return FileChannel.open(path, StandardOpenOption.WRITE);
    } catch (AccessDeniedException e) {
      throw new IOException(
          path + " may not be opened by this user; see docs/install-pi.md for the rule", e);
    } catch (FileSystemException e) {
      throw new IOException(
          path
              + " cannot be opened ("
              + e.getReason()
              + "): is it systemd's (RuntimeWatchdogSec)? Then set pins.machine_watchdog = false",
          e);
    }
  }
}
