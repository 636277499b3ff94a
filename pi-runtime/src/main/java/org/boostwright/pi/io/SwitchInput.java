package org.boostwright.pi.io;

import org.boostwright.core.Inputs;

/** Key, permit, selector, spring-only and coil-feedback inputs, as far as they are wired. */
public interface SwitchInput extends AutoCloseable {
  /** Writes the position of every wired switch; a switch that cannot be read reads as open. */
  void read(Inputs inputs);

  @Override
  void close();
}
