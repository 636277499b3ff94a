package org.boostwright.core.settings.file;

import java.io.IOException;
import java.nio.channels.FileChannel;
import java.nio.file.Files;
import java.nio.file.Path;
import java.nio.file.StandardCopyOption;
import java.nio.file.StandardOpenOption;
import java.nio.file.attribute.PosixFileAttributeView;
import java.util.UUID;

/** The disk of the machine. */
final class RealDisk implements Disk {
  @Override
  public Path createBeside(Path file) throws IOException {
    // Not createTempFile: its files may be read by their owner only, and a new file stays so.
    Path fresh = file.resolveSibling("." + file.getFileName() + "-" + UUID.randomUUID() + ".new");
    Files.createFile(fresh);
    PosixFileAttributeView fine = Files.getFileAttributeView(fresh, PosixFileAttributeView.class);
    if (fine != null && Files.exists(file)) {
      fine.setPermissions(Files.getPosixFilePermissions(file));
    }
    return fresh;
  }

  @Override
  public void write(Path file, byte[] content) throws IOException {
    Files.write(file, content, StandardOpenOption.WRITE, StandardOpenOption.TRUNCATE_EXISTING);
  }

  @Override
  public void force(Path file) throws IOException {
    try (FileChannel channel = FileChannel.open(file, StandardOpenOption.WRITE)) {
      channel.force(true);
    }
  }

  @Override
  public void rename(Path from, Path to) throws IOException {
    Files.move(from, to, StandardCopyOption.ATOMIC_MOVE, StandardCopyOption.REPLACE_EXISTING);
  }

  @Override
  public void forceFolder(Path folder) throws IOException {
    try (FileChannel channel = FileChannel.open(folder, StandardOpenOption.READ)) {
      channel.force(true);
    }
  }

  @Override
  public void remove(Path file) throws IOException {
    Files.deleteIfExists(file);
  }
}
