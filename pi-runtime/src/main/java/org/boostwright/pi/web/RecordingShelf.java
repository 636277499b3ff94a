package org.boostwright.pi.web;

import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.LinkOption;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.Comparator;
import java.util.List;
import java.util.Optional;
import java.util.regex.Pattern;
import java.util.stream.Stream;

/** The recordings that may be taken away: plain files straight in one folder, nothing else. */
final class RecordingShelf {
  private static final Pattern NAME = Pattern.compile("[A-Za-z0-9][A-Za-z0-9._-]{0,80}\\.csv");
  private static final int MOST = 200;

  /**
   * One recording.
   *
   * @param name file name
   * @param bytes its size
   */
  record Item(String name, long bytes) {}

  private final Path folder;

  RecordingShelf(Path folder) {
    this.folder = folder;
  }

  /** The newest recordings, newest first. */
  List<Item> list() throws IOException {
    if (!Files.isDirectory(folder)) {
      return List.of();
    }
    List<Item> items = new ArrayList<>();
    try (Stream<Path> files = Files.list(folder)) {
      for (Path file : files.sorted(Comparator.reverseOrder()).limit(MOST).toList()) {
        Optional<Path> known = file(String.valueOf(file.getFileName()));
        if (known.isPresent()) {
          items.add(new Item(String.valueOf(file.getFileName()), Files.size(known.get())));
        }
      }
    }
    return items;
  }

  /** The file of that name; empty for anything that is not a recording. Links are not followed. */
  Optional<Path> file(String name) {
    if (!NAME.matcher(name).matches()) {
      return Optional.empty();
    }
    Path file = folder.resolve(name);
    return Files.isRegularFile(file, LinkOption.NOFOLLOW_LINKS)
        ? Optional.of(file)
        : Optional.empty();
  }
}
