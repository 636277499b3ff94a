package org.boostwright.rig.scenario;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import java.nio.file.Path;
import java.util.List;
import java.util.function.IntToDoubleFunction;
import org.boostwright.core.Inputs;
import org.boostwright.core.Outputs;
import org.boostwright.core.monitor.FaultCode;
import org.boostwright.core.record.LogFormat;
import org.boostwright.core.settings.Settings;
import org.boostwright.core.settings.file.SettingsFile;
import org.junit.jupiter.api.Test;

/** Made-up pulls whose measures can be counted by hand; the limit of the car is 200 kPa. */
class PullMeasuresTest {
  private static final Settings CAR =
      SettingsFile.load(Path.of(System.getProperty("boostwright.root"), "docs", "project-car.toml"))
          .orThrow();

  /** 1000 rows of 5 ms, throttle open from row 100 to 900, target 180 kPa. */
  private static PullMeasures measures(IntToDoubleFunction map, long faultsInRow500) {
    RunLog log = new RunLog();
    for (int i = 0; i < 1000; i++) {
      Outputs out = new Outputs();
      out.targetKpaAbs = 180.0;
      out.activeFaults = i == 500 ? faultsInRow500 : 0L;
      double[] row = new double[LogFormat.COLUMN_COUNT];
      LogFormat.fill(row, i * 5_000_000L, new Inputs(), out);
      log.add(row, map.applyAsDouble(i), 100.0 + i * 0.01, 2000.0 + i);
    }
    return PullMeasures.of(new PullRun(CAR, PullPlan.STANDARD, log, 100, 900, List.of()));
  }

  @Test
  void reachingOvershootAndSettledErrorAreAsCountedByHand() {
    // Target less 2 kPa in row 300, the 201st tick; 185 kPa for 0.5 s; then 1.5 kPa low.
    PullMeasures m = measures(i -> i < 300 ? 150.0 : i < 400 ? 185.0 : 178.5, 0L);
    assertThat(m.reachSeconds()).isCloseTo(1.005, within(1e-9));
    assertThat(m.reachRpm()).isEqualTo(2300.0);
    assertThat(m.overshootKpa()).isEqualTo(5.0);
    assertThat(m.settledErrorKpa()).isCloseTo(-1.5, within(1e-9));
    assertThat(m.peakMapKpaAbs()).isEqualTo(185.0);
    assertThat(m.aboveLimitSeconds()).isZero();
    assertThat(m.pullSeconds()).isCloseTo(4.0, within(1e-9));
    assertThat(m.faults()).isZero();
  }

  @Test
  void theSettledErrorIsTheWorstMeanOver100MsFromOneSecondAfterReaching() {
    // 10 kPa off for 50 ms is 5 kPa over 100 ms; the same before settling does not count.
    PullMeasures m =
        measures(
            i ->
                i < 300 ? 150.0 : i >= 450 && i < 460 ? 100.0 : i >= 600 && i < 610 ? 190.0 : 180.0,
            0L);
    assertThat(m.settledErrorKpa()).isCloseTo(5.0, within(1e-9));
    assertThat(m.settledErrorRpm()).isBetween(2609.0, 2619.0);
  }

  @Test
  void timeAboveTheLimitIsCountedAlsoAfterTheThrottleShut() {
    PullMeasures m = measures(i -> i >= 890 && i < 910 ? 201.0 : 190.0, 0L);
    assertThat(m.aboveLimitSeconds()).isCloseTo(0.1, within(1e-9));
    assertThat(measures(i -> 200.0, 0L).aboveLimitSeconds()).isZero();
  }

  @Test
  void whatWasNeverReachedIsNotANumber() {
    PullMeasures m = measures(i -> 170.0, 0L);
    assertThat(m.reachSeconds()).isNaN();
    assertThat(m.overshootKpa()).isNaN();
    assertThat(m.settledErrorKpa()).isNaN();
  }

  @Test
  void faultsThatRestAreToldFromFindings() {
    PullMeasures m =
        measures(i -> 170.0, FaultCode.OVERBOOST.bit() | FaultCode.TARGET_LIMITED.bit());
    assertThat(m.faults()).isEqualTo(FaultCode.OVERBOOST.bit());
    assertThat(m.findings()).isEqualTo(FaultCode.TARGET_LIMITED.bit());
  }
}
