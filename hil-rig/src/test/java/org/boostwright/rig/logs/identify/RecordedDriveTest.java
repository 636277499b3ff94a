package org.boostwright.rig.logs.identify;

import static org.assertj.core.api.Assertions.assertThat;

import java.util.List;
import org.boostwright.core.record.LogFormat;
import org.boostwright.core.settings.Settings;
import org.boostwright.rig.logs.LearningCar;
import org.boostwright.rig.logs.pulls.DriveLog;
import org.boostwright.rig.logs.pulls.Pull;
import org.boostwright.rig.logs.pulls.PullFinder;
import org.boostwright.rig.logs.pulls.PullRules;
import org.boostwright.rig.plant.PlantParams;
import org.boostwright.rig.scenario.PullPlan;
import org.boostwright.rig.scenario.PullRun;
import org.junit.jupiter.api.BeforeAll;
import org.junit.jupiter.api.Test;

/** The virtual car led through its own recording, in air of 20 degC. */
class RecordedDriveTest {
  private static Pull pull;
  private static double coldestC;

  @BeforeAll
  static void drive() {
    Settings settings = LearningCar.baseDutyAlone(LearningCar.settings());
    PullRun run =
        LearningCar.pulls(settings, PlantParams.PROJECT_CAR, PullPlan.STANDARD, 5, 1).get(0);
    List<double[]> rows = run.log().recordRows();
    int air = LogFormat.column("intake_air_c");
    coldestC = rows.stream().mapToDouble(row -> row[air]).min().orElseThrow();
    DriveLog log = LearningCar.log(run);
    pull = PullFinder.find(log, PullRules.FULL_THROTTLE).get(0);
  }

  @Test
  void theDipAsTheEngineStartsIsNotTakenForTheAirAround() {
    assertThat(coldestC).isLessThan(15.0);
    assertThat(RecordedDrive.air(pull).kelvin() - 273.15).isBetween(19.0, 21.0);
  }

  @Test
  void theSameCarMeetsItsOwnRecordingWithin0Point8Kpa() {
    double[] recorded = RecordedDrive.recorded(pull);
    double[] driven = RecordedDrive.driven(PlantParams.PROJECT_CAR.withPwmHz(30.0), pull);
    for (int i = 0; i < recorded.length; i++) {
      assertThat(Math.abs(driven[i] - recorded[i])).as("point %d", i).isLessThan(0.8);
    }
  }
}
