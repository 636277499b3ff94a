package org.boostwright.core.signal;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import org.boostwright.core.settings.AnalogSensor;
import org.boostwright.core.table.Axis;
import org.boostwright.core.table.Curve;
import org.junit.jupiter.api.Tag;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.ValueSource;

/** One channel at its thresholds, with a twin on the good side of each; stepped time. */
class ChannelSignalTest {
  private static final long MS = 1_000_000L;
  private static final long PERIOD = 5 * MS;
  private static final double STEP_VOLTS = 0.001;

  /** 1 V = 0, 4 V = 300; valid 0.5 to 4.5 V; 1000 units per second; noise above one step. */
  private static AnalogSensor sensor(double noiseVolts) {
    return new AnalogSensor(
        new Curve(new Axis(1.0, 4.0), 0.0, 300.0), 0.5, 4.5, STEP_VOLTS, noiseVolts, 5.0, 1000.0);
  }

  private final ChannelSignal signal = new ChannelSignal(sensor(2.0 * STEP_VOLTS));
  private long now;

  private void take(double volts) {
    take(signal, volts, false);
  }

  private void take(ChannelSignal to, double volts, boolean explained) {
    now += PERIOD;
    to.update(now, volts, now, true, explained);
  }

  private static double volts(double value) {
    return 1.0 + value / 100.0;
  }

  @Test
  void aNewChannelHasNoValueAndIsNotUsable() {
    assertThat(signal.value()).isNaN();
    assertThat(signal.status()).isEqualTo(SignalStatus.STALE);
    assertThat(signal.usable()).isFalse();
    assertThat(signal.fresh()).isFalse();
  }

  @Test
  void theFirstSampleIsTakenWhateverItsValue() {
    take(volts(250.0));
    assertThat(signal.value()).isCloseTo(250.0, within(1e-9));
    assertThat(signal.status()).isEqualTo(SignalStatus.VALID);
    assertThat(signal.usable()).isTrue();
    assertThat(signal.fresh()).isTrue();
    assertThat(signal.findings()).isZero();
  }

  @Test
  void calibrationIsLinearBetweenItsPointsAndClampsOutside() {
    take(2.5);
    assertThat(signal.value()).isCloseTo(150.0, within(1e-9));
    now += 1_000 * MS;
    take(4.4);
    assertThat(signal.value()).isEqualTo(300.0);
    assertThat(signal.status()).isEqualTo(SignalStatus.VALID);
  }

  @Test
  @Tag("S1")
  @Tag("S2")
  void voltsBelowTheValidRangeAreLowAndTheEdgeIsGood() {
    take(0.5);
    assertThat(signal.status()).isEqualTo(SignalStatus.VALID);
    take(Math.nextDown(0.5));
    assertThat(signal.findings()).isEqualTo(ChannelSignal.LOW);
    assertThat(signal.status()).isEqualTo(SignalStatus.INVALID);
    assertThat(signal.has(ChannelSignal.LOW | ChannelSignal.HIGH)).isTrue();
    assertThat(signal.has(ChannelSignal.HIGH)).isFalse();
    take(-1e308);
    assertThat(signal.findings()).isEqualTo(ChannelSignal.LOW);
  }

  @Test
  @Tag("S1")
  @Tag("S3")
  void voltsAboveTheValidRangeAreHighAndTheEdgeIsGood() {
    take(4.5);
    assertThat(signal.status()).isEqualTo(SignalStatus.VALID);
    take(Math.nextUp(4.5));
    assertThat(signal.findings()).isEqualTo(ChannelSignal.HIGH);
    assertThat(signal.status()).isEqualTo(SignalStatus.INVALID);
    take(1e308);
    assertThat(signal.findings()).isEqualTo(ChannelSignal.HIGH);
  }

  @ParameterizedTest
  @ValueSource(doubles = {Double.NaN, Double.POSITIVE_INFINITY, Double.NEGATIVE_INFINITY})
  @Tag("S10")
  void voltsThatAreNotFiniteNeverReachTheValue(double bad) {
    take(volts(100.0));
    take(bad);
    assertThat(signal.findings()).isEqualTo(ChannelSignal.NOT_A_NUMBER);
    assertThat(signal.status()).isEqualTo(SignalStatus.INVALID);
    assertThat(signal.value()).isCloseTo(100.0, within(1e-9));
    take(volts(100.0));
    assertThat(signal.status()).isEqualTo(SignalStatus.VALID);
  }

