package org.boostwright.core.control;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import java.util.Random;
import org.boostwright.core.settings.ValveSettings;
import org.boostwright.core.table.Axis;
import org.boostwright.core.table.Curve;
import org.junit.jupiter.api.Test;

/** Command to duty and back, and the gap below the window. */
class DutyWindowTest {
  private static final double LOW = 0.12;
  private static final double HIGH = 0.75;
  private static final Curve MAP = new Curve(new Axis(0.0, 0.2, 0.7, 1.0), LOW, 0.3, 0.5, HIGH);

  private final DutyWindow window = new DutyWindow(new ValveSettings(30.0, LOW, HIGH, MAP, 30.0));

  @Test
  void dutyFollowsTheBenchsCurveAndClampsAtTheWindow() {
    assertThat(window.dutyOf(0.0)).isEqualTo(LOW);
    assertThat(window.dutyOf(0.1)).isCloseTo(0.21, within(1e-12));
    assertThat(window.dutyOf(1.0)).isCloseTo(HIGH, within(1e-12));
    assertThat(window.dutyOf(-1.0)).isEqualTo(LOW);
    assertThat(window.dutyOf(2.0)).isCloseTo(HIGH, within(1e-12));
    assertThat(window.dutyOf(Double.NaN)).isNaN();
    assertThat(window.width()).isCloseTo(0.63, within(1e-12));
  }

  @Test
  void commandIsTheInverseOfDutyInsideTheWindow() {
    Random random = new Random(6);
    for (int i = 0; i < 2_000; i++) {
      double command = random.nextDouble();
      assertThat(window.commandOf(window.dutyOf(command))).isCloseTo(command, within(1e-12));
    }
    for (double command : new double[] {0.0, 0.2, 0.7, 1.0}) {
      assertThat(window.commandOf(MAP.at(command))).isCloseTo(command, within(1e-12));
    }
  }

  @Test
  void belowTheWindowTheCommandIsZeroAndAboveItOne() {
    assertThat(window.commandOf(0.0)).isEqualTo(0.0);
    assertThat(window.commandOf(LOW)).isEqualTo(0.0);
    assertThat(window.commandOf(-1.0)).isEqualTo(0.0);
    assertThat(window.commandOf(HIGH)).isEqualTo(1.0);
    assertThat(window.commandOf(1.0)).isEqualTo(1.0);
    assertThat(window.commandOf(Double.NaN)).isNaN();
  }

  @Test
  void aDutyInTheGapIsLeftUpwardsFromTwoThirdsOfTheEdge() {
    assertThat(window.realisable(0.0)).isEqualTo(0.0);
    assertThat(window.realisable(0.079)).isEqualTo(0.0);
    assertThat(window.realisable(0.081)).isEqualTo(LOW);
  }

  @Test
  void andDownwardsFromOneThird() {
    assertThat(window.realisable(0.3)).isEqualTo(0.3);
    assertThat(window.realisable(LOW)).isEqualTo(LOW);
    assertThat(window.realisable(0.041)).isEqualTo(LOW);
    assertThat(window.realisable(0.039)).isEqualTo(0.0);
    assertThat(window.realisable(0.079)).as("now from below").isEqualTo(0.0);
  }

  @Test
  void rippleOfAThirdOfTheEdgeNeverHunts() {
    // A wish that swings by less than the hysteresis (a third of the edge) changes once at most.
    Random random = new Random(7);
    for (double middle = 0.0; middle < 2.0 * LOW; middle += 0.005) {
      window.reset();
      int changes = 0;
      double last = window.realisable(middle);
      for (int i = 0; i < 500; i++) {
        double now = window.realisable(middle + (random.nextDouble() - 0.5) * 0.99 * LOW / 3.0);
        boolean jumped = (now >= LOW) != (last >= LOW);
        changes += jumped ? 1 : 0;
        last = now;
      }
      assertThat(changes).as("around %.3f", middle).isLessThanOrEqualTo(1);
    }
  }

  @Test
  void everythingThatComesOutCanBeMade() {
    Random random = new Random(8);
    for (int i = 0; i < 5_000; i++) {
      double made = window.realisable(random.nextDouble() * 0.5 - 0.05);
      assertThat(made == 0.0 || made >= LOW).isTrue();
    }
    assertThat(window.realisable(0.9)).as("above the window: energised throughout").isEqualTo(0.9);
    assertThat(window.realisable(Double.NaN)).isNaN();
  }

  @Test
  void resetForgetsThatItWasInTheWindow() {
    window.realisable(0.3);
    window.reset();
    assertThat(window.realisable(0.05)).isEqualTo(0.0);
  }
}
