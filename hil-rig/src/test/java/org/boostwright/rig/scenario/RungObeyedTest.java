package org.boostwright.rig.scenario;

import static org.assertj.core.api.Assertions.assertThat;

import java.util.ArrayList;
import java.util.List;
import org.boostwright.core.ladder.Rung;
import org.boostwright.core.ladder.RungState;
import org.boostwright.core.ladder.RungState.Status;
import org.boostwright.core.ladder.Standing;
import org.boostwright.core.record.LogFormat;
import org.boostwright.core.settings.Settings;
import org.boostwright.core.state.Permission;
import org.boostwright.rig.plant.PlantParams;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;

/** In every tick of a pull with everything asked for, the duty stays where the rung holds it. */
class RungObeyedTest {
  private static final int COIL_SUPPLY = LogFormat.column("coil_supply_closed");
  private static final int PWM = LogFormat.column("pwm_enabled");
  private static final int TRIM = LogFormat.column("trim_duty_fraction");

  private static Standing standing(int held) {
    List<RungState> states = new ArrayList<>();
    for (Rung rung : Rung.values()) {
      Status status = rung.ordinal() < held ? Status.PROVEN : Status.MISSING;
      states.add(new RungState(rung, status, "", null));
    }
    return new Standing(states);
  }

  @ParameterizedTest(name = "{0} rungs hold: duty up to {1} of 1, trim {2}")
  @CsvSource({
    "0, 0, false",
    "1, 0, false",
    "2, 0, false",
    "3, 0, false",
    "4, 0.30, false",
    "5, 0.47, false",
    "6, 0.47, true",
    "7, 0.47, true"
  })
  void dutyObeysTheRungInEveryTick(int held, double highest, boolean trims) {
    Settings settings = ProjectCarSettings.load();
    Permission permission = standing(held).permission(settings.valve());
    PullRun run =
        VirtualPull.run(
            settings, permission, PlantParams.PROJECT_CAR, PullPlan.STANDARD, share -> {});
    RunLog log = run.log();
    double most = 0.0;
    double mostTrim = 0.0;
    for (int row = 0; row < log.rows(); row++) {
      double duty = log.get(row, LogFormat.DUTY);
      assertThat(duty).as("row %d", row).isBetween(0.0, highest);
      most = Math.max(most, duty);
      mostTrim = Math.max(mostTrim, Math.abs(log.get(row, TRIM)));
      if (highest == 0.0) {
        assertThat(log.get(row, COIL_SUPPLY)).as("coil supply, row %d", row).isZero();
        assertThat(log.get(row, PWM)).as("PWM, row %d", row).isZero();
      }
    }
    // The twin: what is allowed is used.
    assertThat(most).isGreaterThanOrEqualTo(0.85 * highest);
    assertThat(mostTrim > 0.0).as("trims").isEqualTo(trims);
  }
}
