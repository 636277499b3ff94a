package org.boostwright.core.bench.model;

/**
 * Chooses the frequency and duty whose reading would tell most about the two edges of the window:
 * the valves of the cloud are sorted into bins by the reading each expects, and the setting is taken
 * that leaves least spread of t_on and t_off within the bins.
 */
public final class NextReading {
  private static final double[] HERTZ = {25.0, 40.0, 55.0};
  private static final double DUTY_STEP = 0.03;
  private static final int STEPS = 33;
  private static final int BINS = 60;

  private NextReading() {}

  /**
   * A setting to read at.
   *
   * @param frequencyHz PWM frequency, Hz
   * @param dutyFraction duty
   */
  public record Setting(double frequencyHz, double dutyFraction) {}

  /**
   * @param posterior what is known
   * @param resolutionKpa smallest step the person can read, kPa
   */
  public static Setting choose(ReadingsPosterior posterior, double resolutionKpa) {
    double[] weights = posterior.weights();
    Setting best = new Setting(HERTZ[1], 0.5);
    double least = Double.POSITIVE_INFINITY;
    for (double hz : HERTZ) {
      for (int i = 1; i < STEPS; i++) {
        Setting setting = new Setting(hz, i * DUTY_STEP);
        double left = spreadLeft(posterior, weights, setting, resolutionKpa);
        if (left < least) {
          least = left;
          best = setting;
        }
      }
    }
    return best;
  }

  /** Expected squared deviation of t_on plus t_off once this setting has been read, ms2. */
  private static double spreadLeft(
      ReadingsPosterior posterior, double[] weights, Setting setting, double resolutionKpa) {
    double gauge = posterior.supplyKpaAbs() - posterior.ambientKpaAbs();
    double[] w = new double[BINS + 1];
    double[] on = new double[BINS + 1];
    double[] on2 = new double[BINS + 1];
    double[] off = new double[BINS + 1];
    double[] off2 = new double[BINS + 1];
    for (int i = 0; i < posterior.size(); i++) {
      ValveModel valve = posterior.valve(i);
      SteadyLine line =
          valve.steady(
              setting.frequencyHz(),
              setting.dutyFraction(),
              posterior.supplyKpaAbs(),
              posterior.ambientKpaAbs());
      double sigma = posterior.sigmaKpa(line, resolutionKpa);
      double width = Math.max(gauge / BINS, 2.0 * sigma);
      double p = line.meanKpaAbs() - posterior.ambientKpaAbs();
      // Centre of the reading's own width, so that what cannot be told apart shares a bin.
      double centre = (Math.floor(p / width) + 0.5) * width;
      int bin = (int) Math.max(0, Math.min(BINS, centre / gauge * BINS));
      double a = valve.onDelaySeconds() * 1e3;
      double b = valve.offDelaySeconds() * 1e3;
      w[bin] += weights[i];
      on[bin] += weights[i] * a;
      on2[bin] += weights[i] * a * a;
      off[bin] += weights[i] * b;
      off2[bin] += weights[i] * b * b;
    }
    double left = 0.0;
    for (int bin = 0; bin <= BINS; bin++) {
      if (w[bin] > 0.0) {
        left += on2[bin] - on[bin] * on[bin] / w[bin] + off2[bin] - off[bin] * off[bin] / w[bin];
      }
    }
    return left;
  }
}
