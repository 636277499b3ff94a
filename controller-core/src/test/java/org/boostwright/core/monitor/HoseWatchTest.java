package org.boostwright.core.monitor;

import static org.assertj.core.api.Assertions.assertThat;

import org.junit.jupiter.api.Tag;
import org.junit.jupiter.api.Test;

/** A reading that lies flat at ambient, in steps of 5 ms; ambient 101.3 kPa, redline 6800. */
@Tag("S11")
class HoseWatchTest {
  private static final long TICK = 5_000_000L;
  private static final double AMBIENT = 101.3;

  private final HoseWatch watch = new HoseWatch(6_800.0);
  private long now = 1_000_000_000L;
  private double floor = AMBIENT;

  /** Holds a reading; ms until it is judged flat at ambient, -1 when it never is. */
  private long hold(double kpa, double throttlePct, double rpm, long millis) {
    for (long t = 0; t < millis; t += 5) {
      now += TICK;
      if (watch.flatAtAmbient(now, kpa, AMBIENT, floor, throttlePct, rpm)) {
        return t;
      }
    }
    return -1;
  }

  @Test
  void aFallFromBoostThatLiesFlatIsFoundAfter65Ms() {
    hold(112.0, 50.0, 3_000.0, 500);
    assertThat(hold(AMBIENT, 50.0, 3_000.0, 500)).isEqualTo(65);
  }

  @Test
  void aFallFromLessThanEightKpaIsNone() {
    hold(AMBIENT + 7.9, 50.0, 3_000.0, 500);
    assertThat(hold(AMBIENT, 50.0, 3_000.0, 900)).isEqualTo(-1);
  }

  @Test
  void aFallThatTakesLongerThan50MsIsAThrottle() {
    hold(112.0, 50.0, 3_000.0, 500);
    hold(106.0, 50.0, 3_000.0, 50);
    assertThat(hold(AMBIENT, 50.0, 3_000.0, 900)).isEqualTo(-1);
    hold(112.0, 50.0, 3_000.0, 500);
    hold(106.0, 50.0, 3_000.0, 45);
    assertThat(hold(AMBIENT, 50.0, 3_000.0, 900)).isEqualTo(65);
  }

  @Test
  void withTheThrottleBelow45PercentAFallSaysNothing() {
    hold(112.0, 44.9, 3_000.0, 500);
    assertThat(hold(AMBIENT, 44.9, 3_000.0, 900)).isEqualTo(-1);
  }

  @Test
  void aSecondWithoutBoostAtHalfTheRedlineAnd60PercentIsFound() {
    hold(60.0, 20.0, 3_400.0, 500);
    assertThat(hold(AMBIENT, 60.0, 3_400.0, 2_000)).isEqualTo(1_000);
  }

  @Test
  void belowHalfTheRedlineOr60PercentASecondWithoutBoostIsOrdinary() {
    assertThat(hold(AMBIENT, 60.0, 3_399.0, 2_000)).isEqualTo(-1);
    assertThat(hold(AMBIENT, 59.9, 3_400.0, 2_000)).isEqualTo(-1);
    // Asked for only from now on.
    assertThat(hold(AMBIENT, 60.0, 3_400.0, 990)).isEqualTo(-1);
    assertThat(hold(AMBIENT, 60.0, 3_400.0, 50)).isNotEqualTo(-1);
  }

  @Test
  void aReadingThatMovesIsNotFlat() {
    double kpa = AMBIENT - 2.4;
    for (int i = 0; i < 400; i++) {
      kpa = kpa > AMBIENT + 2.3 ? AMBIENT - 2.4 : kpa + 0.013;
      assertThat(hold(kpa, 100.0, 4_000.0, 5)).isEqualTo(-1);
    }
  }

  @Test
  void awayFromAmbientFlatIsOrdinary() {
    assertThat(hold(AMBIENT + 2.6, 100.0, 4_000.0, 3_000)).isEqualTo(-1);
    assertThat(hold(AMBIENT - 2.6, 100.0, 4_000.0, 3_000)).isEqualTo(-1);
    // After a climb that is possible by now it is ambient.
    floor = AMBIENT - 10.0;
    assertThat(hold(AMBIENT - 12.4, 100.0, 4_000.0, 3_000)).isNotEqualTo(-1);
  }