  @Test
  @Tag("S7")
  void aBadSampleLeavesTheLastGoodValueUsableForThreePeriods() {
    take(volts(100.0));
    for (int i = 1; i <= 3; i++) {
      take(5.0);
      assertThat(signal.usable()).as("bad sample %d", i).isTrue();
      assertThat(signal.value()).isCloseTo(100.0, within(1e-9));
      assertThat(signal.status()).isEqualTo(SignalStatus.INVALID);
    }
    take(5.0);
    assertThat(signal.usable()).isFalse();
    take(volts(100.0));
    assertThat(signal.usable()).isTrue();
  }

  @Test
  void aChannelWhoseFirstSamplesAreBadIsNotUsable() {
    take(5.0);
    assertThat(signal.usable()).isFalse();
    assertThat(signal.value()).isNaN();
  }

  @Test
  @Tag("S9")
  void aSampleIsStaleOnceItIsOlderThanThreePeriods() {
    take(volts(100.0));
    long sampled = now;
    signal.update(sampled + 15 * MS, volts(100.0), sampled, true, false);
    assertThat(signal.has(ChannelSignal.STALE)).isFalse();
    assertThat(signal.fresh()).isFalse();
    assertThat(signal.usable()).isTrue();
    signal.update(sampled + 15 * MS + 1, volts(100.0), sampled, true, false);
    assertThat(signal.findings()).isEqualTo(ChannelSignal.STALE);
    assertThat(signal.status()).isEqualTo(SignalStatus.STALE);
    assertThat(signal.usable()).isFalse();
    now = sampled + 20 * MS;
    take(volts(100.0));
    assertThat(signal.status()).isEqualTo(SignalStatus.VALID);
  }

  @Test
  @Tag("S9")
  void aSampleThatArrivesLateIsTakenButNotUsable() {
    take(volts(100.0));
    signal.update(now + 40 * MS, volts(120.0), now + 20 * MS, true, false);
    assertThat(signal.fresh()).isTrue();
    assertThat(signal.status()).isEqualTo(SignalStatus.STALE);
    assertThat(signal.usable()).isFalse();
  }

  @Test
  @Tag("E2")
  void aChannelThatWasNeverAnsweredIsStaleOnlyAfterThreePeriods() {
    signal.update(PERIOD, 0.0, 0L, false, false);
    assertThat(signal.has(ChannelSignal.STALE)).isFalse();
    assertThat(signal.usable()).isFalse();
    assertThat(signal.status()).isEqualTo(SignalStatus.STALE);
    signal.update(4 * PERIOD, 0.0, 0L, false, false);
    assertThat(signal.has(ChannelSignal.STALE)).isFalse();
    signal.update(4 * PERIOD + 1, 0.0, 0L, false, false);
    assertThat(signal.has(ChannelSignal.STALE)).isTrue();
  }

  @Test
  @Tag("B1")
  void aConverterThatDoesNotAnswerLeavesNoValidStatusBehind() {
    take(volts(100.0));
    long sampled = now;
    signal.update(sampled + PERIOD, volts(100.0), sampled, false, false);
    assertThat(signal.status()).isEqualTo(SignalStatus.INVALID);
    assertThat(signal.fresh()).isFalse();
    assertThat(signal.findings()).isZero();
    signal.update(sampled + 4 * PERIOD, volts(100.0), sampled, false, false);
    assertThat(signal.findings()).isEqualTo(ChannelSignal.STALE);
  }

  @Test
  @Tag("B1")
  void anUnansweredSampleIsNeverTaken() {
    take(volts(100.0));
    signal.update(now + PERIOD, volts(200.0), now + PERIOD, false, false);
    assertThat(signal.value()).isCloseTo(100.0, within(1e-9));
  }

  @Test
  @Tag("L1")
  void olderAndRepeatedSamplesAreNotTaken() {
    take(volts(100.0));
    long sampled = now;
    signal.update(sampled + PERIOD, volts(101.0), sampled, true, false);
    assertThat(signal.fresh()).isFalse();
    signal.update(sampled + PERIOD, volts(102.0), sampled - 1, true, false);
    assertThat(signal.fresh()).isFalse();
    assertThat(signal.value()).isCloseTo(100.0, within(1e-9));
    signal.update(sampled + PERIOD, volts(103.0), sampled + 1 * MS, true, true);
    assertThat(signal.value()).isCloseTo(103.0, within(1e-9));
  }

