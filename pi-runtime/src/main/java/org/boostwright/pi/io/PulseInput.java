package org.boostwright.pi.io;

import org.boostwright.core.Inputs;

/** Engine-speed and road-speed pulses with their times. */
public interface PulseInput extends AutoCloseable {
  /** Writes period and time of the newest pulses; leaves both as they were when none came. */
  void read(Inputs inputs);

  @Override
  void close();
}
