package org.boostwright.core.bench.model;

/**
 * A fixed sequence of numbers that looks random (SplitMix64: Steele, Lea and Flood, OOPSLA 2014),
 * for numerical integration: the same readings always give the same answer.
 */
final class FixedSequence {
  private long state = 0x9E3779B97F4A7C15L;

  /** Next number, 0 inclusive to 1 exclusive. */
  double uniform() {
    state += 0x9E3779B97F4A7C15L;
    long z = state;
    z = (z ^ (z >>> 30)) * 0xBF58476D1CE4E5B9L;
    z = (z ^ (z >>> 27)) * 0x94D049BB133111EBL;
    return ((z ^ (z >>> 31)) >>> 11) * 0x1.0p-53;
  }

  /** Next standard normal number (Box and Muller 1958). */
  double normal() {
    double radius = Math.sqrt(-2.0 * Math.log(1.0 - uniform()));
    return radius * Math.cos(2.0 * Math.PI * uniform());
  }
}
