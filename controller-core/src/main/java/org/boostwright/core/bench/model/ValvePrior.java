package org.boostwright.core.bench.model;

/**
 * What is believed about a valve and its line before the first reading: five independent numbers,
 * each uniform or normal in a wide range.
 *
 * <p>t_on 1 to 8 ms, t_off 2 to 18 ms and critical ratio 0.15 to 0.55, uniform; filling rate 14 1/s
 * within a factor of 2.2 either way, which is what C from 0.3 to 2e-8 m3/(s Pa) on 20 to 150 cm3
 * gives; venting over filling 1 within a factor of 1.35. Project assumption.
 */
final class ValvePrior {
  static final int SIZE = 5;

  private static final double[] LOW = {1.0, 2.0, Math.log(1.5), -1.2, 0.15};
  private static final double[] HIGH = {8.0, 18.0, Math.log(120.0), 1.2, 0.55};
  private static final double RATIO_SIGMA = 0.3;
  private static final double SPEED = Math.log(14.0);
  private static final double SPEED_SIGMA = 0.8;

  private ValvePrior() {}

  static void draw(FixedSequence sequence, double[] x) {
    for (int i = 0; i < SIZE; i++) {
      x[i] = LOW[i] + (HIGH[i] - LOW[i]) * sequence.uniform();
    }
    do {
      x[3] = RATIO_SIGMA * sequence.normal();
    } while (!(Math.abs(x[3]) < HIGH[3]));
    do {
      x[2] = SPEED + SPEED_SIGMA * sequence.normal();
    } while (!(x[2] > LOW[2] && x[2] < HIGH[2]));
  }

  /** Logarithm of the density up to a constant; minus infinity outside. */
  static double logDensity(double[] x) {
    for (int i = 0; i < SIZE; i++) {
      if (!(x[i] >= LOW[i] && x[i] <= HIGH[i])) {
        return Double.NEGATIVE_INFINITY;
      }
    }
    double ratio = x[3] / RATIO_SIGMA;
    double speed = (x[2] - SPEED) / SPEED_SIGMA;
    return -0.5 * (ratio * ratio + speed * speed);
  }

  static ValveModel valve(double[] x) {
    double fill = Math.exp(x[2]);
    return new ValveModel(x[0] * 1e-3, x[1] * 1e-3, fill, fill * Math.exp(x[3]), 0.0, x[4]);
  }
}
