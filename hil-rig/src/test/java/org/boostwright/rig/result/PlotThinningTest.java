package org.boostwright.rig.result;

import static org.assertj.core.api.Assertions.assertThat;

import java.util.List;
import java.util.Random;
import org.boostwright.rig.result.Plot.Stroke;
import org.junit.jupiter.api.Test;

class PlotThinningTest {
  private static final int PLACES = 720_000;

  private static Plot plot(double[]... lines) {
    double[] x = new double[lines[0].length];
    for (int i = 0; i < x.length; i++) {
      x[i] = i * 0.005;
    }
    List<Plot.Line> all = new java.util.ArrayList<>();
    for (double[] y : lines) {
      all.add(new Plot.Line("l" + all.size(), "l", Units.KPA, Stroke.SOLID, y));
    }
    return new Plot("p", "p", "time", Units.SECONDS, x, all, List.of(), List.of());
  }

  private static double[] noise(long seed) {
    Random random = new Random(seed);
    double[] y = new double[PLACES];
    for (int i = 0; i < PLACES; i++) {
      y[i] = 150 + 20 * Math.sin(i * 1e-4) + random.nextGaussian();
    }
    return y;
  }

  @Test
  void anHourKeepsEverySpikeOfOneSampleAtItsOwnPlace() {
    double[] a = noise(1);
    double[] b = noise(2);
    Random random = new Random(3);
    int[] spikes = random.ints(200, 0, PLACES).sorted().distinct().toArray();
    for (int k = 0; k < spikes.length; k++) {
      (k % 2 == 0 ? a : b)[spikes[k]] = k % 4 < 2 ? 400 + k : -400 - k;
    }
    Plot thin = PlotThinning.thin(plot(a, b));
    assertThat(thin.x().length).isBetween(8_000, 60_000);
    for (int k = 0; k < spikes.length; k++) {
      int at = java.util.Arrays.binarySearch(thin.x(), spikes[k] * 0.005);
      assertThat(at).as("spike %d", k).isNotNegative();
      assertThat(thin.lines().get(k % 2).y()[at])
          .isEqualTo((k % 2 == 0 ? a : b)[spikes[k]]);
    }
  }

  /** Reference: the extremes found the plain way, stretch by stretch. */
  @Test
  void everyStretchKeepsItsLowestAndHighestValue() {
    double[] y = noise(4);
    Plot thin = PlotThinning.thin(plot(y), 1_000);
    double[] kept = thin.lines().get(0).y();
    int k = 0;
    for (int s = 0; s < 1_000; s++) {
      double low = Double.MAX_VALUE;
      double high = -Double.MAX_VALUE;
      for (int i = s * 720; i < (s + 1) * 720; i++) {
        low = Math.min(low, y[i]);
        high = Math.max(high, y[i]);
      }
      double keptLow = Double.MAX_VALUE;
      double keptHigh = -Double.MAX_VALUE;
      for (; k < kept.length && thin.x()[k] < (s + 1) * 720 * 0.005 - 1e-6; k++) {
        keptLow = Math.min(keptLow, kept[k]);
        keptHigh = Math.max(keptHigh, kept[k]);
      }
      assertThat(keptLow).isEqualTo(low);
      assertThat(keptHigh).isEqualTo(high);
    }
  }

  @Test
  void gapsStayWhereTheyWere() {
    double[] y = noise(5);
    java.util.Arrays.fill(y, 100_000, 300_001, Double.NaN);
    Plot thin = PlotThinning.thin(plot(y));
    double[] kept = thin.lines().get(0).y();
    int first = java.util.Arrays.binarySearch(thin.x(), 100_000 * 0.005);
    int last = java.util.Arrays.binarySearch(thin.x(), 300_000 * 0.005);
    assertThat(kept[first]).isNaN();
    assertThat(kept[first - 1]).isEqualTo(y[99_999]);
    assertThat(kept[last]).isNaN();
    assertThat(kept[last + 1]).isEqualTo(y[300_001]);
  }

  @Test
  void shortPlotStaysTheSame() {
    Plot plot = plot(new double[] {1, 5, 2});
    assertThat(PlotThinning.thin(plot)).isSameAs(plot);
  }
}
