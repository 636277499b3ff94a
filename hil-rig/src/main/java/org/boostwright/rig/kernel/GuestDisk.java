package org.boostwright.rig.kernel;

import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.nio.file.StandardCopyOption;
import java.util.ArrayList;
import java.util.List;
import java.util.stream.Stream;

/** The guest's disk: an ext4 file system in a file, filled and read by e2fsprogs without root. */
final class GuestDisk {
  private static final String SIZE = "800m";

  private final Path file;
  private final Path folder;

  private GuestDisk(Path file, Path folder) {
    this.file = file;
    this.folder = folder;
  }

  /**
   * Makes a disk.
   *
   * @param folder where it goes
   * @param content folder whose content it begins with
   */
  static GuestDisk of(Path folder, Path content) throws IOException {
    Path file = folder.resolve("disk.img");
    Files.deleteIfExists(file);
    run(folder, "mke2fs", "-q", "-t", "ext4", "-d", content.toString(), file.toString(), SIZE);
    return new GuestDisk(file, folder);
  }

  /** Copies files into a folder, keeping their times: Java's class archive checks them. */
  static void copy(Path to, List<Path> files) throws IOException {
    Files.createDirectories(to);
    for (Path from : files) {
      Files.copy(
          from,
          to.resolve(from.getFileName()),
          StandardCopyOption.COPY_ATTRIBUTES,
          StandardCopyOption.REPLACE_EXISTING);
    }
  }

  /**
   * Takes a folder from the disk of a machine that is off, after the journal has been played, as
   * the next boot would.
   *
   * @return the files in it, by name
   */
  List<Path> take(String name) throws IOException {
    run(folder, "e2fsck", "-p", file.toString());
    Path to = Files.createDirectories(folder.resolve("disk"));
    run(folder, "debugfs", "-R", "rdump " + name + " " + to, file.toString());
    Path taken = to.resolve(String.valueOf(Path.of(name).getFileName()));
    if (!Files.isDirectory(taken)) {
      return List.of();
    }
    try (Stream<Path> files = Files.list(taken)) {
      return files.sorted().toList();
    }
  }

  Path file() {
    return file;
  }

  /** The folder it is in, for whatever else belongs to the machine. */
  Path folder() {
    return folder;
  }

  private static void run(Path folder, String... words) throws IOException {
    List<String> all = new ArrayList<>(List.of(words));
    Process process =
        new ProcessBuilder(all)
            .redirectErrorStream(true)
            .redirectOutput(ProcessBuilder.Redirect.appendTo(folder.resolve("disk.txt").toFile()))
            .start();
    try {
      int code = process.waitFor();
      // e2fsck: 1 is "errors corrected", which a cut power may leave.
      if (code > (words[0].equals("e2fsck") ? 1 : 0)) {
        throw new IOException(
            String.join(" ", words) + " ended with " + code + ", see " + folder + "/disk.txt");
      }
    } catch (InterruptedException e) {
      Thread.currentThread().interrupt();
      throw new IOException("interrupted", e);
    }
  }
}
