package org.boostwright.core.signal;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import java.util.Random;
import org.junit.jupiter.api.Tag;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.ValueSource;

/** Speed from pulses at its limits; every pulse is handed over in a tick of its own. */
@Tag("S13")
class PulseSpeedTest {
  private static final double MAX = 300.0;
  private static final double MAX_CHANGE = 800.0;

  private final PulseSpeed speed = new PulseSpeed(MAX, MAX_CHANGE);
  private long now = 1_000_000_000L;

  /** One pulse, one period after the last. */
  private void pulse(double hz) {
    now += Math.round(1e9 / hz);
    speed.update(now, true, 1e9 / hz, now);
  }

  private void pulses(double hz, int count) {
    for (int i = 0; i < count; i++) {
      pulse(hz);
    }
  }

  /** Pulses of even spacing, none of which may be called bad. */
  private void known(double hz) {
    for (int i = 0; i < 30; i++) {
      pulse(hz);
      assertThat(speed.bad()).isFalse();
    }
    assertThat(speed.perSecond()).isCloseTo(hz, within(1e-6));
  }

  @Test
  void withoutAPulseSpeedIsZeroAndAgeHasNoEnd() {
    speed.update(now, false, 7_000_000.0, now);
    assertThat(speed.perSecond()).isZero();
    assertThat(speed.lastPerSecond()).isZero();
    assertThat(speed.age(now)).isEqualTo(Long.MAX_VALUE);
    assertThat(speed.fresh()).isFalse();
    assertThat(speed.bad()).isFalse();
  }

  @Test
  void theFirstPulseHasNoPeriodYet() {
    speed.update(now, true, 0.0, now);
    assertThat(speed.fresh()).isTrue();
    assertThat(speed.bad()).isFalse();
    assertThat(speed.perSecond()).isZero();
    assertThat(speed.age(now + 5)).isEqualTo(5);
  }

  @Test
  void speedIsTheInverseOfThePeriod() {
    known(133.0);
    assertThat(speed.lastPerSecond()).isCloseTo(133.0, within(1e-6));
  }

  @Test
  void aTickWithoutANewPulseIsNotFresh() {
    known(100.0);
    speed.update(now + 5_000_000L, true, 1e7, now);
    assertThat(speed.fresh()).isFalse();
    speed.update(now + 5_000_000L, true, 1e7, now - 1);
    assertThat(speed.fresh()).as("an older pulse").isFalse();
    assertThat(speed.perSecond()).isCloseTo(100.0, within(1e-6));
  }

  @Test
  void speedFallsAsPulsesStayAwayAndIsZeroAfterTwoSeconds() {
    known(100.0);
    speed.update(now + 10_000_000L, true, 1e7, now);
    assertThat(speed.perSecond()).isCloseTo(100.0, within(1e-6));
    speed.update(now + 40_000_000L, true, 1e7, now);
    assertThat(speed.perSecond()).isCloseTo(25.0, within(1e-9));
    assertThat(speed.lastPerSecond()).isCloseTo(100.0, within(1e-6));
    speed.update(now + 1_999_999_999L, true, 1e7, now);
    assertThat(speed.perSecond()).isCloseTo(0.5, within(1e-6));
    assertThat(speed.lastPerSecond()).isCloseTo(100.0, within(1e-6));
    speed.update(now + 2_000_000_000L, true, 1e7, now);
    assertThat(speed.perSecond()).isZero();
    assertThat(speed.lastPerSecond()).isZero();
  }

  @ParameterizedTest
  @ValueSource(
      doubles = {
        Double.NaN,
        Double.POSITIVE_INFINITY,
        Double.NEGATIVE_INFINITY,
        -1e7,
        -0.5,
        1e-300,
        1e9 / 301.0
      })
  @Tag("S10")
  void aPeriodThatCannotBeIsBadAndMovesNothing(double periodNanos) {
    known(100.0);
    for (int i = 0; i < 50; i++) {
      now += 10_000_000L;
      speed.update(now, true, periodNanos, now);
      assertThat(speed.fresh()).isTrue();
      assertThat(speed.bad()).isTrue();
      assertThat(speed.perSecond()).isCloseTo(100.0, within(1e-6));
    }
    pulse(100.0);
    assertThat(speed.bad()).isFalse();
  }

  @Test
  void theHighestPlausibleRateIsGood() {
    known(MAX);
  }

