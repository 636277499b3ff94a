package org.boostwright.core.bench;

import org.jspecify.annotations.Nullable;

/**
 * What the last action of a routine brought.
 *
 * @param reading after driving
 * @param trace after driving, every sample of it
 * @param answer after a question; NaN when the person does not know
 */
record Outcome(@Nullable Reading reading, @Nullable LineTrace trace, double answer) {
  static final Outcome NONE = new Outcome(null, null, Double.NaN);

  static Outcome answered(double answer) {
    return new Outcome(null, null, answer);
  }

  Reading driven() {
    if (reading == null) {
      throw new IllegalStateException("no reading");
    }
    return reading;
  }

  LineTrace line() {
    if (trace == null) {
      throw new IllegalStateException("no trace");
    }
    return trace;
  }
}
