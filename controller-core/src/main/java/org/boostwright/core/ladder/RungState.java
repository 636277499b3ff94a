package org.boostwright.core.ladder;

import org.jspecify.annotations.Nullable;

/**
 * Where one rung stands.
 *
 * @param rung the rung
 * @param status whether it holds
 * @param words why, for people
 * @param entry the entry it rests on, or that once proved it; null when there is none
 */
public record RungState(Rung rung, Status status, String words, @Nullable Entry entry) {
  /** Whether a rung holds. */
  public enum Status {
    /** Proven for exactly these settings. */
    PROVEN,
    /** Skipped by a person in words, for exactly these settings. */
    SKIPPED,
    /** Never proven. */
    MISSING,
    /** Was proven, but something it depends on changed. */
    VOID
  }

  /** True when the next rung may be climbed. */
  public boolean holds() {
    return status == Status.PROVEN || status == Status.SKIPPED;
  }
}