  @Test
  @Tag("L1")
  void aSampleFromTheFutureIsNotTakenAndKeepsNoneOut() {
    take(volts(100.0));
    signal.update(now + PERIOD, volts(300.0), now + 3_600_000 * MS, true, true);
    assertThat(signal.fresh()).isFalse();
    assertThat(signal.value()).isCloseTo(100.0, within(1e-9));
    now += PERIOD;
    take(volts(101.0));
    assertThat(signal.value()).isCloseTo(101.0, within(1e-9));
    assertThat(signal.status()).isEqualTo(SignalStatus.VALID);
    signal.update(now + PERIOD, volts(102.0), now + PERIOD, true, false);
    assertThat(signal.fresh()).as("a sample of this very tick").isTrue();
  }

  @Test
  @Tag("T3")
  void theClockMayRollOver() {
    now = Long.MAX_VALUE - 2 * PERIOD;
    take(volts(100.0));
    take(volts(101.0));
    take(volts(102.0));
    assertThat(now).isNegative();
    assertThat(signal.status()).isEqualTo(SignalStatus.VALID);
    assertThat(signal.value()).isCloseTo(102.0, within(1e-9));
  }

  @Test
  @Tag("S8")
  void oneImpossibleSampleIsRejectedAndTheValueUnmoved() {
    take(volts(100.0));
    take(volts(105.1));
    assertThat(signal.findings()).isEqualTo(ChannelSignal.JUMP);
    assertThat(signal.status()).isEqualTo(SignalStatus.SUSPECT);
    assertThat(signal.value()).isCloseTo(100.0, within(1e-9));
    assertThat(signal.usable()).isTrue();
    take(volts(100.5));
    assertThat(signal.status()).isEqualTo(SignalStatus.VALID);
    assertThat(signal.value()).isCloseTo(100.5, within(1e-9));
  }

  @Test
  @Tag("S8")
  void theFastestPossibleChangeIsAccepted() {
    take(volts(100.0));
    take(volts(104.99));
    assertThat(signal.status()).isEqualTo(SignalStatus.VALID);
    take(volts(100.0));
    assertThat(signal.status()).isEqualTo(SignalStatus.VALID);
    take(volts(94.9));
    assertThat(signal.has(ChannelSignal.JUMP)).isTrue();
  }

  @Test
  @Tag("S8")
  void theAllowedChangeGrowsWithTheTimeSinceTheLastAcceptedSample() {
    take(volts(100.0));
    take(volts(109.9));
    assertThat(signal.has(ChannelSignal.JUMP)).isTrue();
    take(volts(109.9));
    assertThat(signal.status()).isEqualTo(SignalStatus.VALID);
  }

  @Test
  void anExplainedChangeMayHaveAnyRate() {
    take(volts(100.0));
    take(signal, volts(290.0), true);
    assertThat(signal.status()).isEqualTo(SignalStatus.VALID);
    assertThat(signal.value()).isCloseTo(290.0, within(1e-9));
  }

  @Test
  @Tag("S8")
  void aLevelThatPersistsIsTakenAfterSixRejections() {
    take(volts(100.0));
    for (int i = 1; i <= 6; i++) {
      take(volts(200.0));
      assertThat(signal.has(ChannelSignal.JUMP)).as("sample %d", i).isTrue();
    }
    take(volts(200.0));
    assertThat(signal.status()).isEqualTo(SignalStatus.VALID);
    assertThat(signal.value()).isCloseTo(200.0, within(1e-9));
    take(volts(296.0));
    assertThat(signal.has(ChannelSignal.JUMP)).as("counts anew").isTrue();
  }

  @Test
  @Tag("S8")
  void rejectedSamplesThatDoNotAgreeNeverBecomeTheBase() {
    take(volts(150.0));
    for (int i = 0; i < 14; i++) {
      take(volts(i % 2 == 0 ? 290.0 : 10.0));
      assertThat(signal.has(ChannelSignal.JUMP)).isTrue();
      assertThat(signal.value()).isCloseTo(150.0, within(1e-9));
    }
  }