  @Test
  void withoutAnAmbientOrANumberNothingIsJudged() {
    for (int i = 0; i < 400; i++) {
      now += TICK;
      assertThat(watch.flatAtAmbient(now, AMBIENT, Double.NaN, Double.NaN, 100.0, 4_000.0))
          .isFalse();
    }
    assertThat(hold(AMBIENT, Double.NaN, 4_000.0, 3_000)).isEqualTo(-1);
    assertThat(hold(AMBIENT, 100.0, Double.NaN, 3_000)).isEqualTo(-1);
  }

  @Test
  void eightKpaOverAmbientIsBoost() {
    hold(AMBIENT + HoseWatch.BOOST_KPA, 50.0, 3_000.0, 500);
    assertThat(hold(AMBIENT, 50.0, 3_000.0, 500)).isEqualTo(65);
  }

  @Test
  void aFallWithin50MsIsFoundUpToTheNanosecond() {
    for (long late = 0; late <= 1; late++) {
      HoseWatch fresh = new HoseWatch(6_800.0);
      fresh.flatAtAmbient(now, 112.0, AMBIENT, floor, 50.0, 3_000.0);
      long fell = now + HoseWatch.FELL_NANOS + late;
      fresh.flatAtAmbient(fell, AMBIENT, AMBIENT, floor, 50.0, 3_000.0);
      long flat = fell + HoseWatch.FELL_FLAT_NANOS;
      assertThat(fresh.flatAtAmbient(flat - 1, AMBIENT, AMBIENT, floor, 50.0, 3_000.0)).isFalse();
      assertThat(fresh.flatAtAmbient(flat, AMBIENT, AMBIENT, floor, 45.0, 3_000.0))
          .isEqualTo(late == 0);
    }
  }

  @Test
  void flatReachesTwoAndAHalfKpaEitherWay() {
    // Powers of two, so that the sums are exact.
    for (double step : new double[] {-2.5, 2.5}) {
      for (double beyond = 0.0; beyond <= 0.5; beyond += 0.5) {
        HoseWatch fresh = new HoseWatch(6_800.0);
        double second = step + Math.copySign(beyond, step);
        long half = HoseWatch.NO_BOOST_NANOS / 2;
        fresh.flatAtAmbient(now, 96.0, 128.0, 64.0, 100.0, 4_000.0);
        fresh.flatAtAmbient(now + half, 96.0 + second, 128.0, 64.0, 100.0, 4_000.0);
        assertThat(fresh.flatAtAmbient(now + 2 * half, 96.0 + second, 128.0, 64.0, 100.0, 4_000.0))
            .isEqualTo(beyond == 0.0);
      }
    }
  }

  @Test
  void atAmbientReachesTwoAndAHalfKpaBeyondWhatIsPossible() {
    for (double kpa : new double[] {61.5, 61.0, 130.5, 131.0}) {
      HoseWatch fresh = new HoseWatch(6_800.0);
      fresh.flatAtAmbient(now, kpa, 128.0, 64.0, 100.0, 4_000.0);
      assertThat(
              fresh.flatAtAmbient(now + HoseWatch.NO_BOOST_NANOS, kpa, 128.0, 64.0, 100.0, 4_000.0))
          .isEqualTo(kpa == 61.5 || kpa == 130.5);
    }
  }

  @Test
  void aSecondIsASecondOfFlatAndOfAsking() {
    HoseWatch fresh = new HoseWatch(6_800.0);
    fresh.flatAtAmbient(now - 7, AMBIENT, AMBIENT, floor, 59.0, 4_000.0);
    fresh.flatAtAmbient(now, AMBIENT, AMBIENT, floor, 59.0, 4_000.0);
    long second = now + HoseWatch.NO_BOOST_NANOS;
    assertThat(fresh.flatAtAmbient(second - 1, AMBIENT, AMBIENT, floor, 60.0, 4_000.0)).isFalse();
    assertThat(fresh.flatAtAmbient(second, AMBIENT, AMBIENT, floor, 60.0, 4_000.0)).isTrue();
  }
}
