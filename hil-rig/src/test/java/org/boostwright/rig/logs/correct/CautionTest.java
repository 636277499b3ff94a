package org.boostwright.rig.logs.correct;

import static org.assertj.core.api.Assertions.assertThat;

import java.util.ArrayList;
import java.util.List;
import java.util.function.Consumer;
import org.boostwright.core.monitor.FaultCode;
import org.boostwright.core.record.LogFormat;
import org.boostwright.core.settings.Settings;
import org.boostwright.core.state.SafetyState;
import org.boostwright.rig.logs.LearningCar;
import org.boostwright.rig.logs.pulls.DriveLog;
import org.boostwright.rig.plant.PlantParams;
import org.boostwright.rig.scenario.PullPlan;
import org.boostwright.rig.scenario.PullRun;
import org.junit.jupiter.api.BeforeAll;
import org.junit.jupiter.api.Test;

/**
 * Base duty 20 % short, so every visited cell wants more; then each reason not to raise is put into
 * the logs. The first test is the twin of all others: without a reason the same logs do raise.
 */
class CautionTest {
  private static Settings settings;
  private static List<PullRun> runs;

  @BeforeAll
  static void drive() {
    settings = LearningCar.scaledBase(LearningCar.baseDutyAlone(LearningCar.settings()), 0.8, -1);
    runs = LearningCar.pulls(settings, PlantParams.PROJECT_CAR, PullPlan.STANDARD, 1, 2);
  }

  private static List<DriveLog> logs(Consumer<double[]> change) {
    List<DriveLog> logs = new ArrayList<>();
    for (PullRun run : runs) {
      List<double[]> rows = run.log().recordRows();
      for (int r = run.openedAt(); r < run.shutAt(); r++) {
        change.accept(rows.get(r));
      }
      logs.add(DriveLog.ofRecord("pull", rows));
    }
    return logs;
  }

  private static Correction correct(List<DriveLog> logs) {
    return TableCorrection.of(settings, PlantParams.PROJECT_CAR, logs, Caution.DEFAULT, true);
  }

  private static double mostUpVisited(Correction correction) {
    assertThat(correction.cells()).isNotEmpty();
    return correction.cells().stream()
        .filter(CellChange::visited)
        .mapToDouble(CellChange::change)
        .max()
        .orElse(0.0);
  }

  @Test
  void soundLogsRaiseButNeverByMoreThan5Percent() {
    Correction correction = correct(logs(row -> {}));
    assertThat(mostUpVisited(correction)).isBetween(0.02, 0.05);
    for (CellChange cell : correction.cells()) {
      if (!cell.visited()) {
        assertThat(Math.abs(cell.change())).isLessThanOrEqualTo(0.015);
      }
    }
  }

  @Test
  void saturatedRowsNeverRaise() {
    Correction correction =
        correct(logs(row -> row[LogFormat.FINDINGS] = FaultCode.TARGET_OUT_OF_REACH.bit()));
    assertThat(mostUpVisited(correction)).isLessThanOrEqualTo(0.0);
  }

  @Test
  void rowsWithASuspectedLeakNeverRaise() {
    Correction correction =
        correct(logs(row -> row[LogFormat.FINDINGS] = FaultCode.SPOOL_NOT_RISING.bit()));
    assertThat(mostUpVisited(correction)).isLessThanOrEqualTo(0.0);
  }

  @Test
  void rowsAfterAFaultNeverRaise() {
    Correction correction = correct(faultBefore());
    if (!correction.refused()) {
      assertThat(mostUpVisited(correction)).isLessThanOrEqualTo(0.0);
    }
    assertThat(correction.refused() || correction.cells().size() == 35).isTrue();
  }

  /** A fault at rest five seconds before the pull: its rows are sound, its drive is not. */
  private static List<DriveLog> faultBefore() {
    List<DriveLog> logs = new ArrayList<>();
    for (PullRun run : runs) {
      List<double[]> rows = run.log().recordRows();
      rows.get(run.openedAt() - 1000)[LogFormat.FAULTS] = FaultCode.MAP_FALL_UNEXPLAINED.bit();
      logs.add(DriveLog.ofRecord("pull", rows));
    }
    return logs;
  }

  @Test
  void rowsAtRestSayNothing() {
    Correction correction =
        correct(
            logs(
                row -> {
                  row[LogFormat.STATE] = SafetyState.HELD_AT_SPRING.ordinal();
                  row[LogFormat.FAULTS] = FaultCode.OVERBOOST.bit();
                }));
    assertThat(correction.refusal()).isNotNull();
    assertThat(correction.changes()).isFalse();
  }

  @Test
  void aSuspicionOfTheDiagnosisHoldsEveryRiseBack() {
    Correction correction =
        TableCorrection.of(
            settings, PlantParams.PROJECT_CAR, logs(row -> {}), Caution.DEFAULT, false);
    assertThat(correction.cells()).allMatch(cell -> cell.change() <= 0.0);
  }

  @Test
  void oneSinglePullIsTooFewToRaise() {
    Correction correction = correct(logs(row -> {}).subList(0, 1));
    assertThat(mostUpVisited(correction)).isLessThanOrEqualTo(0.0);
    assertThat(correction.cells())
        .anyMatch(cell -> cell.reason() == CellReason.NOT_RAISED_TOO_FEW_PULLS);
  }

  @Test
  void logsOfAnotherTableAreRefused() {
    Settings other = LearningCar.scaledBase(settings, 1.25, -1);
    Correction correction =
        TableCorrection.of(other, PlantParams.PROJECT_CAR, logs(row -> {}), Caution.DEFAULT, true);
    assertThat(correction.refusal()).isNotNull();
    assertThat(correction.refusal().code()).isEqualTo("other_table_recorded");
  }
}
