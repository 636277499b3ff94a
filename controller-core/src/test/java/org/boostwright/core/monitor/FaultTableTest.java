package org.boostwright.core.monitor;

import static org.assertj.core.api.Assertions.assertThat;

import java.util.ArrayList;
import java.util.List;
import java.util.Random;
import org.boostwright.core.record.LogFormat;
import org.junit.jupiter.api.Tag;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.Arguments;
import org.junit.jupiter.params.provider.EnumSource;
import org.junit.jupiter.params.provider.MethodSource;
import org.junit.jupiter.params.provider.ValueSource;

/** Counting, confirming and clearing, for every fault and every ordered pair of faults. */
class FaultTableTest {
  private static final long TICK = 5_000_000L;

  private final FaultTable table = new FaultTable();
  private long now;

  private void tick(FaultCode code, boolean bad) {
    tick(code, bad, false, false);
  }

  private void tick(FaultCode code, boolean bad, boolean released, boolean keyCycled) {
    now += TICK;
    table.beginTick();
    table.sample(code, bad, now);
    table.endTick(now, released, keyCycled);
  }

  private void idleTick(boolean released, boolean keyCycled) {
    now += TICK;
    table.beginTick();
    table.endTick(now, released, keyCycled);
  }

  private void confirm(FaultCode code) {
    for (int i = 0; i < 30 && !table.isActive(code); i++) {
      tick(code, true);
    }
    assertThat(table.isActive(code)).isTrue();
  }

  /** Good samples, and whatever else its rule asks for, until it clears. */
  private void clear(FaultCode code) {
    boolean release = code.clearRule() == ClearRule.THROTTLE_RELEASED;
    boolean key = code.clearRule() == ClearRule.KEY_OFF;
    for (int i = 0; i < 500 && table.isActive(code); i++) {
      tick(code, false, release, key);
    }
    assertThat(table.isActive(code)).as("%s clears by its rule", code).isFalse();
  }

  @ParameterizedTest
  @EnumSource(FaultCode.class)
  void aFaultIsConfirmedWhenItsCountReachesThirtyAndNotBefore(FaultCode code) {
    int needed = (FaultCode.CONFIRM_AT + code.upCount() - 1) / code.upCount();
    for (int i = 1; i < needed; i++) {
      tick(code, true);
      assertThat(table.active()).isZero();
      assertThat(table.count(code)).isEqualTo(i * code.upCount());
    }
    tick(code, true);
    assertThat(table.active()).isEqualTo(code.bit());
    assertThat(table.newlyConfirmed()).isEqualTo(code.bit());
    assertThat(table.worstReaction()).isEqualTo(code.reaction());
    assertThat(table.confirmations(code)).isEqualTo(1);
    assertThat(table.firstConfirmedNanos(code)).isEqualTo(now);
    tick(code, true);
    assertThat(table.newlyConfirmed()).as("confirmed once").isZero();
    assertThat(table.confirmations(code)).isEqualTo(1);
    assertThat(table.count(code)).isEqualTo(FaultCode.CONFIRM_AT);
  }

  @Test
  void goodSamplesCountDownByOneAndNeverBelowZero() {
    FaultCode code = FaultCode.MAP_JUMPS;
    tick(code, true);
    tick(code, true);
    assertThat(table.count(code)).isEqualTo(20);
    for (int i = 19; i >= 0; i--) {
      tick(code, false);
      assertThat(table.count(code)).isEqualTo(i);
    }
    tick(code, false);
    assertThat(table.count(code)).isZero();
    assertThat(table.active()).isZero();
  }

  @ParameterizedTest
  @ValueSource(ints = {10, 20, 30, 40, 50, 60, 70, 80, 90})
  @Tag("S7")
  void anIntermittentContactOfTenToNinetyPercentMatures(int badPct) {
    Random random = new Random(badPct);
    for (int i = 0; i < 4_000 && table.active() == 0L; i++) {
      tick(FaultCode.MAP_SIGNAL_LOW, random.nextInt(100) < badPct);
    }
    assertThat(table.isActive(FaultCode.MAP_SIGNAL_LOW)).isTrue();
  }

  @Test
  @Tag("S7")
  void everyTenthSampleBadMaturesAndEveryEleventhNever() {
    int samples = 0;
    while (table.active() == 0L && samples < 10_000) {
      tick(FaultCode.MAP_SIGNAL_LOW, samples % 10 == 9);
      samples++;
    }
    // Each ten add 10 - 9 = 1; the last bad one starts from 20.
    assertThat(samples).isEqualTo(210);
    for (int i = 0; i < 10_000; i++) {
      tick(FaultCode.MAP_JUMPS, i % 11 == 10);
    }
    assertThat(table.isActive(FaultCode.MAP_JUMPS)).isFalse();
  }

