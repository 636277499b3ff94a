package org.boostwright.rig.plant;

/**
 * Seeded noise that is the same on every machine: SplitMix64 (Steele, Lea and Flood, OOPSLA 2014)
 * and Marsaglia's polar method with strict mathematics. Allocates nothing.
 */
final class Noise {
  private long state;
  private double spare;
  private boolean hasSpare;

  Noise(long seed) {
    state = seed;
  }

  /** Uniform, 0 to below 1. */
  double uniform() {
    state += 0x9E3779B97F4A7C15L;
    long z = state;
    z = (z ^ (z >>> 30)) * 0xBF58476D1CE4E5B9L;
    z = (z ^ (z >>> 27)) * 0x94D049BB133111EBL;
    return ((z ^ (z >>> 31)) >>> 11) * 0x1.0p-53;
  }

  /** Normal, mean 0 and standard deviation 1. */
  double gaussian() {
    if (hasSpare) {
      hasSpare = false;
      return spare;
    }
    double x;
    double y;
    double square;
    do {
      x = 2.0 * uniform() - 1.0;
      y = 2.0 * uniform() - 1.0;
      square = x * x + y * y;
    } while (square >= 1.0 || square == 0.0);
    double scale = Math.sqrt(-2.0 * StrictMath.log(square) / square);
    spare = y * scale;
    hasSpare = true;
    return x * scale;
  }
}
