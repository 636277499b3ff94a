package org.boostwright.rig.card;

import static org.assertj.core.api.Assertions.assertThat;

import java.util.ArrayList;
import java.util.EnumSet;
import java.util.List;
import java.util.Set;
import org.boostwright.core.settings.Settings;
import org.boostwright.core.state.Permission;
import org.boostwright.core.table.Table2d;
import org.boostwright.rig.logs.pulls.DriveLog;
import org.boostwright.rig.plant.PlantParams;
import org.boostwright.rig.scenario.ProjectCarSettings;
import org.boostwright.rig.scenario.PullPlan;
import org.boostwright.rig.scenario.VirtualPull;
import org.junit.jupiter.api.BeforeAll;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.EnumSource;

/** What the card says after pulls of the virtual car. */
class CardTest {
  private static final Set<Fine> ALL = EnumSet.allOf(Fine.class);
  private static final Permission FULL_TABLE = new Permission(true, 1.0, false);
  private static final Settings CAR = ProjectCarSettings.load();
  private static List<DriveLog> low = List.of();

  /** Base duty so much lower (or higher) than the project car's own. */
  private static Settings withDuty(double change) {
    Table2d table = CAR.baseDuty();
    double[] cells = table.values();
    for (int i = 0; i < cells.length; i++) {
      cells[i] = cells[i] > 0.0 ? Math.max(0.0, cells[i] + change) : 0.0;
    }
    return CAR.withBaseDuty(new Table2d(table.rows(), table.columns(), cells));
  }

  private static DriveLog pull(Settings settings, long seed, PullPlan.Event... events) {
    PullPlan plan = PullPlan.STANDARD.withSeed(seed).withEvents(events);
    return DriveLog.ofRecord(
        "pull-" + seed,
        VirtualPull.run(settings, FULL_TABLE, PlantParams.PROJECT_CAR, plan, share -> {})
            .log()
            .recordRows());
  }

  private static List<DriveLog> pulls(Settings settings, int count) {
    List<DriveLog> logs = new ArrayList<>();
    for (int i = 1; i <= count; i++) {
      logs.add(pull(settings, i));
    }
    return logs;
  }

  @BeforeAll
  static void driveLowPulls() {
    low = pulls(withDuty(-0.06), 3);
  }

  @Test
  void threeLowPullsWithEveryTickAreRaisedByAtMostFivePercent() {
    Card card = Card.of(withDuty(-0.06), low, ALL);
    assertThat(card.advice()).isEqualTo(Advice.RAISE);
    assertThat(card.cells()).isNotEmpty();
    assertThat(card.cells()).allMatch(c -> c.change() <= 0.05 + 1e-9);
    assertThat(card.predictedPeakKpaAbs()).isGreaterThan(card.peakKpaAbs() + 2.0);
    assertThat(card.predictedPeakKpaAbs()).isLessThan(186.0);
    assertThat(card.headroomKpa() + card.peakKpaAbs()).isEqualTo(200.0);
    assertThat(card.sensorKpa() + card.peakKpaAbs()).isEqualTo(300.0);
  }

  @ParameterizedTest
  @EnumSource(Fine.class)
  void withoutATickNothingIsRaised(Fine missing) {
    Set<Fine> ticks = EnumSet.complementOf(EnumSet.of(missing));
    Card card = Card.of(withDuty(-0.06), low, ticks);
    assertThat(card.advice()).isEqualTo(Advice.HOLD);
    assertThat(card.cells()).isEmpty();
    assertThat(card.reasons()).singleElement().asString().contains(missing.words());
  }

  @Test
  void twoPullsAreNotEnoughToRaise() {
    Card card = Card.of(withDuty(-0.06), low.subList(0, 2), ALL);
    assertThat(card.advice()).isEqualTo(Advice.HOLD);
    assertThat(card.reasons().get(0)).contains("2 of 3");
  }

  @Test
  void pullsThatDifferAreNotRaised() {
    List<DriveLog> mixed = List.of(low.get(0), low.get(1), pull(withDuty(-0.13), 3));
    Card card = Card.of(withDuty(-0.06), mixed, ALL);
    assertThat(card.advice()).isEqualTo(Advice.HOLD);
    assertThat(card.reasons().get(0)).contains("differ");
  }

  @Test
  void overTheTargetIsLoweredAtOnceWithoutAnyTick() {
    Settings high = withDuty(0.05);
    Card card = Card.of(high, pulls(high, 1), Set.of());
    assertThat(card.advice()).isEqualTo(Advice.LOWER);
    assertThat(card.predictedPeakKpaAbs()).isLessThanOrEqualTo(card.peakKpaAbs());
    assertThat(card.cells()).allMatch(c -> c.change() < 0.0);
  }

  @Test
  void aFaultStopsAndSaysWhatToCheckInOrder() {
    DriveLog stuck =
        pull(CAR, 1, new PullPlan.Event(1.0, faults -> faults.wastegateStuckLift = 0.0));
    Card card = Card.of(CAR, List.of(stuck), ALL);
    assertThat(card.advice()).isEqualTo(Advice.STOP);
    assertThat(card.reasons().get(0)).contains("overboost").contains("actuator hose");
  }

  @Test
  void noPullIsHeld() {
    assertThat(Card.of(CAR, List.of(), ALL).advice()).isEqualTo(Advice.HOLD);
  }
}
