package org.boostwright.core.monitor;

/** What a confirmed fault does, least severe first; the most severe active one wins. */
public enum Reaction {
  /** Shown and recorded only. */
  REPORT,
  /** A stated substitute value is used; shown and recorded. */
  SUBSTITUTE,
  /** The pressure feedback is frozen out: base duty only. */
  NO_TRIM,
  /** Rest in the same tick, until the clear rule is met. */
  REST,
  /** Rest in the same tick, until the key has been off. */
  LOCK
}
