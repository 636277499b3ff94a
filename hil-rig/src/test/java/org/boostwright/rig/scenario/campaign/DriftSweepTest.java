package org.boostwright.rig.scenario.campaign;

import static org.assertj.core.api.Assertions.assertThat;

import java.util.ArrayList;
import java.util.Collections;
import java.util.List;
import org.boostwright.core.settings.Settings;
import org.boostwright.core.table.Axis;
import org.boostwright.core.table.Curve;
import org.boostwright.rig.inject.FaultKind;
import org.boostwright.rig.inject.FaultKinds;
import org.boostwright.rig.plant.PlantParams;
import org.boostwright.rig.scenario.ProjectCarSettings;
import org.junit.jupiter.api.Tag;
import org.junit.jupiter.api.Test;

/** A pressure sensor that is off, over a few drawn cars. */
@Tag("S5")
class DriftSweepTest {
  private static final List<FaultKind> SCALE =
      FaultKinds.all().stream().filter(kind -> kind.id().equals("s5_map_scale")).toList();

  private static List<DriftSweep.Line> sweep(Settings settings, int threads) throws Exception {
    List<Long> done = Collections.synchronizedList(new ArrayList<>());
    List<DriftSweep.Line> lines =
        DriftSweep.run(
            new CampaignPlan(5L, 5L, settings, PlantParams.PROJECT_CAR, SCALE), threads, done::add);
    assertThat(done).hasSize(lines.size());
    return lines;
  }

  @Test
  void withTheProjectCarsCeilingNoAmountIsUnsafeAndThreadsDoNotMatter() throws Exception {
    List<DriftSweep.Line> lines = sweep(ProjectCarSettings.load(), 1);
    assertThat(lines).allSatisfy(line -> assertThat(line.unsafe()).as("%s", line).isZero());
    assertThat(lines).allSatisfy(line -> assertThat(line.runs()).isBetween(4, 5));
    assertThat(sweep(ProjectCarSettings.load(), 2)).isEqualTo(lines);
  }

  @Test
  void withoutACeilingADriftWhileDrivingIsUnsafeAndOneBeforeKeyOnIsNot() throws Exception {
    Settings car = ProjectCarSettings.load();
    Settings wide =
        car.withLimits(
            car.limits().withDutyCeiling(new Curve(new Axis(1500.0, 2000.0), 0.0, 0.85)));
    for (DriftSweep.Line line : sweep(wide, 2)) {
      double gain = line.drift().amount();
      if (line.since() == DriftSweep.Since.KEY_ON) {
        assertThat(line.unsafe()).as("gain %.2f", gain).isZero();
      } else if (gain < 0.8) {
        assertThat(line.unsafe()).as("gain %.2f", gain).isPositive();
        assertThat(line.peakOverKpa()).isGreaterThan(12.0);
      }
    }
  }
}
