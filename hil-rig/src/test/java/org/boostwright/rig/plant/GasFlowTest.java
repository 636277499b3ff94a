package org.boostwright.rig.plant;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;

/**
 * Isentropic nozzle flow against numbers computed from the formula of any handbook of gas dynamics
 * (Shapiro 1953), and the standard atmosphere against ISO 2533:1975.
 */
class GasFlowTest {
  @ParameterizedTest
  @CsvSource({"1.4, 0.528282, 0.684731", "1.3, 0.545728, 0.667262"})
  void criticalRatioAndChokedCoefficient(double gamma, double ratio, double coefficient) {
    GasFlow gas = new GasFlow(gamma);
    assertThat(gas.criticalRatio()).isCloseTo(ratio, within(1e-6));
    assertThat(gas.psi(0.2)).isCloseTo(coefficient, within(1e-6));
    assertThat(gas.psi(ratio)).isCloseTo(coefficient, within(1e-6));
  }

  /** 200 kPa, 300 K, R 287.05 J/(kg K), gamma 1.4; kg/(m2 s). */
  @ParameterizedTest
  @CsvSource({
    "0.3, 466.671",
    "0.6, 461.34",
    "0.7, 435.04",
    "0.8, 382.11",
    "0.9, 288.01",
    "0.95, 209.67"
  })
  void massFluxFromAKnownReservoir(double ratio, double flux) {
    double got = 200e3 / Math.sqrt(287.05 * 300.0) * new GasFlow(1.4).psi(ratio);
    assertThat(got).isCloseTo(flux, within(0.01));
  }

  @Test
  void slopeIsTheDerivative() {
    GasFlow gas = new GasFlow(1.3);
    for (double ratio = 0.4; ratio < 0.999; ratio += 0.013) {
      double h = 1e-7;
      double u = Math.pow(ratio, 1.0 / 1.3);
      double numeric = (gas.psi(ratio + h) - gas.psi(ratio - h)) / (2.0 * h);
      assertThat(gas.slope(ratio, u, gas.psi(ratio)))
          .as("ratio %.3f", ratio)
          .isCloseTo(numeric, within(1e-4));
    }
  }

  @Test
  void flowGoesStraightToZeroAboveRatio099() {
    GasFlow gas = new GasFlow(1.4);
    assertThat(gas.psi(1.0)).isZero();
    assertThat(gas.psi(0.995)).isCloseTo(0.5 * gas.psi(0.99), within(1e-12));
  }

  @ParameterizedTest
  @CsvSource({
    "0, 101325",
    "500, 95460.8",
    "1000, 89874.6",
    "1500, 84556.0",
    "2000, 79495.2",
    "3000, 70108.5"
  })
  void standardAtmosphere(double altitudeM, double pascal) {
    assertThat(Atmosphere.standardKpaAbs(altitudeM) * 1e3).isCloseTo(pascal, within(0.1));
    assertThat(Atmosphere.at(altitudeM, 40.0).kelvin()).isCloseTo(313.15, within(1e-9));
  }
}
