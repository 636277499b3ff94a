package org.boostwright.core.bench.model;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;

/** Decay times computed from the project's coil example: 30 ohm, 100 mH, 14 V, to 20 %. */
class CoilTest {
  private static final Coil COIL = new Coil(30.0, 0.1, 14.0);

  @ParameterizedTest
  @CsvSource({"0.8, 4.71", "12.8, 1.80", "24, 1.16", "36, 0.85"})
  void currentDecaysAsComputed(double clampVolts, double millis) {
    assertThat(COIL.decaySeconds(clampVolts, 0.2) * 1000.0).isCloseTo(millis, within(0.006));
  }

  @Test
  void warmingSettlesWhereTheBalanceSays() {
    double coilC = 25.0;
    for (int i = 0; i < 40_000; i++) {
      coilC = COIL.warmed(coilC, 25.0, 0.7, 0.1);
    }
    assertThat(coilC).isCloseTo(COIL.settledC(0.7, 25.0), within(0.01));
    assertThat(coilC).isBetween(60.0, 70.0);
  }

  @Test
  void aCoilOfEightOhmIsTooHotUnderTheBonnet() {
    assertThat(new Coil(8.0, 0.05, 14.0).settledC(0.7, 60.0)).isGreaterThan(Coil.LIMIT_C);
    assertThat(COIL.settledC(0.8, 60.0)).isLessThan(Coil.LIMIT_C);
  }
}
