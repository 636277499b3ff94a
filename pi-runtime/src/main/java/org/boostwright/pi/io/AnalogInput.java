package org.boostwright.pi.io;

import org.boostwright.core.Inputs;

/** Converter channels: reads what is due in this tick within a bounded time. */
public interface AnalogInput extends AutoCloseable {
  /**
   * Writes volts, sample time and answered for every channel that was converted since the last
   * call. A converter that does not answer within its budget leaves {@code answered} false; an old
   * value is never marked as new.
   *
   * @param nowNanos time of this tick
   * @param inputs written into
   */
  void read(long nowNanos, Inputs inputs);

  @Override
  void close();
}
