package org.boostwright.rig.plant;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;
import org.junit.jupiter.params.provider.ValueSource;

/**
 * The PWM-resolved valve against an independent solution of the same model (assumption A-01,
 * isothermal at 293.15 K, supply 82.7 kPa gauge, ambient 101.325 kPa), and against facts of the
 * trade (common practice, no source).
 */
class ValveReferenceTest {
  private static ValveTestBench bench() {
    return new ValveTestBench(new BenchValve(), 82.7);
  }

  @ParameterizedTest
  @CsvSource({
    "39, 10, 82.7, 0",
    "39, 20, 67.8, 20.7",
    "39, 30, 55.3, 23.7",
    "39, 40, 39.0, 23.8",
    "39, 50, 22.8, 21.0",
    "39, 60, 10.6, 15.9",
    "39, 70, 3.8, 9.6",
    "39, 80, 0.0, 0",
    "26, 20, 71.1, 26.7",
    "26, 50, 31.0, 33.5",
    "26, 80, 2.5, 9.6"
  })
  void meanAndRippleMatchTheIndependentRun(
      double frequencyHz, double dutyPct, double meanKpaGauge, double rippleKpa) {
    ValveTestBench run = bench().run(frequencyHz, dutyPct / 100.0);
    assertThat(run.meanKpaGauge).isCloseTo(meanKpaGauge, within(1.5));
    assertThat(run.rippleKpa).isCloseTo(rippleKpa, within(2.0));
  }

  @ParameterizedTest
  @CsvSource({"30, 76.0", "39, 72.9", "60, 55.4"})
  void meanJumpsAtTheLowerEdgeOfTheWindow(double frequencyHz, double meanAfterJumpKpaGauge) {
    double edge = ValveParams.DEFAULT.onDelaySeconds() * frequencyHz;
    assertThat(bench().run(frequencyHz, edge - 0.002).meanKpaGauge).isCloseTo(82.7, within(0.1));
    assertThat(bench().run(frequencyHz, edge + 0.0005).meanKpaGauge)
        .isCloseTo(meanAfterJumpKpaGauge, within(1.5));
  }

  @Test
  void noWindowAboveTheReciprocalOfBothDelays() {
    double frequencyHz = 1.02 / (3.5e-3 + 7.5e-3);
    for (double duty = 0.02; duty < 1.0; duty += 0.02) {
      ValveTestBench run = bench().run(frequencyHz, duty);
      assertThat(run.clicks).as("clicks at duty %.2f", duty).isZero();
      assertThat(Math.min(run.meanKpaGauge, 82.7 - run.meanKpaGauge)).isLessThan(0.1);
    }
  }

  @Test
  void windowEdgesFollowTheSpoolDelays() {
    double frequencyHz = 39.0;
    double upper = 1.0 - 7.5e-3 * frequencyHz;
    assertThat(bench().run(frequencyHz, upper - 0.005).clicks).isEqualTo(20);
    assertThat(bench().run(frequencyHz, upper + 0.002).clicks).isZero();
    assertThat(bench().run(frequencyHz, upper + 0.002).meanKpaGauge).isCloseTo(0.0, within(0.1));
  }

  @Test
  void lowerFrequencyWidensTheWindowAndRaisesTheRipple() {
    assertThat(bench().run(26.0, 0.75).clicks).isEqualTo(20);
    assertThat(bench().run(39.0, 0.75).clicks).isZero();
    assertThat(bench().run(26.0, 0.5).rippleKpa)
        .isGreaterThan(bench().run(39.0, 0.5).rippleKpa + 5.0);
  }

  /** Common practice, no source: what a hand on the valve finds on 12 psi of regulated air. */
  @Test
  void workshopFactsOnTwelvePsiComeOut() {
    ValveTestBench atRest = bench();
    atRest.valve.setEnabled(false);
    atRest.valve.advance(1.0);
    assertThat(atRest.valve.chamberKpaGauge()).isCloseTo(82.7, within(0.1));

    ValveTestBench ten = bench().run(26.0, 0.1);
    assertThat(ten.clicks).as("heard working").isEqualTo(20);
    assertThat(ten.meanKpaGauge).as("passes practically everything").isGreaterThan(0.9 * 82.7);
    assertThat(bench().run(26.0, 0.2).meanKpaGauge).as("part of it").isBetween(41.0, 75.0);
    assertThat(bench().run(39.0, 0.7).meanKpaGauge).as("practically nothing").isLessThan(8.3);
  }

  /**
   * Common practice, no source: the usable window is no wider than about 20 to 80 % at 26 to 39 Hz.
   */
  @ParameterizedTest
  @ValueSource(doubles = {26.0, 30.0, 39.0})
  void littleHappensOutsideTenToEightyPercent(double frequencyHz) {
    assertThat(bench().run(frequencyHz, 0.1).meanKpaGauge).isGreaterThan(0.9 * 82.7);
    assertThat(bench().run(frequencyHz, 0.8).meanKpaGauge).isLessThan(0.05 * 82.7);
  }

  @Test
  void moreDutyNeverMeansMoreActuatorPressure() {
    double before = 83.0;
    for (int pct = 0; pct <= 100; pct += 5) {
      double mean = bench().run(30.0, pct / 100.0).meanKpaGauge;
      assertThat(mean).as("duty %d %%", pct).isLessThanOrEqualTo(before + 1e-6);
      before = mean;
    }
  }

  @Test
  void coilHasNoPolarityAndClicksFromNineVolts() {
    CoilParams coil = CoilParams.TIMED.withThresholds(0.25, 0.1);
    for (double volts : new double[] {9.0, 12.0}) {
      BenchValve valve =
          new BenchValve(
              ValveParams.DEFAULT.withCoil(coil).withDelays(1.5e-3, 5e-3),
              ChamberParams.DEFAULT,
              ActuatorParams.DEFAULT,
              101.325);
      valve.setBatteryVolts(volts);
      assertThat(new ValveTestBench(valve, 82.7).run(10.0, 0.5).clicks).isEqualTo(20);
    }
    BenchValve starved =
        new BenchValve(
            ValveParams.DEFAULT.withCoil(coil),
            ChamberParams.DEFAULT,
            ActuatorParams.DEFAULT,
            101.325);
    starved.setBatteryVolts(7.0);
    assertThat(new ValveTestBench(starved, 82.7).run(10.0, 0.5).clicks).isZero();
  }
}
