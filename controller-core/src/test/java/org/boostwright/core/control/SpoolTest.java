package org.boostwright.core.control;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import org.boostwright.core.settings.SpoolSettings;
import org.junit.jupiter.api.Test;

/**
 * Spool strategy: ambient 100 kPa, target 180 kPa, lead 0.3 s, limit 3 s, slowest rise 10 kPa/s.
 */
class SpoolTest {
  private static final double AMBIENT = 100.0;
  private static final double TARGET = 180.0;
  private static final double DT = 0.005;

  private final Spool spool = new Spool(new SpoolSettings(true, 0.3, 3.0, 10.0));

  private boolean at(double kpa, double rate) {
    return spool.update(kpa, rate, TARGET, AMBIENT, DT);
  }

  @Test
  void switchedOffItNeverHolds() {
    Spool off = new Spool(new SpoolSettings(false, 0.3, 3.0, 10.0));
    assertThat(off.update(130.0, 50.0, TARGET, AMBIENT, DT)).isFalse();
    assertThat(off.gaveUp()).isFalse();
  }

  @Test
  void itActsOnlyAboveAmbientPlusFifteen() {
    assertThat(at(115.0, 0.0)).isFalse();
    assertThat(spool.armed()).isTrue();
    assertThat(at(115.1, 0.0)).isTrue();
    assertThat(spool.armed()).isFalse();
  }

  @Test
  void itIsNotWorthItWithinTenKilopascalsOfTheTarget() {
    assertThat(at(170.0, 0.0)).isFalse();
    assertThat(at(169.9, 0.0)).isTrue();
  }

  @Test
  void itHandsOverWhenPressurePlusLeadTimesRateReachesTheTarget() {
    assertThat(at(130.0, 100.0)).isTrue();
    assertThat(at(149.9, 100.0)).isTrue();
    assertThat(at(150.0, 100.0)).isFalse();
    assertThat(spool.gaveUp()).isFalse();
  }

  @Test
  void theFasterTheRiseTheEarlierItHandsOver() {
    double[] rates = {20.0, 60.0, 130.0};
    double last = 1e9;
    for (double rate : rates) {
      spool.arm();
      double kpa = 116.0;
      while (at(kpa, rate)) {
        kpa += rate * DT;
      }
      assertThat(kpa).isCloseTo(TARGET - 0.3 * rate, within(rate * DT + 1e-9));
      assertThat(kpa).isLessThan(last);
      last = kpa;
    }
  }

  @Test
  void aRiseThatAlreadyHandsOverNeverBeginsToHold() {
    assertThat(at(130.0, 170.0)).isFalse();
    assertThat(spool.armed()).isTrue();
  }

  @Test
  void afterAHandOverItRestsUntilTheDemandHasGone() {
    at(130.0, 100.0);
    at(160.0, 100.0);
    for (int i = 0; i < 2_000; i++) {
      assertThat(at(120.0, 20.0)).isFalse();
    }
    spool.arm();
    assertThat(at(120.0, 20.0)).isTrue();
  }

  @Test
  void itGivesUpWhenPressureRisesTooSlowly() {
    double kpa = 120.0;
    int ticks = 0;
    while (at(kpa, 9.0)) {
      kpa += 9.0 * DT;
      ticks++;
    }
    assertThat(spool.gaveUp()).isTrue();
    assertThat(ticks * DT).as("first check").isBetween(0.495, 0.51);
    assertThat(at(130.0, 50.0)).isFalse();
    spool.arm();
    assertThat(spool.gaveUp()).isFalse();
  }

  @Test
  void aRiseJustFastEnoughIsHeldUntilTheTimeLimit() {
    double kpa = 120.0;
    int ticks = 0;
    while (at(kpa, 11.0)) {
      kpa += 11.0 * DT;
      ticks++;
    }
    assertThat(ticks * DT).isCloseTo(3.0, within(0.011));
    assertThat(spool.gaveUp()).isTrue();
  }

  @Test
  void aRiseThatDiesLaterIsNoticedAtTheNextCheck() {
    double kpa = 116.0;
    for (int i = 0; i < 120; i++) {
      assertThat(at(kpa, 40.0)).isTrue();
      kpa += 40.0 * DT;
    }
    int ticks = 0;
    while (at(kpa, 0.0)) {
      ticks++;
    }
    assertThat(ticks * DT).isLessThan(0.95);
    assertThat(spool.gaveUp()).isTrue();
  }

  @Test
  void numbersThatAreNoneNeverHold() {
    assertThat(at(Double.NaN, 50.0)).isFalse();
    assertThat(at(130.0, Double.NaN)).isFalse();
    assertThat(spool.update(130.0, 50.0, Double.NaN, AMBIENT, DT)).isFalse();
    assertThat(spool.update(130.0, 50.0, TARGET, Double.NaN, DT)).isFalse();
    assertThat(at(130.0, 50.0)).isTrue();
    assertThat(at(Double.NaN, 50.0)).isFalse();
    assertThat(at(130.0, 50.0)).as("handed over").isFalse();
  }
}
