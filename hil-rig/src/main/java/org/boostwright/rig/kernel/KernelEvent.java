package org.boostwright.rig.kernel;

import org.jspecify.annotations.Nullable;

/**
 * Something a driver of the bench was told by the kernel.
 *
 * @param kind what
 * @param number PWM channel or GPIO line
 * @param flags PWM: bit 0 enabled, bit 1 inverted; lines: level
 * @param nanos when, CLOCK_MONOTONIC of the guest, ns
 * @param periodNanos PWM only, ns
 * @param dutyNanos PWM only, ns
 */
record KernelEvent(Kind kind, int number, int flags, long nanos, long periodNanos, long dutyNanos) {

  /** Kinds, with the numbers of {@code bwbench.h}. */
  enum Kind {
    PWM_APPLY(1),
    PWM_REFUSED(2),
    LINE_SET(3),
    LINE_REQUEST(4),
    LINE_FREE(5),
    LINE_OUTPUT(6);

    private final int wire;

    Kind(int wire) {
      this.wire = wire;
    }

    static @Nullable Kind of(int wire) {
      for (Kind kind : values()) {
        if (kind.wire == wire) {
          return kind;
        }
      }
      return null;
    }
  }

  /** PWM: the channel runs. Lines: the level is high. */
  boolean on() {
    return (flags & 1) != 0;
  }

  /** PWM: the coil would be energised at duty 0. */
  boolean inverted() {
    return (flags & 2) != 0;
  }
}
