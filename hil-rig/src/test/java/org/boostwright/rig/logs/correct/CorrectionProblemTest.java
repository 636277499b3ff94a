package org.boostwright.rig.logs.correct;

import static org.assertj.core.api.Assertions.assertThat;

import java.util.Arrays;
import org.boostwright.core.table.Table2d;
import org.boostwright.rig.scenario.ProjectCarSettings;
import org.junit.jupiter.api.Test;

/** The quadratic programme by itself: drives ask for 4 % more at 4500, 5500 and 6500 1/min. */
class CorrectionProblemTest {
  private static final Table2d TABLE = ProjectCarSettings.load().baseDuty();
  private static final double[] RPM = {4500, 5500, 6500};

  private static double[] solved(double... rooms) {
    int n = TABLE.values().length;
    double[] lowest = new double[n];
    double[] highest = new double[n];
    Arrays.fill(lowest, -0.12);
    Arrays.fill(highest, 0.05);
    CorrectionProblem problem = new CorrectionProblem(TABLE, lowest, highest);
    for (double rpm : RPM) {
      problem.fit(
          EvidenceBin.of(
              java.util.Collections.nCopies(
                  400, new Evidence(1, 100.0, rpm, 0.04, 0.2, 0.0, true, false, false))));
    }
    for (int i = 0; i < rooms.length; i++) {
      problem.stayBelow(CornerWeights.at(TABLE, 100.0, RPM[i]), rooms[i]);
    }
    double[] changes = problem.solve();
    return Arrays.copyOfRange(changes, n - 3, n);
  }

  @Test
  void withoutLimitsTheWishIsFollowed() {
    for (double change : solved()) {
      assertThat(change).isBetween(0.03, 0.05);
    }
  }

  @Test
  void everyPlaceKeepsItsOwnLimitNotOnlyTheLast() {
    double[] changes = solved(0.0, 0.01, 0.02);
    assertThat(changes[0]).isLessThanOrEqualTo(1e-6);
    assertThat(changes[1]).isLessThanOrEqualTo(0.01 + 1e-6);
    assertThat(changes[2]).isBetween(0.015, 0.02 + 1e-6);
  }
}
