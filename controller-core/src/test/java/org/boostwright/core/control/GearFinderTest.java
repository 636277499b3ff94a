package org.boostwright.core.control;

import static org.assertj.core.api.Assertions.assertThat;

import org.junit.jupiter.api.Test;

/** Gears of the project car: 113.83, 68.52, 48.22, 36.25, 29.36 1/min per km/h. */
class GearFinderTest {
  private static final double[] RATIOS = {113.83, 68.52, 48.22, 36.25, 29.36};
  private static final double DT = 0.005;

  private final GearFinder gears = new GearFinder(RATIOS);

  private int hold(double ratio, double kmh, double seconds) {
    int gear = 0;
    for (int i = 0; i < Math.round(seconds / DT); i++) {
      gear = gears.update(ratio * kmh, kmh, DT);
    }
    return gear;
  }

  @Test
  void everyGearIsFoundAfterATenthOfASecond() {
    for (int g = 0; g < RATIOS.length; g++) {
      assertThat(hold(RATIOS[g], 40.0, 0.1)).as("not yet").isZero();
      assertThat(hold(RATIOS[g], 40.0, 0.005)).isEqualTo(g + 1);
      assertThat(hold(RATIOS[g], 90.0, 5.0)).isEqualTo(g + 1);
    }
  }

  @Test
  void aRatioWithinTwelvePercentIsThatGear() {
    assertThat(hold(113.83 * 1.119, 40.0, 1.0)).isEqualTo(1);
    assertThat(hold(113.83 * 0.881, 40.0, 1.0)).isEqualTo(1);
    assertThat(hold(113.83 * 1.121, 40.0, 1.0)).isZero();
    assertThat(hold(113.83 * 0.879, 40.0, 1.0)).isZero();
  }

  @Test
  void betweenTwoGearsThatOverlapTheNearerOneWins() {
    // 36.25 and 29.36 with 12 % each: 31.9 to 40.6 and 25.8 to 32.9.
    assertThat(hold(32.0, 60.0, 1.0)).isEqualTo(5);
    assertThat(hold(32.85, 60.0, 1.0)).isEqualTo(4);
  }

  @Test
  void aSlippingClutchIsNoGear() {
    assertThat(hold(85.0, 40.0, 1.0)).isZero();
    assertThat(hold(300.0, 10.0, 1.0)).isZero();
  }

  @Test
  void aGearChangeIsUnknownUntilTheNewOneHolds() {
    hold(68.52, 60.0, 1.0);
    assertThat(hold(48.22, 60.0, 0.1)).isZero();
    assertThat(hold(48.22, 60.0, 0.01)).isEqualTo(3);
    hold(300.0, 60.0, 0.005);
    assertThat(hold(48.22, 60.0, 0.1)).as("held anew").isZero();
  }

  @Test
  void belowFiveKilometresPerHourAndForNoNumbersThereIsNoGear() {
    assertThat(hold(113.83, 4.99, 1.0)).isZero();
    assertThat(hold(113.83, 5.0, 1.0)).isEqualTo(1);
    assertThat(gears.update(3_000.0, Double.NaN, DT)).isZero();
    assertThat(gears.update(Double.NaN, 40.0, DT)).isZero();
    assertThat(gears.update(Double.POSITIVE_INFINITY, 40.0, DT)).isZero();
    assertThat(new GearFinder(new double[0]).update(3_000.0, 40.0, 10.0)).isZero();
  }
}
