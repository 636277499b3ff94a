package org.boostwright.rig.plant;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;

/**
 * ISO 6358 flow, filling and venting times against values computed from the standard's formula (ISO
 * 6358-1:2013) independently of the project.
 */
class PneumaticFlowTest {
  /** 0.2 dm3/(s bar). */
  private static final double C = 0.2e-8;

  private static final double B = 0.3;

  @ParameterizedTest
  @CsvSource({"50, 0.47400", "100, 0.45424", "150, 0.36308", "190, 0.17593"})
  void flowFrom200KpaMatchesTheStandard(double downstreamKpa, double gramsPerSecond) {
    double flow = IsoFlow.kgPerSecond(C, B, 200e3, downstreamKpa * 1e3, 293.15) * 1e3;
    assertThat(flow).isCloseTo(gramsPerSecond, within(2e-5));
    double back = IsoFlow.kgPerSecond(C, B, downstreamKpa * 1e3, 200e3, 293.15) * 1e3;
    assertThat(back).isCloseTo(-gramsPerSecond, within(2e-5));
  }

  /** Half a dm3/(s bar), choked at 200 kPa, passes 60 l/min of reference air. */
  @Test
  void chokedFlowInLitresPerMinuteOfReferenceAir() {
    double litresPerMinute =
        IsoFlow.kgPerSecond(0.5e-8, B, 200e3, 20e3, 293.15) / IsoFlow.RHO0 * 60e3;
    assertThat(litresPerMinute).isCloseTo(60.0, within(1e-6));
  }

  @ParameterizedTest
  @CsvSource({
    "30, 1.0, 93.8",
    "50, 1.0, 156.4",
    "100, 1.0, 312.8",
    "30, 1.4, 67.0",
    "50, 1.4, 111.7",
    "100, 1.4, 223.4"
  })
  void chamberFillsInTheComputedTime(double cm3, double exponent, double millis) {
    BoostLine line = line(cm3, exponent, 101.3e3);
    double elapsed = 0.0;
    while (line.chamberPa() < 190e3) {
      line.advance(1e-4, 200e3, 200e3, 101.3e3, 0.0, 0.0);
      elapsed += 0.1;
    }
    assertThat(elapsed).isCloseTo(millis, within(0.005 * millis));
  }

  @ParameterizedTest
  @CsvSource({"30, 116.5", "50, 194.1", "100, 388.2"})
  void chamberVentsInTheComputedTime(double cm3, double millis) {
    BoostLine line = line(cm3, 1.0, 200e3);
    line.faults().stuck = ValveFaults.Stuck.ENERGISED;
    double elapsed = 0.0;
    while (line.chamberPa() > 110e3) {
      line.advance(1e-4, 200e3, 200e3, 101.3e3, 0.0, 0.0);
      elapsed += 0.1;
    }
    assertThat(elapsed).isCloseTo(millis, within(0.005 * millis));
  }

  /** Analytic: {@code t = V/(C*p0)*ln(p1/p2)}, p0 = rho0*R*T0, while the flow stays choked. */
  @Test
  void tankDischargesInTheAnalyticTime() {
    BoostLine line = line(1000.0, 1.0, 700e3, 0.5e-8);
    line.faults().stuck = ValveFaults.Stuck.ENERGISED;
    double elapsed = 0.0;
    while (line.chamberPa() > 334e3) {
      line.advance(1e-4, 700e3, 700e3, 0.1 * 1e3, 0.0, 0.0);
      elapsed += 1e-4;
    }
    assertThat(elapsed).isCloseTo(1.4841, within(0.003 * 1.4841));
  }

  @Test
  void tinyChamberWithAHugeLeakStaysStable() {
    BoostLine line = line(1.0, 1.4, 200e3, 5e-8);
    line.faults().leakConductance = 5e-8;
    for (int i = 0; i < 1000; i++) {
      line.advance(1e-3, 200e3, 200e3, 101.3e3, 0.0, 0.0);
      assertThat(line.chamberPa()).isBetween(101.3e3, 200e3);
    }
  }

  private static BoostLine line(double cm3, double exponent, double startPa) {
    return line(cm3, exponent, startPa, C);
  }

  private static BoostLine line(double cm3, double exponent, double startPa, double conductance) {
    return new BoostLine(
        ValveParams.DEFAULT.withConductances(conductance, conductance).withCriticalRatio(B),
        ChamberParams.DEFAULT.withVolume(cm3 * 1e-6).withPolytropicExponent(exponent),
        ActuatorParams.DEFAULT,
        startPa);
  }
}
