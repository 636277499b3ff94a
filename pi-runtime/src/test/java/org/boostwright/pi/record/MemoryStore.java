package org.boostwright.pi.record;

import java.io.ByteArrayOutputStream;
import java.io.IOException;
import java.nio.ByteBuffer;
import java.util.ArrayList;
import java.util.List;
import java.util.Map;
import java.util.TreeMap;

/** A disk of a given size in memory, that fills up and fails on demand. */
final class MemoryStore implements LogStore {
  final Map<String, ByteArrayOutputStream> files = new TreeMap<>();
  final List<String> deleted = new ArrayList<>();
  long diskBytes = Long.MAX_VALUE;
  boolean createFails;
  int forces;
  private int names;

  private long used() {
    return files.values().stream().mapToLong(ByteArrayOutputStream::size).sum();
  }

  String text(String name) {
    return files.get(name).toString(java.nio.charset.StandardCharsets.US_ASCII);
  }

  @Override
  public List<Entry> list() {
    List<Entry> entries = new ArrayList<>();
    files.forEach(
        (name, bytes) ->
            entries.add(new Entry(name, Long.parseLong(name.substring(6, 12)), bytes.size())));
    return entries;
  }

  @Override
  public Sink create(String name) throws IOException {
    if (createFails) {
      throw new IOException("read-only file system");
    }
    names++;
    ByteArrayOutputStream file = new ByteArrayOutputStream();
    files.put(name, file);
    return new Sink() {
      @Override
      public void write(ByteBuffer bytes) throws IOException {
        while (bytes.hasRemaining()) {
          if (used() >= diskBytes) {
            throw new IOException("no space left on device");
          }
          file.write(bytes.get());
        }
      }

      @Override
      public void force() {
        forces++;
      }

      @Override
      public void close() {}
    };
  }

  @Override
  public void delete(String name) {
    files.remove(name);
    deleted.add(name);
  }

  @Override
  public long freeBytes() {
    return diskBytes == Long.MAX_VALUE ? Long.MAX_VALUE : Math.max(0L, diskBytes - used());
  }
}
