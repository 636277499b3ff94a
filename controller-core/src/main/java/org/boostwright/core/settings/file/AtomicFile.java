package org.boostwright.core.settings.file;

import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;

/**
 * Replaces a file so that after a power cut at any moment it holds the whole old or the whole new
 * content: write beside it, force to the medium, rename over it, force the folder.
 */
public final class AtomicFile {
  private AtomicFile() {}

  /**
   * Replaces or creates a file.
   *
   * @throws IOException when it failed; the file then has its whole old content, or its whole new
   *     one if only the folder could not be forced
   */
  public static void write(Path path, byte[] content) throws IOException {
    write(new RealDisk(), path, content);
  }

  static void write(Disk disk, Path path, byte[] content) throws IOException {
    // A link is followed, so that the file it points to is replaced and not the link.
    Path file = Files.exists(path) ? path.toRealPath() : path.toAbsolutePath();
    Path folder = file.getParent();
    if (folder == null) {
      throw new IOException(path + " is not a file");
    }
    Path fresh = disk.createBeside(file);
    try {
      disk.write(fresh, content);
      disk.force(fresh);
      disk.rename(fresh, file);
    } catch (IOException e) {
      disk.remove(fresh);
      throw e;
    }
    disk.forceFolder(folder);
  }
}