  @Test
  @Tag("T1")
  void inARowOneGoodSampleStartsAnew() {
    for (int i = 0; i < 50; i++) {
      now += TICK;
      table.sampleInARow(FaultCode.TICK_LATE, i % 3 != 2, now);
    }
    assertThat(table.active()).isZero();
    assertThat(table.count(FaultCode.TICK_LATE)).isEqualTo(20);
    now += TICK;
    table.sampleInARow(FaultCode.TICK_LATE, true, now);
    assertThat(table.isActive(FaultCode.TICK_LATE)).isTrue();
  }

  @ParameterizedTest
  @EnumSource(FaultCode.class)
  @Tag("U5")
  void itClearsByItsRuleOnly(FaultCode code) {
    confirm(code);
    boolean byTime = code.clearRule() == ClearRule.GOOD_FOR_CLEAR_TIME;
    boolean byThrottle = code.clearRule() == ClearRule.THROTTLE_RELEASED;
    boolean byKey = code.clearRule() == ClearRule.KEY_OFF;
    long clearTicks = (long) (code.clearSeconds() * 1e9) / TICK;
    for (long i = 0; i < clearTicks; i++) {
      tick(code, false, byThrottle, false);
      assertThat(table.isActive(code)).as("%s after %d good ticks", code, i + 1).isTrue();
    }
    // The good samples now span the clear time less nothing: one more makes it complete.
    tick(code, false, !byThrottle, !byKey);
    if (byTime) {
      assertThat(table.isActive(code)).isFalse();
    } else {
      assertThat(table.isActive(code)).isTrue();
      for (int i = 0; i < 2_000; i++) {
        tick(code, false, !byThrottle, !byKey);
      }
      assertThat(table.isActive(code)).as("nothing else clears it").isTrue();
      tick(code, false, byThrottle, byKey);
      assertThat(table.isActive(code)).isFalse();
    }
    assertThat(table.lastClearedNanos(code)).isEqualTo(now);
    assertThat(table.count(code)).isZero();
    assertThat(table.worstReaction()).isEqualTo(Reaction.REPORT);
  }

  @ParameterizedTest
  @EnumSource(FaultCode.class)
  @Tag("U5")
  void timeWithoutASampleIsNoProofThatTheCauseHasGone(FaultCode code) {
    if (code.clearRule() == ClearRule.KEY_OFF) {
      return; // asks for the key only
    }
    confirm(code);
    tick(code, false, true, false);
    for (int i = 0; i < 2_000; i++) {
      idleTick(true, false);
    }
    assertThat(table.isActive(code)).isTrue();
    tick(code, false, true, false);
    assertThat(table.isActive(code)).isFalse();
  }

  @Test
  @Tag("U5")
  void oneBadSampleStartsTheClearTimeAnew() {
    FaultCode code = FaultCode.MAP_JUMPS;
    confirm(code);
    for (int round = 0; round < 3; round++) {
      for (int i = 0; i < 399; i++) {
        tick(code, false);
      }
      tick(code, true);
      assertThat(table.isActive(code)).isTrue();
    }
    for (int i = 0; i < 400; i++) {
      tick(code, false);
    }
    assertThat(table.isActive(code)).isTrue();
    tick(code, false);
    assertThat(table.isActive(code)).isFalse();
  }

  @Test
  void aLatchedFaultThatIsStillBadOutlastsTheKey() {
    confirm(FaultCode.MAP_AMBIENT_MISMATCH);
    for (int i = 0; i < 10; i++) {
      tick(FaultCode.MAP_AMBIENT_MISMATCH, true, true, true);
      assertThat(table.isActive(FaultCode.MAP_AMBIENT_MISMATCH)).isTrue();
    }
    idleTick(false, true);
    assertThat(table.isActive(FaultCode.MAP_AMBIENT_MISMATCH)).isFalse();
  }

  @Test
  void aFaultIsNotClearedInTheTickThatConfirmsIt() {
    now += TICK;
    table.beginTick();
    table.sample(FaultCode.OVERBOOST_REPEATED, true, now - 1);
    table.endTick(now, true, true);
    assertThat(table.isActive(FaultCode.OVERBOOST_REPEATED)).isTrue();
  }

