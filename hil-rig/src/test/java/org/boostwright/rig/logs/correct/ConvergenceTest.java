package org.boostwright.rig.logs.correct;

import static org.assertj.core.api.Assertions.assertThat;

import java.util.ArrayList;
import java.util.List;
import org.boostwright.core.record.LogFormat;
import org.boostwright.core.settings.Settings;
import org.boostwright.core.table.Table2d;
import org.boostwright.rig.logs.LearningCar;
import org.boostwright.rig.plant.PlantParams;
import org.boostwright.rig.plant.SensorParams;
import org.boostwright.rig.scenario.PullPlan;
import org.boostwright.rig.scenario.PullRun;
import org.boostwright.rig.scenario.RunLog;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.MethodSource;

/**
 * Base duty wrong by 20 % either way, everywhere or in one column; two rounds of three pulls each
 * on base duty alone; then three more pulls are measured by the true pressure. Requirement: within
 * 3 kPa of the target in visited cells.
 */
class ConvergenceTest {
  private static final boolean FULL = Boolean.getBoolean("boostwright.logs.full");
  private static final double SETTLED_KPA = 3.0;
  private static final double OVER_TARGET_KPA = 5.0;
  private static final int TARGET = LogFormat.column("target_kpa_abs");

  record Case(double factor, int column, long seed) {}

  static List<Case> cases() {
    if (!FULL) {
      return List.of(new Case(0.8, -1, 1), new Case(1.2, -1, 12), new Case(1.2, 4, 1));
    }
    List<Case> cases = new ArrayList<>();
    for (long seed = 1; seed <= 15; seed++) {
      for (double factor : new double[] {0.8, 1.2}) {
        cases.add(new Case(factor, -1, seed));
        cases.add(new Case(factor, 4, seed)); // 4500 rpm
      }
    }
    return cases;
  }

  @ParameterizedTest
  @MethodSource("cases")
  void twoRoundsOfThreePullsBringBoostWithin3KpaOfTheTarget(Case c) {
    // A sensor's own error cannot be seen in a log, so it is left out; every other part varies.
    PlantParams car =
        PlantParams.PROJECT_CAR.spread(c.seed(), 0.3).withSensors(SensorParams.DEFAULT);
    Settings settings =
        LearningCar.scaledBase(
            LearningCar.baseDutyAlone(LearningCar.settings()), c.factor(), c.column());
    StringBuilder story = new StringBuilder();
    Correction last = null;
    for (int round = 0; round < 2; round++) {
      List<PullRun> runs =
          LearningCar.pulls(settings, car, PullPlan.STANDARD, 100 * c.seed() + 10 * round, 3);
      last =
          TableCorrection.of(
              settings, PlantParams.PROJECT_CAR, LearningCar.logs(runs), Caution.DEFAULT, true);
      assertThat(last.refusal()).isNull();
      story.append(worst(runs)).append(" -> ");
      careful(last, runs);
      settings = settings.withBaseDuty(last.after());
    }
    List<PullRun> proof =
        LearningCar.pulls(settings, car, PullPlan.STANDARD, 100 * c.seed() + 50, 3);
    List<double[]> errors = cellErrors(last, proof);
    double most = 0.0;
    for (double[] e : errors) {
      most = Math.max(most, Math.abs(e[1]));
      story.append(String.format("%.0f rpm %+.2f kPa, ", e[0], e[1]));
    }
    System.out.println(c + ": " + story);
    assertThat(errors).hasSizeGreaterThanOrEqualTo(2);
    assertThat(most).isLessThanOrEqualTo(SETTLED_KPA);
  }

  private static String worst(List<PullRun> runs) {
    double worst = 0.0;
    double peak = 0.0;
    long faults = 0;
    for (PullRun run : runs) {
      for (int r = run.openedAt() + 500; r < run.shutAt(); r++) {
        double e = run.log().get(r, RunLog.TRUE_MAP) - run.log().get(r, TARGET);
        worst = Math.abs(e) > Math.abs(worst) ? e : worst;
        peak = Math.max(peak, run.log().get(r, RunLog.TRUE_MAP));
        faults |= (long) run.log().get(r, LogFormat.FAULTS);
      }
    }
    return String.format("worst %+.1f peak %.1f faults %x", worst, peak, faults);
  }

  /** Caps, and the prediction checked by the recorded pressure and the gain, row by row. */
  private static void careful(Correction step, List<PullRun> runs) {
    for (CellChange cell : step.cells()) {
      assertThat(cell.change()).isLessThanOrEqualTo(0.05 + 1e-9);
      if (!cell.visited()) {
        assertThat(Math.abs(cell.change()))
            .isLessThanOrEqualTo(Caution.DEFAULT.mostUnvisited() + 1e-9);
      }
    }
    Table2d before = step.before();
    for (PullRun run : runs) {
      for (int r = run.openedAt() + 200; r < run.shutAt() - 20; r++) {
        RunLog log = run.log();
        double throttle = log.get(r, LogFormat.column("throttle_pct"));
        double rpm = log.get(r, LogFormat.column("engine_rpm"));
        double rise = step.after().at(throttle, rpm) - before.at(throttle, rpm);
        double map = log.get(r, RunLog.TRUE_MAP);
        if (rise > 0.0) {
          assertThat(map + rise * step.gain().at(rpm))
              .isLessThanOrEqualTo(log.get(r, TARGET) + OVER_TARGET_KPA + 0.5);
        }
      }
    }
  }

  /** Weighted error of true pressure in each visited cell of full throttle: rpm and kPa. */
  private static List<double[]> cellErrors(Correction last, List<PullRun> proof) {
    Table2d table = last.after();
    int columns = table.columns().size();
    double[] sum = new double[columns];
    double[] weight = new double[columns];
    for (PullRun run : proof) {
      RunLog log = run.log();
      // Settled: the true pressure moved less than 3 kPa in 300 ms.
      for (int r = run.openedAt() + 200; r < run.shutAt(); r++) {
        double map = log.get(r, RunLog.TRUE_MAP);
        if (Math.abs(map - log.get(r - 60, RunLog.TRUE_MAP)) < 3.0) {
          double rpm = log.get(r, RunLog.TRUE_RPM);
          int c = table.columns().locate(rpm);
          double f = table.columns().fraction(c, rpm);
          double e = map - log.get(r, TARGET);
          sum[c] += (1 - f) * e;
          weight[c] += 1 - f;
          sum[c + 1] += f * e;
          weight[c + 1] += f;
        }
      }
    }
    List<double[]> errors = new ArrayList<>();
    for (CellChange cell : last.cells()) {
      int c = table.columns().locate(cell.rpm());
      c = table.columns().point(c) == cell.rpm() ? c : c + 1;
      if (cell.visited() && cell.demandPct() == 100.0 && weight[c] > 0.0) {
        errors.add(new double[] {cell.rpm(), sum[c] / weight[c]});
      }
    }
    return errors;
  }
}
