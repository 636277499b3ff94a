package org.boostwright.pi.io;

import java.io.IOException;

/** One digital input whose rising edges the kernel times. */
public interface EdgeLine extends AutoCloseable {
  /** Returned by {@link #await} when no edge came. */
  long NONE = Long.MIN_VALUE;

  /**
   * Waits for the next rising edge.
   *
   * @param nanos longest wait, ns
   * @return when it happened, on the clock of {@link Clock}, ns; {@link #NONE} when none came
   */
  long await(long nanos) throws IOException;

  @Override
  void close();
}
