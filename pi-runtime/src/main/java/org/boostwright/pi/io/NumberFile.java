package org.boostwright.pi.io;

import java.io.IOException;
import java.nio.file.Path;

/** A file that holds one whole number, kept open; how sysfs shows a setting. */
interface NumberFile extends AutoCloseable {
  /** Opens such files. */
  interface Opener {
    NumberFile open(Path path) throws IOException;
  }

  /** Writes a number that is not negative in a single write. */
  void write(long number) throws IOException;

  /** Reads the number; -1 when there is none. */
  long read() throws IOException;

  @Override
  void close();
}