  @Test
  void rejectedSamplesAgreeUpToWhatOnePeriodAllows() {
    take(volts(100.0));
    for (int i = 0; i < 6; i++) {
      take(volts(200.0 + 4.9 * i));
    }
    take(volts(200.0 + 4.9 * 6));
    assertThat(signal.status()).isEqualTo(SignalStatus.VALID);
    now = 0L;
    ChannelSignal apart = new ChannelSignal(sensor(0.0));
    take(apart, volts(100.0), false);
    for (int i = 0; i < 7; i++) {
      take(apart, volts(200.0 + 5.1 * i), false);
      assertThat(apart.has(ChannelSignal.JUMP)).isTrue();
    }
  }

  @Test
  @Tag("S4")
  void identicalSamplesForFiftyMillisecondsAreFrozenAndOneOtherIsNot() {
    take(volts(100.0));
    for (int i = 1; i <= 9; i++) {
      take(volts(100.0));
      assertThat(signal.findings()).as("after %d ms", 5 * i).isZero();
    }
    take(volts(100.0));
    assertThat(signal.findings()).isEqualTo(ChannelSignal.FROZEN);
    assertThat(signal.status()).isEqualTo(SignalStatus.SUSPECT);
    assertThat(signal.usable()).isTrue();
    take(volts(100.0) + STEP_VOLTS);
    assertThat(signal.findings()).isZero();
    assertThat(signal.status()).isEqualTo(SignalStatus.VALID);
  }

  @Test
  @Tag("S4")
  void aSourceWhoseNoiseDoesNotExceedOneStepIsExemptFromTheFrozenWatch() {
    ChannelSignal coarse = new ChannelSignal(sensor(STEP_VOLTS));
    for (int i = 0; i < 100; i++) {
      take(coarse, volts(100.0), false);
      assertThat(coarse.findings()).isZero();
    }
    assertThat(coarse.status()).isEqualTo(SignalStatus.VALID);
  }

  @Test
  @Tag("S4")
  void aSourceSlowerThanTheTickIsExemptFromTheFrozenWatch() {
    AnalogSensor slow =
        new AnalogSensor(
            new Curve(new Axis(1.0, 4.0), 0.0, 300.0),
            0.5,
            4.5,
            STEP_VOLTS,
            2.0 * STEP_VOLTS,
            20.0,
            1000.0);
    ChannelSignal coarse = new ChannelSignal(slow);
    for (int i = 0; i < 20; i++) {
      now += 4 * PERIOD;
      coarse.update(now, volts(100.0), now, true, false);
      assertThat(coarse.findings()).isZero();
    }
  }

  @Test
  void aTickWithoutANewSampleRepeatsNoFinding() {
    take(volts(100.0));
    take(5.0);
    signal.update(now + PERIOD, 5.0, now, true, false);
    assertThat(signal.fresh()).isFalse();
    assertThat(signal.findings()).isZero();
    assertThat(signal.status()).isEqualTo(SignalStatus.INVALID);
  }

  @Test
  @Tag("S8")
  void theFastestPossibleChangeItselfIsPossible() {
    // 1000 units per second and 5 ms: exactly 5 units.
    ChannelSignal exact =
        new ChannelSignal(
            new AnalogSensor(
                new Curve(new Axis(1.0, 2.0, 3.0), 0.0, 5.0, 10.5),
                0.5,
                4.5,
                STEP_VOLTS,
                2.0 * STEP_VOLTS,
                5.0,
                1000.0));
    take(exact, 1.0, false);
    take(exact, 2.0, false);
    assertThat(exact.findings()).isZero();
    assertThat(exact.value()).isEqualTo(5.0);
    take(exact, 3.0, false);
    assertThat(exact.findings()).isEqualTo(ChannelSignal.JUMP);
  }

  @Test
  @Tag("S8")
  void rejectedSamplesAsFarApartAsPossibleAgreeWithEachOther() {
    // 100 and 105 in turn, both far from 0: a new base after six that agree.
    ChannelSignal exact =
        new ChannelSignal(
            new AnalogSensor(
                new Curve(new Axis(1.0, 2.0, 3.0), 0.0, 100.0, 105.0),
                0.5,
                4.5,
                STEP_VOLTS,
                2.0 * STEP_VOLTS,
                5.0,
                1000.0));
    take(exact, 1.0, false);
    for (int i = 1; i <= 6; i++) {
      take(exact, i % 2 == 0 ? 2.0 : 3.0, false);
      assertThat(exact.value()).as("sample %d", i).isZero();
    }
    take(exact, 3.0, false);
    assertThat(exact.value()).isEqualTo(105.0);
  }
}
