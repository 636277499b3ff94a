package org.boostwright.rig.bench;

import static org.assertj.core.api.Assertions.assertThat;

import java.util.EnumSet;
import java.util.Optional;
import org.boostwright.core.bench.BenchPlan;
import org.boostwright.core.bench.BenchRecord;
import org.boostwright.core.bench.BenchStep;
import org.boostwright.core.bench.Reading;
import org.boostwright.core.bench.VerdictCode;
import org.boostwright.core.bench.model.ValveAdvice;
import org.boostwright.core.bench.model.ValveFitResult;
import org.boostwright.core.bench.model.ValveModel;
import org.boostwright.core.settings.PressureUnit;
import org.boostwright.rig.plant.BenchValve;
import org.boostwright.rig.plant.ChamberParams;
import org.junit.jupiter.api.BeforeAll;
import org.junit.jupiter.api.Test;

/**
 * What a person with 12 psi of air finds on the bench, in psi (common practice, no source), out of
 * a whole simulated session at 39 Hz on the default valve (assumption A-01).
 */
class PracticeFactsTest {
  private static VirtualTrial trial;

  @BeforeAll
  static void runTheSession() {
    BenchPlan plan =
        BenchPlan.standard().withSteps(EnumSet.allOf(BenchStep.class)).withFrequencyHz(39.0);
    trial = VirtualTrial.run(BenchSetup.standard(), plan, Optional.empty(), 3L, step -> {});
  }

  private static double psi(double kpa) {
    return PressureUnit.PSI.fromKpa(kpa);
  }

  private static double psiAtDuty(double pct) {
    BenchRecord record = trial.record();
    for (Reading reading : record.sweepUp) {
      if (Math.abs(100.0 * reading.dutyFraction() - pct) < 0.01) {
        return psi(record.gauge(reading));
      }
    }
    throw new AssertionError("no reading at " + pct + " %");
  }

  @Test
  void atRestAllTwelvePsiPass() {
    assertThat(psi(trial.record().restKpaGauge())).isBetween(11.9, 12.1);
  }

  @Test
  void atTenPercentPracticallyEverythingPasses() {
    assertThat(psiAtDuty(10.0)).isGreaterThan(11.0);
  }

  @Test
  void atTenPercentAndTwentySixHertzTheSpoolIsHeardWorkingYetPracticallyEverythingPasses() {
    BenchValve valve = new BenchValve();
    valve.setSupplyKpaGauge(BenchSetup.TWELVE_PSI_KPA);
    valve.setFrequencyHz(26.0);
    valve.setDuty(0.1);
    valve.setSupplyClosed(true);
    valve.setEnabled(true);
    valve.advance(2.0);
    int clicks = 0;
    double sum = 0.0;
    boolean before = valve.spoolEnergised();
    int samples = 2_000;
    for (int i = 0; i < samples; i++) {
      valve.advance(0.5e-3);
      clicks += valve.spoolEnergised() && !before ? 1 : 0;
      before = valve.spoolEnergised();
      sum += valve.chamberKpaGauge();
    }
    assertThat(clicks).isBetween(25, 27);
    assertThat(psi(sum / samples)).isGreaterThan(11.0);
  }

  @Test
  void theCoilClicksOnNineToTwelveVolts() {
    for (double volts : new double[] {9.0, 12.0}) {
      BenchValve valve = new BenchValve();
      valve.setBatteryVolts(volts);
      valve.setSupplyClosed(true);
      valve.setDuty(1.0);
      valve.setEnabled(true);
      valve.advance(0.2);
      assertThat(valve.spoolEnergised()).as("%s V", volts).isTrue();
      valve.setEnabled(false);
      valve.advance(0.2);
      assertThat(valve.spoolEnergised()).as("off").isFalse();
    }
  }

  @Test
  void atTwentyPercentPartOfItPasses() {
    assertThat(psiAtDuty(20.0)).isBetween(6.0, 11.0);
  }

  @Test
  void atSeventyPercentPracticallyNothingPasses() {
    assertThat(psiAtDuty(70.0)).isLessThan(1.0);
  }

  @Test
  void theWindowIsNoWiderThanAboutTwentyToEighty() {
    ValveFitResult fit = trial.record().fit;
    if (fit == null) {
      throw new AssertionError("no fit");
    }
    double width = fit.windowHighDuty(39.0).value() - fit.windowLowDuty(39.0).value();
    assertThat(width).isBetween(0.4, 0.62);
  }

  @Test
  void theRecommendedFrequencyIsAmongTheUsualOnes() {
    ValveFitResult fit = trial.record().fit;
    if (fit == null) {
      throw new AssertionError("no fit");
    }
    assertThat(BenchResult.advice(fit, trial.plan()).frequencyHz()).isBetween(26, 39);
  }

  @Test
  void moreDutyNeverMeansMorePressure() {
    double before = 13.0;
    for (Reading reading : trial.record().sweepUp) {
      double now = psi(trial.record().gauge(reading));
      assertThat(now).isLessThanOrEqualTo(before + 0.03);
      before = now;
    }
  }

  @Test
  void theFactorySpringCracksBetweenSevenAndTenPsi() {
    assertThat(psi(trial.record().crackKpaGauge)).isBetween(7.0, 10.0);
  }

  @Test
  void everyClickIsHeard() {
    assertThat(trial.record().clicksHeard).isGreaterThanOrEqualTo(4.0);
  }

  @Test
  void aTwoPortBleedValveIsTurnedAway() {
    VirtualTrial bleed =
        VirtualTrial.run(
            BenchSetup.standard(),
            BenchPlan.standard(),
            Optional.of(BenchMistake.BLEED_VALVE),
            3L,
            step -> {});
    assertThat(bleed.verdicts().get(0).code()).isEqualTo(VerdictCode.BLEED_VALVE);
  }

  @Test
  void aPluggedSignalLineMeansTheGateNeverOpens() {
    VirtualTrial plugged =
        VirtualTrial.run(
            BenchSetup.standard(),
            BenchPlan.standard(),
            Optional.of(BenchMistake.SUPPLY_HOSE_BLOCKED),
            3L,
            step -> {});
    assertThat(plugged.record().restKpaGauge()).isLessThan(1.0);
    assertThat(plugged.passed()).isFalse();
  }

  /** A prediction for another hose holds when the valve is measured with that hose. */
  @Test
  void predictionForMoreHoseComesTrue() {
    ValveFitResult fit = trial.record().fit;
    if (fit == null) {
      throw new AssertionError("no fit");
    }
    double metres = 4.0;
    ChamberParams longer = ChamberParams.DEFAULT.withMoreHose(metres);
    ValveModel predicted = ValveAdvice.withVolume(fit.valve(), 60.0, 1e6 * longer.volumeM3());
    BenchRecord measured =
        VirtualTrial.run(
                BenchSetup.standard().withChamber(longer),
                BenchPlan.standard().withFrequencyHz(39.0),
                Optional.empty(),
                4L,
                step -> {})
            .record();
    for (Reading reading : measured.sweepUp) {
      double expected =
          predicted
              .steady(39.0, reading.dutyFraction(), fit.supplyKpaAbs(), fit.ambientKpaAbs())
              .meanKpaAbs();
      assertThat(reading.meanKpaAbs()).isBetween(expected - 2.0, expected + 2.0);
    }
  }
}