  @Test
  void aClearedFaultCanBeConfirmedAgainAndKeepsItsFirstTime() {
    confirm(FaultCode.MAP_JUMPS);
    long first = table.firstConfirmedNanos(FaultCode.MAP_JUMPS);
    clear(FaultCode.MAP_JUMPS);
    confirm(FaultCode.MAP_JUMPS);
    assertThat(table.firstConfirmedNanos(FaultCode.MAP_JUMPS)).isEqualTo(first);
    assertThat(table.lastConfirmedNanos(FaultCode.MAP_JUMPS)).isEqualTo(now).isNotEqualTo(first);
    assertThat(table.confirmations(FaultCode.MAP_JUMPS)).isEqualTo(2);
  }

  static List<Arguments> pairs() {
    List<Arguments> pairs = new ArrayList<>();
    for (FaultCode first : FaultCode.values()) {
      for (FaultCode second : FaultCode.values()) {
        if (first != second) {
          pairs.add(Arguments.of(first, second));
        }
      }
    }
    return pairs;
  }

  @ParameterizedTest
  @MethodSource("pairs")
  @Tag("D2")
  void recoveryOfOneNeverClearsTheOtherAndTheWorseReactionWins(FaultCode first, FaultCode second) {
    confirm(first);
    for (int i = 0; i < 30 && !table.isActive(second); i++) {
      now += TICK;
      table.beginTick();
      table.sample(first, true, now);
      table.sample(second, true, now);
      table.endTick(now, false, false);
    }
    assertThat(table.active()).isEqualTo(first.bit() | second.bit());
    Reaction worse =
        first.reaction().compareTo(second.reaction()) > 0 ? first.reaction() : second.reaction();
    assertThat(table.worstReaction()).isEqualTo(worse);
    for (int i = 0; i < 1_000 && table.isActive(first); i++) {
      now += TICK;
      table.beginTick();
      table.sample(first, false, now);
      table.sample(second, true, now);
      table.endTick(now, true, true);
    }
    assertThat(table.active()).isEqualTo(second.bit());
    assertThat(table.worstReaction()).isEqualTo(second.reaction());
    assertThat(table.count(second)).isEqualTo(FaultCode.CONFIRM_AT);
  }

  @Test
  void aWatchThatNeverJudgedIsToldFromOneThatPassed() {
    assertThat(table.ran()).isZero();
    tick(FaultCode.MAP_JUMPS, false);
    tick(FaultCode.OVERBOOST, true);
    assertThat(table.ran()).isEqualTo(FaultCode.MAP_JUMPS.bit() | FaultCode.OVERBOOST.bit());
    assertThat(table.active()).isZero();
  }

  @Test
  void theFreezeFrameIsTheRowOfTheTickOfConfirmation() {
    double[] row = new double[LogFormat.COLUMN_COUNT];
    row[3] = 7.0;
    confirm(FaultCode.MAP_JUMPS);
    table.storeFrames(row);
    tick(FaultCode.MAP_JUMPS, true);
    row[3] = 8.0;
    table.storeFrames(row);
    assertThat(table.frame(FaultCode.MAP_JUMPS)[3]).isEqualTo(7.0);
    assertThat(table.frame(FaultCode.OVERBOOST)).containsOnly(0.0);
    table.frame(FaultCode.MAP_JUMPS)[3] = 9.0;
    assertThat(table.frame(FaultCode.MAP_JUMPS)[3]).as("a copy").isEqualTo(7.0);
  }

  @Test
  @Tag("T3")
  void theClockMayRollOverWhileAFaultIsActive() {
    now = Long.MAX_VALUE - 500_000_000L;
    confirm(FaultCode.MAP_JUMPS);
    for (int i = 0; i < 400; i++) {
      tick(FaultCode.MAP_JUMPS, false);
      assertThat(table.isActive(FaultCode.MAP_JUMPS)).isTrue();
    }
    tick(FaultCode.MAP_JUMPS, false);
    assertThat(now).isNegative();
    assertThat(table.isActive(FaultCode.MAP_JUMPS)).isFalse();
  }

  @Test
  void aFaultThatNeverWasConfirmedIsNeverCleared() {
    FaultTable table = new FaultTable();
    for (long now = 1; now < 4_000_000_000L; now += 5_000_000L) {
      table.beginTick();
      table.sample(FaultCode.OUTPUTS_WRONG, true, now);
      table.sample(FaultCode.MAP_SIGNAL_LOW, now < 50_000_000L && now > 40_000_000L, now);
      table.endTick(now, false, false);
    }
    assertThat(table.active()).isEqualTo(FaultCode.OUTPUTS_WRONG.bit());
    assertThat(table.lastClearedNanos(FaultCode.MAP_SIGNAL_LOW)).isZero();
  }
}
