package org.boostwright.core.monitor;

import static org.assertj.core.api.Assertions.assertThat;

import java.util.Random;
import org.junit.jupiter.api.Tag;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.ValueSource;

/**
 * Rated noise with the intake's pulsation against five times rated noise. Pulsation: 5 kPa peak to
 * peak at rpm/30 Hz behind a lag of 1 ms and an RC filter; noise 0.3 kPa (assumption A-06).
 */
@Tag("S6")
class NoiseWatchTest {
  private static final double TICK_SECONDS = 0.005;
  private static final double RATED_KPA = 0.3;

  private final Random random = new Random(5);

  /** Amplitude that is left of the pulsation, by the transfer functions of the two lags. */
  private static double amplitude(double hz, double filterHz) {
    double filter = 1.0 / Math.sqrt(1.0 + (hz / filterHz) * (hz / filterHz));
    double lag = 1.0 / Math.sqrt(1.0 + Math.pow(2.0 * Math.PI * hz * 1e-3, 2.0));
    return 2.5 * filter * lag;
  }

  /** Samples until the fault's counter confirms; -1 when it never does. */
  private static int confirmedAfter(NoiseWatch watch, double[] kpa) {
    FaultTable faults = new FaultTable();
    for (int i = 0; i < kpa.length; i++) {
      faults.sample(FaultCode.MAP_NOISY, watch.excessive(kpa[i]), i);
      if (faults.active() != 0L) {
        return i;
      }
    }
    return -1;
  }

  private double[] signal(int n, double noiseKpa, double hz, double filterHz, double phase) {
    double[] kpa = new double[n];
    double a = hz > 0.0 ? amplitude(hz, filterHz) : 0.0;
    for (int i = 0; i < n; i++) {
      kpa[i] =
          180.0
              + a * Math.sin(2.0 * Math.PI * hz * i * TICK_SECONDS + phase)
              + noiseKpa * random.nextGaussian();
    }
    return kpa;
  }

  @ParameterizedTest
  @ValueSource(doubles = {20.0, 48.0, 50.0})
  void ratedNoiseWithPulsationAtAnyEngineSpeedRaisesNothing(double filterHz) {
    for (double rpm = 600.0; rpm <= 6_800.0; rpm += 25.0) {
      double[] kpa = signal(1_000, RATED_KPA, rpm / 30.0, filterHz, 0.0);
      assertThat(confirmedAfter(new NoiseWatch(RATED_KPA), kpa)).as("%.0f rpm", rpm).isNegative();
    }
  }

  @ParameterizedTest
  @ValueSource(doubles = {0.0, 0.25, 0.5, 0.75})
  void pulsationAtHalfTheSamplingRateRaisesNothingAtAnyPhase(double phase) {
    double[] kpa = signal(4_000, RATED_KPA, 100.0, 50.0, phase * Math.PI);
    assertThat(confirmedAfter(new NoiseWatch(RATED_KPA), kpa)).isNegative();
  }

  @Test
  void twoMinutesAtTheWorstEngineSpeedRaiseNothing() {
    double[] kpa = signal(24_000, RATED_KPA, 52.5, 50.0, 0.0);
    assertThat(confirmedAfter(new NoiseWatch(RATED_KPA), kpa)).isNegative();
  }

  @Test
  void fiveTimesRatedNoiseIsConfirmedWithinTwoSeconds() {
    for (int run = 0; run < 50; run++) {
      double[] alone = signal(400, 5.0 * RATED_KPA, 0.0, 48.0, 0.0);
      assertThat(confirmedAfter(new NoiseWatch(RATED_KPA), alone)).isNotNegative();
      double[] pulsating = signal(400, 5.0 * RATED_KPA, 20.0 + 4.0 * run, 48.0, 0.0);
      assertThat(confirmedAfter(new NoiseWatch(RATED_KPA), pulsating)).isNotNegative();
    }
  }

  @Test
  void threeTimesRatedNoiseRaisesNothing() {
    double[] kpa = signal(24_000, 3.0 * RATED_KPA, 0.0, 48.0, 0.0);
    assertThat(confirmedAfter(new NoiseWatch(RATED_KPA), kpa)).isNegative();
  }

  @Test
  @Tag("S8")
  void oneOutlierJustBelowAnImpossibleRateRaisesNothing() {
    double[] kpa = signal(600, RATED_KPA, 52.5, 48.0, 0.0);
    kpa[300] += 15.0;
    assertThat(confirmedAfter(new NoiseWatch(RATED_KPA), kpa)).isNegative();
  }

  @Test
  void aRampAsFastAsTheEngineCanRaisesNothing() {
    double[] kpa = signal(200, RATED_KPA, 0.0, 48.0, 0.0);
    for (int i = 0; i < kpa.length; i++) {
      kpa[i] += 140.0 * i * TICK_SECONDS;
    }
    assertThat(confirmedAfter(new NoiseWatch(RATED_KPA), kpa)).isNegative();
  }

  @Test
  void aQuietSensorIsNotTakenForNoisyBecauseTheEnginePulsates() {
    double[] kpa = signal(24_000, 0.05, 52.5, 50.0, 0.0);
    assertThat(confirmedAfter(new NoiseWatch(0.05), kpa)).isNegative();
  }

  @Test
  void theLimitFollowsALouderSensor() {
    assertThat(confirmedAfter(new NoiseWatch(0.6), signal(24_000, 1.8, 0.0, 48.0, 0.0)))
        .isNegative();
    assertThat(confirmedAfter(new NoiseWatch(0.6), signal(800, 3.0, 0.0, 48.0, 0.0)))
        .isNotNegative();
  }

  @Test
  void anInterruptionForgetsTheNeighboursButNotTheMean() {
    NoiseWatch watch = new NoiseWatch(RATED_KPA);
    for (int i = 0; i < 400; i++) {
      // Steps of 50 kPa between interruptions are no disturbance.
      watch.interrupt();
      for (int k = 0; k < 5; k++) {
        assertThat(watch.excessive(100.0 + 50.0 * (i % 3))).isFalse();
      }
    }
    for (double kpa : signal(400, 5.0, 0.0, 48.0, 0.0)) {
      watch.excessive(kpa);
    }
    watch.interrupt();
    assertThat(watch.excessive(100.0)).isTrue();
  }

  @Test
  @Tag("S10")
  void aMeanThatIsNotANumberCountsAsExcessive() {
    NoiseWatch watch = new NoiseWatch(RATED_KPA);
    for (int i = 0; i < 10; i++) {
      watch.excessive(i == 5 ? Double.NaN : 100.0);
    }
    assertThat(watch.excessive(100.0)).isTrue();
  }

  @Test
  void theFirstFourSamplesAreOnlyNeighbours() {
    // Every difference is capped: 1 - 0.98^n exceeds a sixth, the share the cap leaves, at n = 10.
    NoiseWatch watch = new NoiseWatch(RATED_KPA);
    double kpa = 1_000.0;
    for (int i = 1; i <= 14; i++) {
      assertThat(watch.excessive(kpa)).as("sample %d", i).isEqualTo(i == 14);
      kpa *= 3.0;
    }
  }
}
