package org.boostwright.pi.io;

import java.io.IOException;

/** One digital input. */
public interface InputLine extends AutoCloseable {
  /** Level of the line. */
  boolean get() throws IOException;

  @Override
  void close();
}
