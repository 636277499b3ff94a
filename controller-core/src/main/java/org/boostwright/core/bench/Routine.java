package org.boostwright.core.bench;

import org.jspecify.annotations.Nullable;

/** A bench procedure as a sequence of actions, each chosen when the last one's outcome is known. */
interface Routine {
  /** Which step this is. */
  BenchStep step();

  /**
   * The next action, null when the routine is done.
   *
   * @param record where results are kept
   * @param last outcome of the last action; {@link Outcome#NONE} the first time
   */
  @Nullable Action next(BenchRecord record, Outcome last);
}
