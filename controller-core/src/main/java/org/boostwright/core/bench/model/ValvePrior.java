package org.boostwright.core.bench.model;

/**
 * What is believed about a valve and its line before the first reading: five independent numbers,
 * each uniform or normal in a wide range.
 *
 * <p>t_on 1 to 8 ms, t_off 2 to 18 ms, filling rate 1 to 150 1/s (uniform in its logarithm),
 * venting over filling around 1 (factor 1.35 either way), critical ratio 0.2 to 0.5. Project
 * assumption, wider than the valves the bench is meant for.
 */
final class ValvePrior {
  static final int SIZE = 5;

  private static final double[] LOW = {1.0, 2.0, 0.0, -1.2, 0.15};
  private static final double[] HIGH = {8.0, 18.0, Math.log(150.0), 1.2, 0.55};
  private static final double RATIO_SIGMA = 0.3;

  private ValvePrior() {}

  static void draw(FixedSequence sequence, double[] x) {
    for (int i = 0; i < SIZE; i++) {
      x[i] = LOW[i] + (HIGH[i] - LOW[i]) * sequence.uniform();
    }
    do {
      x[3] = RATIO_SIGMA * sequence.normal();
    } while (!(Math.abs(x[3]) < HIGH[3]));
  }

  /** Logarithm of the density up to a constant; minus infinity outside. */
  static double logDensity(double[] x) {
    for (int i = 0; i < SIZE; i++) {
      if (!(x[i] >= LOW[i] && x[i] <= HIGH[i])) {
        return Double.NEGATIVE_INFINITY;
      }
    }
    double z = x[3] / RATIO_SIGMA;
    return -0.5 * z * z;
  }

  static ValveModel valve(double[] x) {
    double fill = Math.exp(x[2]);
    return new ValveModel(x[0] * 1e-3, x[1] * 1e-3, fill, fill * Math.exp(x[3]), 0.0, x[4]);
  }
}
