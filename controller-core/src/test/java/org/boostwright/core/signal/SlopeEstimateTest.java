package org.boostwright.core.signal;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import java.util.Random;
import org.junit.jupiter.api.Test;

/** Least squares against ramps, a formula of another form and the textbook's noise. */
class SlopeEstimateTest {
  private static final long TICK = 5_000_000L;

  @Test
  void fewerThanTwoSamplesHaveNoSlope() {
    SlopeEstimate slope = new SlopeEstimate(4);
    assertThat(slope.perSecond()).isZero();
    slope.add(50.0, 0L);
    assertThat(slope.perSecond()).isZero();
  }

  @Test
  void twoSamplesAtOneTimeHaveNoSlope() {
    SlopeEstimate slope = new SlopeEstimate(4);
    slope.add(50.0, TICK);
    slope.add(60.0, TICK);
    assertThat(slope.perSecond()).isZero();
  }

  @Test
  void aRampAtUnevenSpacingIsExact() {
    SlopeEstimate slope = new SlopeEstimate(12);
    Random random = new Random(1);
    long t = 0L;
    for (int i = 0; i < 40; i++) {
      t += 1_000_000L + random.nextInt(9_000_000);
      slope.add(100.0 - 250.0 * t * 1e-9, t);
      if (i > 0) {
        assertThat(slope.perSecond()).isCloseTo(-250.0, within(1e-6));
      }
    }
  }

  @Test
  void onlyTheLastSamplesCount() {
    SlopeEstimate slope = new SlopeEstimate(3);
    slope.add(1e6, 0L);
    slope.add(-1e6, TICK);
    for (int i = 2; i < 5; i++) {
      slope.add(10.0 * i, i * TICK);
    }
    assertThat(slope.perSecond()).isCloseTo(2_000.0, within(1e-6));
  }

  @Test
  void itEqualsTheNormalEquations() {
    SlopeEstimate slope = new SlopeEstimate(12);
    Random random = new Random(2);
    double[] t = new double[12];
    double[] x = new double[12];
    for (int i = 0; i < 12; i++) {
      t[i] = i * 0.005 + 0.001 * random.nextDouble();
      x[i] = 100.0 + random.nextGaussian();
      slope.add(x[i], Math.round(t[i] * 1e9));
      t[i] = Math.round(t[i] * 1e9) * 1e-9;
    }
    double n = 12.0;
    double st = 0.0;
    double sx = 0.0;
    double stt = 0.0;
    double stx = 0.0;
    for (int i = 0; i < 12; i++) {
      st += t[i];
      sx += x[i];
      stt += t[i] * t[i];
      stx += t[i] * x[i];
    }
    double expected = (n * stx - st * sx) / (n * stt - st * st);
    assertThat(slope.perSecond()).isCloseTo(expected, within(1e-9 * Math.abs(expected) + 1e-9));
  }

  @Test
  void whiteNoiseGivesTheTextbooksDeviation() {
    SlopeEstimate slope = new SlopeEstimate(12);
    Random random = new Random(3);
    double sum = 0.0;
    int n = 20_000;
    for (int i = 0; i < n * 12; i++) {
      slope.add(0.3 * random.nextGaussian(), i * TICK);
      if (i % 12 == 11) {
        sum += slope.perSecond() * slope.perSecond();
      }
    }
    double expected = 0.3 * Math.sqrt(12.0 / (12.0 * (12.0 * 12.0 - 1.0))) / 0.005;
    assertThat(Math.sqrt(sum / n)).isCloseTo(expected, within(0.02 * expected));
  }

  @Test
  void aRampIsSeenHalfTheWindowLate() {
    // (n - 1) dt / 2 = 27.5 ms: of x = a t^2 / 2 the slope a t is the one of that time ago.
    SlopeEstimate slope = new SlopeEstimate(12);
    for (int i = 0; i <= 40; i++) {
      double t = i * 0.005;
      slope.add(500.0 * t * t, i * TICK);
    }
    assertThat(slope.perSecond()).isCloseTo(1_000.0 * (0.2 - 0.0275), within(1e-6));
  }

  @Test
  void theClockMayRollOver() {
    SlopeEstimate slope = new SlopeEstimate(12);
    for (int i = 0; i < 12; i++) {
      slope.add(3.0 * i, Long.MAX_VALUE - 6 * TICK + i * TICK);
    }
    assertThat(slope.perSecond()).isCloseTo(600.0, within(1e-6));
  }
}
