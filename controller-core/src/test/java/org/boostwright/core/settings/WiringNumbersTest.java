package org.boostwright.core.settings;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.data.Offset.offset;
import static org.assertj.core.data.Percentage.withPercentage;

import org.boostwright.core.settings.WiringSettings.Clamp;
import org.boostwright.core.settings.WiringSettings.Coil;
import org.boostwright.core.settings.WiringSettings.PressureInput;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;

/** Closed-form numbers of the circuit against published and independently computed values. */
class WiringNumbersTest {
  private static final WiringSettings OWN = WiringSettings.DEFAULT;
  private static final WiringNumbers NUMBERS = new WiringNumbers(OWN, 30.0);

  /** 30 ohm, 100 mH, 14 V, to a fifth: L/R*ln((Vc/R + i0)/(Vc/R + i0/5)), computed by hand. */
  @ParameterizedTest
  @CsvSource({"DIODE, 0.8, 4.71", "ZENER, 12.8, 1.80", "TVS, 38, 1.16", "TVS, 50, 0.85"})
  void releaseTimePerClampIsThatOfTheFormula(Clamp clamp, double volts, double millis) {
    assertThat(1e3 * with(coil(clamp, volts)).dropOutSeconds()).isCloseTo(millis, offset(0.006));
  }

  /** V/R, V^2/R, and L/R*ln(1/(1 - 0.2/0.4667)) = 1.865 ms. */
  @Test
  void coilCurrentPowerAndPickUp() {
    assertThat(NUMBERS.coilAmps(14.0)).isCloseTo(0.467, offset(0.001));
    assertThat(NUMBERS.coilWatts(14.0)).isCloseTo(6.53, offset(0.01));
    assertThat(1e3 * NUMBERS.pickUpSeconds()).isCloseTo(1.865, offset(0.005));
  }

  @Test
  void defaultTimesAreThoseOfTheVirtualCarWithinOneMillisecond() {
    assertThat(1e3 * NUMBERS.onSeconds()).isCloseTo(3.5, offset(1.0));
    assertThat(1e3 * NUMBERS.offSeconds()).isCloseTo(7.5, offset(1.0));
  }

  @Test
  void coilThatCannotPickUpTakesForEver() {
    Coil c = OWN.coil();
    Coil weak =
        new Coil(
            c.henries(),
            0.5,
            c.dropOutAmps(),
            c.spoolOnSeconds(),
            c.spoolOffSeconds(),
            c.clamp(),
            c.clampVolts());
    assertThat(with(weak).pickUpSeconds()).isInfinite();
  }

  /** 1/(2 pi R C): 1 kohm and 100 nF 1592 Hz, 10 kohm and 100 nF 159 Hz, 10 kohm and 1 uF 15.9. */
  @ParameterizedTest
  @CsvSource({"1000, 100e-9, 1592", "10e3, 100e-9, 159.2", "10e3, 1e-6, 15.92"})
  void cornerOfTheFilter(double ohms, double farads, double hertz) {
    PressureInput map = new PressureInput(5.0, true, 51e3, 0.0, 0.0, ohms, farads);
    assertThat(with(map).filterCornerHz()).isCloseTo(hertz, withPercentage(0.05));
  }

  /** 0.56 ohm-seconds of a thousandth: 5.6 kohm * 680 nF * ln(24) = 12.1 ms. */
  @Test
  void openWireFallsPastItsThresholdWithin19Ms() {
    assertThat(1e3 * NUMBERS.openWireSeconds(4.8, 0.2)).isCloseTo(12.10, offset(0.05));
  }

  /** 1 Mohm * 100 nF * ln(24) = 318 ms: the bias that is too weak. */
  @Test
  void weakBiasWithoutFollowerTakesTooLong() {
    PressureInput map = new PressureInput(5.0, false, 1e6, 0.0, 0.0, 0.0, 100e-9);
    assertThat(1e3 * with(map).openWireSeconds(4.8, 0.2)).isCloseTo(317.8, offset(0.5));
  }

  @Test
  void missingBiasNeverFalls() {
    PressureInput map = new PressureInput(5.0, true, 0.0, 0.0, 0.0, 5600.0, 680e-9);
    assertThat(with(map).openWireSeconds(4.8, 0.2)).isInfinite();
  }

  /** 15/(10 + 15) and 6 kohm; 6 kohm * 680 nF = 4.08 ms. */
  @Test
  void dividerSetsRatioAndFilter() {
    WiringNumbers n = with(new PressureInput(5.0, true, 51e3, 10e3, 15e3, 0.0, 680e-9));
    assertThat(n.dividerRatio()).isCloseTo(0.6, offset(1e-12));
    assertThat(n.shortToSupplyVolts()).isCloseTo(3.0, offset(1e-12));
    assertThat(1e3 * n.filterLagSeconds()).isCloseTo(4.08, offset(1e-9));
  }

  @Test
  void heartbeatHoldsBetween30And100Ms() {
    assertThat(1e3 * NUMBERS.shortestHoldSeconds()).isBetween(30.0, 45.0);
    assertThat(1e3 * NUMBERS.longestHoldSeconds()).isBetween(75.0, 100.0);
    assertThat(NUMBERS.typicalHoldSeconds())
        .isBetween(NUMBERS.shortestHoldSeconds(), NUMBERS.longestHoldSeconds());
  }

  private static Coil coil(Clamp clamp, double volts) {
    Coil c = OWN.coil();
    return new Coil(
        c.henries(),
        c.pickUpAmps(),
        14.0 / 30.0 / 5.0,
        c.spoolOnSeconds(),
        c.spoolOffSeconds(),
        clamp,
        volts);
  }

  private static WiringNumbers with(Coil coil) {
    return new WiringNumbers(
        new WiringSettings(
            OWN.converterSupplyVolts(), OWN.map(), coil, OWN.driver(), OWN.heartbeat()),
        30.0);
  }

  private static WiringNumbers with(PressureInput map) {
    return new WiringNumbers(
        new WiringSettings(
            OWN.converterSupplyVolts(), map, OWN.coil(), OWN.driver(), OWN.heartbeat()),
        30.0);
  }
}
