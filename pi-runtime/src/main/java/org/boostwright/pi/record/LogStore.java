package org.boostwright.pi.record;

import java.io.IOException;
import java.nio.ByteBuffer;
import java.util.List;

/** Where recordings are kept; a folder on the Pi, something that fails on demand in tests. */
public interface LogStore {
  /**
   * One recording there is.
   *
   * @param name file name
   * @param number counts up with each recording
   * @param bytes its size
   */
  record Entry(String name, long number, long bytes) {}

  /** A recording being written. */
  interface Sink extends AutoCloseable {
    /** Writes all bytes. */
    void write(ByteBuffer bytes) throws IOException;

    /** Makes what was written survive a power cut. */
    void force() throws IOException;

    @Override
    void close() throws IOException;
  }

  /** All recordings, oldest first. */
  List<Entry> list() throws IOException;

  /** Begins a recording. */
  Sink create(String name) throws IOException;

  /** Deletes a recording. */
  void delete(String name) throws IOException;

  /** Room left for recordings, bytes. */
  long freeBytes() throws IOException;
}