  @Test
  void theFastestPossibleChangeFollowsAndASlightlyFasterOneIsBad() {
    known(100.0);
    // One period of 100/s later: 800/s2 * 10 ms + 10 % = 18/s.
    now += 10_000_000L;
    speed.update(now, true, 1e9 / 117.9, now);
    assertThat(speed.bad()).isFalse();
    assertThat(speed.perSecond()).isCloseTo(117.9, within(1e-6));
    PulseSpeed other = new PulseSpeed(MAX, MAX_CHANGE);
    long t = 0L;
    for (int i = 0; i < 30; i++) {
      t += 10_000_000L;
      other.update(t, true, 1e7, t);
    }
    t += 10_000_000L;
    other.update(t, true, 1e9 / 118.1, t);
    assertThat(other.bad()).isTrue();
    assertThat(other.perSecond()).isCloseTo(100.0, within(1e-6));
    t += 10_000_000L;
    other.update(t, true, 1e9 / 81.9, t);
    assertThat(other.bad()).as("downwards").isFalse();
  }

  @ParameterizedTest
  @ValueSource(doubles = {2.0, 0.5})
  void aDoubledOrHalvedSignalStaysBadForAsLongAsItLasts(double factor) {
    known(120.0);
    for (int i = 0; i < 2_000; i++) {
      pulse(120.0 * factor);
      assertThat(speed.bad()).as("pulse %d", i).isTrue();
    }
    for (int i = 0; i < 7; i++) {
      pulse(120.0);
    }
    known(120.0);
  }

  @Test
  void aDoubledSignalIsRecognisedAgainAfterAChangeOfSpeed() {
    known(60.0);
    pulses(120.0, 40);
    for (double hz = 120.0; hz < 200.0; hz += 0.5) {
      pulse(hz);
      assertThat(speed.bad()).isTrue();
    }
    pulses(100.0, 8);
    known(100.0);
  }

  @Test
  void twoShiftsInARowAreReckonedTogether() {
    known(60.0);
    pulses(120.0, 9);
    pulses(240.0, 40);
    assertThat(speed.bad()).isTrue();
    pulses(120.0, 40);
    assertThat(speed.bad()).as("still doubled").isTrue();
    pulses(60.0, 8);
    known(60.0);
  }

  @Test
  void silenceOfTwoSecondsForgetsTheLevel() {
    known(60.0);
    pulses(120.0, 40);
    assertThat(speed.bad()).isTrue();
    now += 2_000_000_000L;
    speed.update(now, true, 2e9, now);
    assertThat(speed.bad()).isFalse();
    known(120.0);
  }

  @Test
  void oneMissedPulseIsOneBadSample() {
    known(100.0);
    now += 20_000_000L;
    speed.update(now, true, 2e7, now);
    assertThat(speed.bad()).isTrue();
    known(100.0);
  }

  @Test
  void randomGarbageNeverBecomesTheLevelAndTheTrueOneIsFoundAgain() {
    known(200.0);
    Random random = new Random(11);
    int bad = 0;
    for (int i = 0; i < 400; i++) {
      now += 5_000_000L;
      speed.update(now, true, 1e9 / (5.0 + 290.0 * random.nextDouble()), now);
      bad += speed.bad() ? 1 : 0;
    }
    assertThat(bad).isGreaterThan(200);
    pulses(90.0, 200);
    known(90.0);
  }

  @Test
  void theLastPeriodOfAStormDoesNotMakeTheTrueLevelAShift() {
    known(133.3);
    for (int i = 0; i < 25; i++) {
      now += 5_000_000L;
      speed.update(now, true, 1.15e6, now); // 870 pulses a second: no engine does that
      assertThat(speed.bad()).isTrue();
    }
    // From the storm's last edge to the first true one, as recorded on a real kernel.
    now += 5_224_976L;
    speed.update(now, true, 5_224_976.0, now);
    pulses(133.3, 10);
    known(133.3);
  }

  @Test
  @Tag("E2")
  void unevenPulsesOfAStartAreNotCalledBad() {
    Random random = new Random(3);
    for (int i = 0; i < 9; i++) {
      now += 100_000_000L;
      speed.update(now, true, 1e9 / (5.0 + 290.0 * random.nextDouble()), now);
      assertThat(speed.bad()).isFalse();
    }
  }

  @Test
  @Tag("E2")
  void aFirstPeriodOfGarbageDoesNotMakeTheTrueLevelAShift() {
    now += 5_000_000L;
    speed.update(now, true, 1e9 / 290.0, now);
    pulses(60.0, 20);
    known(60.0);
  }

  @Test
  @Tag("L1")
  void aPulseFromTheFutureWaitsForItsTime() {
    known(100.0);
    long early = now + 10_000_000L;
    speed.update(early - 1, true, 1e7, early);
    assertThat(speed.fresh()).isFalse();
    speed.update(now + 60_000_000L, true, 1e7, now + 3_600_000_000_000L);
    assertThat(speed.fresh()).isFalse();
    assertThat(speed.perSecond()).as("still falls").isCloseTo(1e3 / 60.0, within(1e-6));
    now = early;
    speed.update(now, true, 1e7, now);
    assertThat(speed.fresh()).isTrue();
  }

