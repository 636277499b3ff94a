package org.boostwright.pi.io;

import java.io.IOException;

/** One digital output. Low when opened and when closed. */
public interface OutputLine extends AutoCloseable {
  /** Sets the level. */
  void set(boolean high) throws IOException;

  /** Level read back from the line. */
  boolean get() throws IOException;

  @Override
  void close();
}
