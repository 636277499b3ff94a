package org.boostwright.core.signal;

/** What a channel's value is worth in this tick. */
public enum SignalStatus {
  /** Fresh enough, in range and plausible by itself. */
  VALID,
  /** The newest sample was set aside; the value is the last accepted one. */
  SUSPECT,
  /** Out of range, not a number, or not answered. */
  INVALID,
  /** No sample within three of the channel's periods. */
  STALE
}
