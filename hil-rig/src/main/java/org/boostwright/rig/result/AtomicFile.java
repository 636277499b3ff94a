package org.boostwright.rig.result;

import java.io.IOException;
import java.nio.ByteBuffer;
import java.nio.channels.FileChannel;
import java.nio.charset.StandardCharsets;
import java.nio.file.Files;
import java.nio.file.Path;
import java.nio.file.StandardCopyOption;
import java.nio.file.StandardOpenOption;
import java.util.concurrent.atomic.AtomicLong;

/**
 * Writes a file so that a reader, or a machine that loses power, sees the old one or the new one
 * and never half of either: a temporary file in the same folder, fsync, rename.
 */
public final class AtomicFile {
  private static final AtomicLong COUNTER = new AtomicLong();

  private AtomicFile() {}

  private static String unique() {
    return ProcessHandle.current().pid() + "-" + COUNTER.incrementAndGet();
  }

  /** Writes text as UTF-8. */
  public static void write(Path file, String text) throws IOException {
    write(file, text.getBytes(StandardCharsets.UTF_8));
  }

  /** Writes bytes. */
  public static void write(Path file, byte[] bytes) throws IOException {
    Path folder = file.toAbsolutePath().getParent();
    if (folder == null) {
      throw new IOException(file + " is not the name of a file");
    }
    // Not Files.createTempFile: that one makes files only their owner may read.
    Path temporary = folder.resolve("." + file.getFileName() + "." + unique() + ".tmp");
    try {
      try (FileChannel channel =
          FileChannel.open(temporary, StandardOpenOption.CREATE_NEW, StandardOpenOption.WRITE)) {
        ByteBuffer buffer = ByteBuffer.wrap(bytes);
        while (buffer.hasRemaining()) {
          channel.write(buffer);
        }
        channel.force(true);
      }
      Files.move(temporary, file, StandardCopyOption.ATOMIC_MOVE);
    } finally {
      Files.deleteIfExists(temporary);
    }
  }
}
