package org.boostwright.pi.record;

import java.io.IOException;
import java.nio.ByteBuffer;
import java.nio.channels.FileChannel;
import java.nio.file.DirectoryStream;
import java.nio.file.Files;
import java.nio.file.Path;
import java.nio.file.StandardOpenOption;
import java.util.ArrayList;
import java.util.Comparator;
import java.util.List;
import java.util.regex.Matcher;
import java.util.regex.Pattern;

/** Recordings as files {@code drive-000001.csv} and so on in one folder. */
public final class FolderStore implements LogStore {
  private static final Pattern NAME = Pattern.compile("drive-(\\d{6,12})\\.csv");

  private final Path folder;

  /** Keeps recordings in a folder, which is made when it does not exist. */
  public FolderStore(Path folder) {
    this.folder = folder;
  }

  /** Name of the recording of a number. */
  static String name(long number) {
    return String.format("drive-%06d.csv", number);
  }

  @Override
  public List<Entry> list() throws IOException {
    Files.createDirectories(folder);
    List<Entry> entries = new ArrayList<>();
    try (DirectoryStream<Path> files = Files.newDirectoryStream(folder, "drive-*.csv")) {
      for (Path file : files) {
        String name = String.valueOf(file.getFileName());
        Matcher matcher = NAME.matcher(name);
        if (matcher.matches()) {
          entries.add(new Entry(name, Long.parseLong(matcher.group(1)), Files.size(file)));
        }
      }
    }
    entries.sort(Comparator.comparingLong(Entry::number));
    return entries;
  }

  @Override
  public Sink create(String name) throws IOException {
    Files.createDirectories(folder);
    FileChannel channel =
        FileChannel.open(
            folder.resolve(name), StandardOpenOption.CREATE_NEW, StandardOpenOption.WRITE);
    return new Sink() {
      @Override
      public void write(ByteBuffer bytes) throws IOException {
        while (bytes.hasRemaining()) {
          channel.write(bytes);
        }
      }

      @Override
      public void force() throws IOException {
        channel.force(false);
      }

      @Override
      public void close() throws IOException {
        channel.close();
      }
    };
  }

  @Override
  public void delete(String name) throws IOException {
    Files.deleteIfExists(folder.resolve(name));
  }

  @Override
  public long freeBytes() throws IOException {
    Files.createDirectories(folder);
    return Files.getFileStore(folder).getUsableSpace();
  }
}
