package org.boostwright.pi.io;

/** One digital output: engine-cut request or lamp. Off at start and after close. */
public interface SignalOutput extends AutoCloseable {
  /** Switches the output. */
  void on(boolean on);

  @Override
  void close();
}
