package org.boostwright.pi.io;

import java.io.IOException;

/** An analogue-to-digital converter chip. */
public interface Converter extends AutoCloseable {
  /**
   * Proves that the expected chip is there.
   *
   * @throws IOException with words for people when it is not
   */
  void check() throws IOException;

  /**
   * Converts one input and waits for it.
   *
   * @param input input of the chip, from 0
   * @return volts at the chip's pin
   * @throws IOException when the chip does not answer, or not as it should
   */
  double convert(int input) throws IOException;

  /** Longest time of one {@link #convert} on a healthy bus, transfers included, ns. */
  long convertNanos();

  /** Smallest step, V. */
  double stepVolts();

  @Override
  void close();
}
