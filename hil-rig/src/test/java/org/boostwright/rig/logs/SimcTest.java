package org.boostwright.rig.logs;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatThrownBy;
import static org.assertj.core.api.Assertions.within;

import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;

/** Skogestad, J. Process Control 13, 2003, 291-309: worked examples and margins at tc = theta. */
class SimcTest {
  @ParameterizedTest
  @CsvSource({
    "1.0, 1.1, 0, 0.1, 5.5, 0.8, 0",
    "1.0, 2.5, 0, 1.47, 0.85, 2.5, 0",
    "1.0, 2.0, 1.2, 0.77, 1.30, 2.0, 1.2",
    "1.5, 1.05, 0, 0.15, 2.33, 1.05, 0",
    "1.5, 1.0, 0.15, 0.05, 6.67, 0.4, 0.15",
    "1.0, 1.5, 1.0, 1.5, 0.5, 1.5, 1.0"
  })
  void examplesOfThePaper(
      double k, double tau1, double tau2, double theta, double kc, double ti, double td) {
    Simc simc = Simc.tune(k, tau1, tau2, theta, theta);
    assertThat(simc.gain()).isCloseTo(kc, within(0.005));
    assertThat(simc.integralSeconds()).isCloseTo(ti, within(0.005));
    assertThat(simc.derivativeSeconds()).isEqualTo(td);
  }

  @Test
  void marginsAtTheBriskSetting() {
    LoopMargins margins = LoopMargins.of(Simc.tune(1.0, 1.2, 0.0, 0.15, 0.15), 1.0, 1.2, 0.0, 0.15);
    assertThat(margins.maxSensitivity()).isCloseTo(1.59, within(0.005));
    assertThat(margins.gainMargin()).isCloseTo(3.14, within(0.005));
    assertThat(margins.phaseMarginDegrees()).isCloseTo(61.4, within(0.05));
    // Delay margin follows: phase margin over the crossover frequency 1/(2 theta).
    assertThat(margins.delayMarginSeconds())
        .isCloseTo(Math.toRadians(61.4) * 2.0 * 0.15, within(0.002));
  }

  @Test
  void calmerSettingHasMoreMargin() {
    LoopMargins brisk = LoopMargins.of(Simc.tune(1.0, 1.2, 0.0, 0.15, 0.15), 1.0, 1.2, 0.0, 0.15);
    LoopMargins calm = LoopMargins.of(Simc.tune(1.0, 1.2, 0.0, 0.15, 0.45), 1.0, 1.2, 0.0, 0.15);
    assertThat(calm.maxSensitivity()).isLessThan(brisk.maxSensitivity());
    assertThat(calm.gainMargin()).isGreaterThan(brisk.gainMargin());
  }

  @Test
  void timesThatMakeNoSenseAreRefused() {
    assertThatThrownBy(() -> Simc.tune(0.0, 1.0, 0.0, 0.1, 0.1))
        .isInstanceOf(IllegalArgumentException.class);
    assertThatThrownBy(() -> Simc.tune(1.0, Double.NaN, 0.0, 0.1, 0.1))
        .isInstanceOf(IllegalArgumentException.class);
  }
}
