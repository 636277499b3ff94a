package org.boostwright.core.bench.model;

/**
 * Chooses the frequency and duty whose reading would tell most about the edges of the window and
 * the speed of the line, on which the frequency advice hangs: valves of the cloud are sorted into
 * bins by the reading each expects, and the setting is taken that leaves least spread within the
 * bins. An edge is a delay times the frequency, so delays count by the frequency that would be
 * advised by now.
 */
public final class NextReading {
  private static final double[] HERTZ = {16.0, 30.0, 44.0, 58.0};
  private static final double DUTY_STEP = 0.04;
  private static final int STEPS = 25;
  private static final int BINS = 60;
  private static final int EVERY = 3;
  // At 30 Hz one millisecond of a delay is worth as much as a factor of 1.6 in the line's speed.
  private static final double SPEED_WEIGHT = 4.0;
  private static final double USUAL_HZ = 30.0;

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
   * @param rippleLimitKpa largest ripple accepted, kPa
   */
  public static Setting choose(
      ReadingsPosterior posterior, double resolutionKpa, double rippleLimitKpa) {
    double[] weights = posterior.weights();
    double advisedHz = ValveAdvice.recommend(posterior.result(), rippleLimitKpa).frequencyHz();
    double faster = Math.max(1.0, advisedHz / USUAL_HZ);
    Setting best = new Setting(HERTZ[1], 0.5);
    double least = Double.POSITIVE_INFINITY;
    for (double hz : HERTZ) {
      for (int i = 1; i < STEPS; i++) {
        Setting setting = new Setting(hz, i * DUTY_STEP);
        double left = spreadLeft(posterior, weights, setting, resolutionKpa, faster * faster);
        if (left < least) {
          least = left;
          best = setting;
        }
      }
    }
    return best;
  }

  /** Expected squared deviations once this setting has been read, in ms2 at 30 Hz. */
  private static double spreadLeft(
      ReadingsPosterior posterior,
      double[] weights,
      Setting setting,
      double resolutionKpa,
      double delayWeight) {
    double gauge = posterior.supplyKpaAbs() - posterior.ambientKpaAbs();
    double[] w = new double[BINS + 1];
    double[] on = new double[BINS + 1];
    double[] on2 = new double[BINS + 1];
    double[] off = new double[BINS + 1];
    double[] off2 = new double[BINS + 1];
    double[] speed = new double[BINS + 1];
    double[] speed2 = new double[BINS + 1];
    for (int i = 0; i < posterior.size(); i += EVERY) {
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
      double c = Math.log(valve.fillRatePerSecond());
      speed[bin] += weights[i] * c;
      speed2[bin] += weights[i] * c * c;
    }
    double left = 0.0;
    for (int bin = 0; bin <= BINS; bin++) {
      if (w[bin] > 0.0) {
        left += delayWeight * within(w[bin], on[bin], on2[bin]);
        left += delayWeight * within(w[bin], off[bin], off2[bin]);
        left += SPEED_WEIGHT * within(w[bin], speed[bin], speed2[bin]);
      }
    }
    return left;
  }

  private static double within(double weight, double sum, double squares) {
    return squares - sum * sum / weight;
  }
}