  @Test
  @Tag("T3")
  void theClockMayRollOver() {
    now = Long.MAX_VALUE - 100_000_000L;
    known(100.0);
    assertThat(now).isNegative();
  }

  /** One pulse some time after the last, whose period is that time. */
  private void pulseAfter(long nanos) {
    now += nanos;
    speed.update(now, true, nanos, now);
  }

  @Test
  void thePeriodAcrossLostPulsesIsNoSpeedAndWhatFollowsIsTaken() {
    known(100.0);
    pulseAfter(150_000_000L);
    assertThat(speed.bad()).isFalse();
    assertThat(speed.lastPerSecond()).as("6.7 a second is no speed").isCloseTo(100.0, within(1e-6));
    pulse(60.0);
    pulses(60.0, 7);
    known(60.0);
  }

  @Test
  void aGapIsMoreThanFourPeriodsAndATenthOfASecond() {
    for (int i = 0; i < 20; i++) {
      pulseAfter(20_000_000L);
    }
    pulseAfter(100_000_000L); // five periods, exactly the time
    assertThat(speed.lastPerSecond()).isEqualTo(50.0);
    PulseSpeed slow = new PulseSpeed(MAX, MAX_CHANGE);
    long t = 0L;
    for (int i = 0; i < 20; i++) {
      t += 25_000_000L;
      slow.update(t, true, 25e6, t);
    }
    t += 100_000_000L; // exactly four periods
    slow.update(t, true, 1e8, t);
    assertThat(slow.lastPerSecond()).isEqualTo(10.0);
    PulseSpeed shortly = new PulseSpeed(MAX, MAX_CHANGE);
    t = 0L;
    for (int i = 0; i < 20; i++) {
      t += 10_000_000L;
      shortly.update(t, true, 1e7, t);
    }
    t += 95_000_000L; // nine periods, but not the time
    shortly.update(t, true, 95e6, t);
    assertThat(shortly.bad()).isTrue();
  }

  @Test
  void aLevelOffByExactlyTheFactorIsShiftedAndAGapDoesNotClearIt() {
    known(100.0);
    pulses(140.0, 20);
    assertThat(speed.bad()).isTrue();
    pulseAfter(150_000_000L);
    assertThat(speed.bad()).as("through a gap").isTrue();
    PulseSpeed down = new PulseSpeed(MAX, MAX_CHANGE);
    long t = 0L;
    for (int i = 0; i < 60; i++) {
      double hz = i < 30 ? 140.0 : 100.0;
      t += Math.round(1e9 / hz);
      down.update(t, true, 1e9 / hz, t);
    }
    assertThat(down.bad()).isTrue();
    t += 150_000_000L;
    down.update(t, true, 150e6, t);
    assertThat(down.bad()).as("through a gap").isTrue();
  }

  @Test
  void aLevelOffByLessThanTheFactorIsNoShift() {
    known(100.0);
    pulses(139.0, 20);
    known(139.0);
  }

  @Test
  void theSeventhPulseOfANewLevelIsTheFirstThatIsTaken() {
    known(100.0);
    pulses(200.0, 6);
    assertThat(speed.lastPerSecond()).isCloseTo(100.0, within(1e-6));
    pulse(200.0);
    assertThat(speed.lastPerSecond()).isCloseTo(200.0, within(1e-6));
  }

  @Test
  void garbageBetweenRejectedPulsesBeginsTheirCountAnew() {
    known(100.0);
    pulses(200.0, 3);
    for (int i = 0; i < 25; i++) {
      now += 5_000_000L;
      speed.update(now, true, 1.15e6, now);
    }
    pulse(200.0); // 145 ms after the last good one it is possible
    assertThat(speed.bad()).isFalse();
    assertThat(speed.lastPerSecond()).isCloseTo(200.0, within(1e-6));
  }

  @Test
  void theFastestPossibleChangeItselfFollows() {
    PulseSpeed exact = new PulseSpeed(MAX, 1_500.0);
    long t = 0L;
    for (int i = 0; i < 30; i++) {
      t += 10_000_000L;
      exact.update(t, true, 1e7, t);
    }
    t += 10_000_000L;
    exact.update(t, true, 8e6, t); // 125 a second: 1500/s2 * 10 ms + 10 % of 100
    assertThat(exact.lastPerSecond()).isEqualTo(125.0);
  }
}
