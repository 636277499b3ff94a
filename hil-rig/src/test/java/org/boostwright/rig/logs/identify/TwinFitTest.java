package org.boostwright.rig.logs.identify;

import static org.assertj.core.api.Assertions.assertThat;

import java.util.ArrayList;
import java.util.List;
import org.boostwright.core.settings.Settings;
import org.boostwright.rig.logs.LearningCar;
import org.boostwright.rig.logs.pulls.DriveLog;
import org.boostwright.rig.logs.pulls.Pull;
import org.boostwright.rig.logs.pulls.PullFinder;
import org.boostwright.rig.logs.pulls.PullRules;
import org.boostwright.rig.plant.Atmosphere;
import org.boostwright.rig.plant.PlantParams;
import org.boostwright.rig.scenario.PullPlan;
import org.junit.jupiter.api.Test;

/**
 * Cars of full tolerances, each driven through two ordinary pulls: the answer of the car fitted to
 * the logs against the answer of the true car to a clean step of duty, at three engine speeds. Half
 * of the cars are driven on base duty alone, the other half with pressure feedback.
 */
class TwinFitTest {
  private static final boolean FULL = Boolean.getBoolean("boostwright.logs.full");
  private static final double SHARE = 0.15;

  @Test
  void gainTimeConstantAndDeadTimeFromPullsAreWithin15PercentOfACleanStep() {
    int cars = FULL ? 30 : 2;
    double gain = 0.0;
    double tau = 0.0;
    double dead = 0.0;
    double rms = 0.0;
    for (int seed = 1; seed <= cars; seed++) {
      Settings project = LearningCar.settings();
      Settings settings = seed % 2 == 0 ? project : LearningCar.baseDutyAlone(project);
      PlantParams car = PlantParams.PROJECT_CAR.spread(seed, 1.0);
      List<Pull> pulls = new ArrayList<>();
      for (DriveLog log :
          LearningCar.logs(LearningCar.pulls(settings, car, PullPlan.STANDARD, 1000L * seed, 2))) {
        pulls.addAll(PullFinder.find(log, PullRules.FULL_THROTTLE));
      }
      assertThat(pulls).hasSize(2).allMatch(Pull::usable);
      CarTwin twin = TwinFit.fit(PlantParams.PROJECT_CAR, pulls);
      rms = Math.max(rms, twin.rmsKpa());
      for (double rpm : new double[] {4000.0, 5000.0, 6000.0}) {
        Fopdt found =
            BandResponse.of(twin.car(), RecordedDrive.air(pulls.get(0)), settings, rpm).model();
        Fopdt truth = BandResponse.of(car, Atmosphere.at(0.0, 20.0), settings, rpm).model();
        gain = Math.max(gain, Math.abs(found.gain() / truth.gain() - 1.0));
        tau = Math.max(tau, Math.abs(found.tauSeconds() / truth.tauSeconds() - 1.0));
        dead = Math.max(dead, Math.abs(found.deadSeconds() / truth.deadSeconds() - 1.0));
      }
    }
    System.out.printf(
        "%d cars from two pulls: gain off by at most %.1f %%, time constant %.1f %%, dead time"
            + " %.1f %%; worst fit %.2f kPa%n",
        cars, 100 * gain, 100 * tau, 100 * dead, rms);
    assertThat(gain).isLessThanOrEqualTo(SHARE);
    assertThat(tau).isLessThanOrEqualTo(SHARE);
    assertThat(dead).isLessThanOrEqualTo(SHARE);
  }
}
