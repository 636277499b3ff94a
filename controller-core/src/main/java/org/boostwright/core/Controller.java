package org.boostwright.core;

import org.boostwright.core.settings.Settings;

/**
 * The controller: one call per tick, the same class on the car, in the rig, over the link and in
 * replay.
 *
 * <p>No clock, thread, file, log or random number inside; no allocation after construction.
 */
public final class Controller {
  /** Control tick, ns (200 Hz). */
  public static final long TICK_NANOS = 5_000_000L;

  private final Settings settings;

  /** Builds a controller at rest. */
  public Controller(Settings settings) {
    this.settings = settings;
  }

  /** Settings this controller was built with. */
  public Settings settings() {
    return settings;
  }

  /**
   * One tick. Whatever goes wrong inside, the hardware commands are at rest before anything else
   * happens.
   *
   * @param nowNanos time of this tick on the clock of the inputs, ns
   * @param inputs what was read for this tick; not changed
   * @param outputs overwritten whole
   */
  public void step(long nowNanos, Inputs inputs, Outputs outputs) {
    outputs.rest();
  }
}
