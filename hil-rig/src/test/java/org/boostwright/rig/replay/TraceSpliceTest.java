package org.boostwright.rig.replay;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatThrownBy;

import java.util.List;
import org.boostwright.core.AnalogChannel;
import org.boostwright.core.monitor.FaultCode;
import org.boostwright.core.state.SafetyState;
import org.boostwright.rig.replay.csv.LogRefusedException;
import org.boostwright.rig.replay.csv.RecordedLog;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;

/** Faults spliced into a made-up drive while it is controlled: each caught in its time. */
class TraceSpliceTest {
  private static final double AT = 9.0;

  private static TraceResult replay(RecordedLog log, TraceSplice splice)
      throws LogRefusedException {
    TraceResult result =
        TraceReplay.run(
            ReplayCar.settings(), log, ReplayOptions.DEFAULT.withSplices(List.of(splice)));
    assertThat(result.everySpliceTookEffect()).isTrue();
    return result;
  }

  /** Limits from the fault list: wires 40 ms, frozen 100 ms, stale three periods and a tick. */
  @ParameterizedTest
  @CsvSource({
    "MAP,      OPEN,            0,    MAP_SIGNAL_LOW,   0.040",
    "MAP,      SHORT_TO_GROUND, 0,    MAP_SIGNAL_LOW,   0.040",
    "MAP,      SHORT_TO_SUPPLY, 0,    MAP_SIGNAL_HIGH,  0.040",
    "MAP,      FROZEN,          0,    MAP_FROZEN,       0.100",
    "MAP,      NOT_A_NUMBER,    0,    MAP_NOT_A_NUMBER, 0.040",
    "MAP,      STALE,           0,    MAP_STALE,        0.040",
    "MAP,      JUMP,            60,   MAP_JUMPS,        0.100",
    "MAP,      INTERMITTENT,    0.5,  MAP_SIGNAL_LOW,   0.100",
    "MAP,      INTERMITTENT,    0.15, MAP_SIGNAL_LOW,   2.000",
    "MAP,      STUCK,           170,  MAP_FROZEN,       0.100",
    "MAP,      STUCK,           110,  MAP_JUMPS,        0.100",
    "THROTTLE, OPEN,            0,    THROTTLE_SIGNAL,  0.040",
    "THROTTLE, SHORT_TO_SUPPLY, 0,    THROTTLE_SIGNAL,  0.040",
    "THROTTLE, STALE,           0,    THROTTLE_STALE,   0.040"
  })
  void everyFaultRestsInItsTime(
      AnalogChannel channel, SpliceKind kind, double amount, FaultCode expected, double seconds)
      throws LogRefusedException {
    TraceResult result = replay(SyntheticDrive.fast(), TraceSplice.from(AT, channel, kind, amount));
    assertThat(result.faults()).extracting(FaultEvent::code).contains(expected);
    FaultEvent first = result.faults().get(0);
    assertThat(first.code()).isEqualTo(expected);
    assertThat(first.seconds()).isBetween(AT, AT + seconds);
    TraceSeries series = result.series();
    for (int i = 0; i < series.size(); i++) {
      // Points stand for two ticks; the one that begins before the fault may still show duty.
      if (series.seconds(i) > first.seconds() + 0.011 && series.seconds(i) < AT + 3.0) {
        assertThat(series.dutyFraction(i)).as("%s s", series.seconds(i)).isZero();
        assertThat(SafetyState.values()[series.state(i)].isRest()).isTrue();
      }
    }
  }

  @Test
  void anOffsetIsSeenWithTheEngineStoppedAndASmallOneIsNot() throws LogRefusedException {
    TraceResult large =
        replay(
            SyntheticDrive.fast(), TraceSplice.from(0.0, AnalogChannel.MAP, SpliceKind.OFFSET, 12));
    assertThat(large.faults())
        .extracting(FaultEvent::code)
        .contains(FaultCode.MAP_AMBIENT_MISMATCH);
    assertThat(large.peakDutyFraction()).isZero();
    TraceResult small =
        replay(
            SyntheticDrive.fast(), TraceSplice.from(0.0, AnalogChannel.MAP, SpliceKind.OFFSET, 2));
    assertThat(small.faults()).isEmpty();
  }

  @Test
  void aFaultThatEndsIsClearedAndControlReturns() throws LogRefusedException {
    TraceSplice splice = new TraceSplice(AnalogChannel.MAP, SpliceKind.OPEN, 8.0, 8.5, 0.0);
    TraceResult result = replay(SyntheticDrive.fast(), splice);
    assertThat(result.faults())
        .extracting(FaultEvent::code)
        .containsExactly(FaultCode.MAP_SIGNAL_LOW);
    // Good again from 8.5 s; its clear time is 2 s.
    assertThat(result.faults().get(0).clearedSeconds()).isBetween(10.49, 10.52);
    assertThat(result.secondsIn(SafetyState.HELD_AT_SPRING)).isBetween(2.4, 2.55);
  }

  @Test
  void aFrozenReadingOfASlowCoarseLogIsNotSeenAndSaidSo() throws LogRefusedException {
    TraceResult result =
        replay(
            SyntheticDrive.slow(), TraceSplice.from(AT, AnalogChannel.MAP, SpliceKind.FROZEN, 0));
    assertThat(result.faults()).extracting(FaultEvent::code).doesNotContain(FaultCode.MAP_FROZEN);
    assertThat(result.notes()).anyMatch(n -> n.contains("frozen"));
  }

  @Test
  void aSpliceAfterTheEndTookNoEffect() throws LogRefusedException {
    TraceSplice late = TraceSplice.from(99.0, AnalogChannel.MAP, SpliceKind.OPEN, 0.0);
    TraceResult result =
        TraceReplay.run(
            ReplayCar.settings(),
            SyntheticDrive.slow(),
            ReplayOptions.DEFAULT.withSplices(List.of(late)));
    assertThat(result.everySpliceTookEffect()).isFalse();
  }

  @Test
  void splicesThatMeanNothingAreRefused() {
    assertThatThrownBy(() -> new TraceSplice(AnalogChannel.MAP, SpliceKind.OPEN, 2.0, 1.0, 0.0))
        .isInstanceOf(IllegalArgumentException.class);
    assertThatThrownBy(() -> TraceSplice.from(1.0, AnalogChannel.MAP, SpliceKind.INTERMITTENT, 1.5))
        .isInstanceOf(IllegalArgumentException.class);
    assertThatThrownBy(
            () -> TraceSplice.from(1.0, AnalogChannel.MAP, SpliceKind.OFFSET, Double.NaN))
        .isInstanceOf(IllegalArgumentException.class);
    assertThatThrownBy(
            () ->
                TraceReplay.run(
                    ReplayCar.settings(),
                    SyntheticDrive.slow(),
                    ReplayOptions.DEFAULT.withSplices(
                        List.of(
                            TraceSplice.from(1.0, AnalogChannel.SUPPLY, SpliceKind.OPEN, 0.0)))))
        .isInstanceOf(IllegalArgumentException.class)
        .hasMessageContaining("supply is not fitted");
  }
}
