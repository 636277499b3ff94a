package org.boostwright.rig.logs.identify;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import java.util.Random;
import org.junit.jupiter.api.Test;

/** Identification on made-up first-order answers with noise. */
class FopdtFitTest {
  private static final boolean FULL = Boolean.getBoolean("boostwright.logs.full");
  /** Of the virtual car's pressure sensor, assumption A-06. */
  private static final double SENSOR_NOISE_KPA = 0.3;

  private static final Fopdt TRUE = new Fopdt(2.0, 1.2, 0.3);

  private static double[] times(int n, double step) {
    double[] seconds = new double[n];
    for (int i = 0; i < n; i++) {
      seconds[i] = i * step;
    }
    return seconds;
  }

  private static double[] ones(int n) {
    double[] input = new double[n];
    java.util.Arrays.fill(input, 1.0);
    return input;
  }

  @Test
  void answerIsTheTextbookExponential() {
    double[] seconds = times(1001, 0.01);
    double[] y = TRUE.answer(seconds, ones(1001));
    for (int i = 0; i < y.length; i++) {
      double expected =
          seconds[i] <= 0.3 ? 0.0 : 2.0 * (1.0 - Math.exp(-(seconds[i] - 0.3) / 1.2));
      assertThat(y[i]).isCloseTo(expected, within(1e-9));
    }
  }

  /** K 2, T 1.2, L 0.3: crossings 0.6992 and 1.4996 s give 1.2006 and 0.2990 (own computation). */
  @Test
  void twoPointMethodGivesTheTextbookNumbers() {
    double[] seconds = times(20_001, 0.001);
    double[] y = TRUE.answer(seconds, ones(20_001));
    Fopdt found = FopdtFit.twoPoint(seconds, y, 1.0, 2.0);
    assertThat(found.tauSeconds()).isCloseTo(1.2006, within(0.0002));
    assertThat(found.deadSeconds()).isCloseTo(0.2990, within(0.0002));
  }

  @Test
  void leastSquaresFindsNoisyParametersAndItsIntervalsHoldThem() {
    int draws = FULL ? 1000 : 40;
    int covered = 0;
    int asked = 0;
    double worst = 0.0;
    for (int seed = 0; seed < draws; seed++) {
      Random random = new Random(seed);
      Fopdt truth =
          new Fopdt(
              100.0 + 150.0 * random.nextDouble(),
              0.3 + 0.9 * random.nextDouble(),
              0.1 + 0.2 * random.nextDouble());
      double[] seconds = times(2400, 0.005);
      double[] input = new double[2400];
      for (int i = 0; i < input.length; i++) {
        input[i] = (i / 600) % 2 == 0 ? 0.05 : -0.05;
      }
      double[] y = truth.answer(seconds, input);
      for (int i = 0; i < y.length; i++) {
        y[i] += 180.0 + SENSOR_NOISE_KPA * random.nextGaussian();
      }
      FopdtEstimate found =
          FopdtFit.leastSquares(seconds, input, y, new Fopdt(150.0, 0.7, 0.1));
      double[] errors = {
        found.model().gain() - truth.gain(),
        found.model().tauSeconds() - truth.tauSeconds(),
        found.model().deadSeconds() - truth.deadSeconds()
      };
      double[] halves = {found.gainHalf(), found.tauHalf(), found.deadHalf()};
      double[] values = {truth.gain(), truth.tauSeconds(), truth.deadSeconds()};
      for (int i = 0; i < 3; i++) {
        asked++;
        covered += Math.abs(errors[i]) <= halves[i] ? 1 : 0;
        worst = Math.max(worst, Math.abs(errors[i]) / values[i]);
      }
      assertThat(found.sure()).isTrue();
    }
    System.out.printf(
        "first-order fits: %d of %d intervals hold the truth, worst parameter off %.2f %%%n",
        covered, asked, 100.0 * worst);
    assertThat((double) covered / asked).isGreaterThanOrEqualTo(0.90);
    assertThat(worst).isLessThanOrEqualTo(0.05);
  }
}
