package org.boostwright.rig.replay;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatThrownBy;
import static org.assertj.core.api.Assertions.within;

import java.util.Arrays;
import java.util.List;
import java.util.Locale;
import org.boostwright.core.AnalogChannel;
import org.boostwright.core.monitor.FaultCode;
import org.boostwright.core.record.LogFormat;
import org.boostwright.core.settings.AnalogSensor;
import org.boostwright.core.settings.MapLocation;
import org.boostwright.core.state.SafetyState;
import org.boostwright.rig.replay.csv.LogRefusedException;
import org.boostwright.rig.replay.csv.RecordedLog;
import org.junit.jupiter.api.Test;

/** Made-up drives through the controller; the twin of every case is the drive as it is. */
class TraceReplayTest {

  private static TraceResult replay(RecordedLog log, ReplayOptions options)
      throws LogRefusedException {
    return TraceReplay.run(ReplayCar.settings(), log, options);
  }

  private static FedChannel channel(TraceResult result, AnalogChannel channel) {
    return result.channels().stream().filter(c -> c.channel() == channel).findFirst().orElseThrow();
  }

  @Test
  void aCleanDriveIsControlledAndRaisesNothing() throws LogRefusedException {
    TraceResult result = replay(SyntheticDrive.fast(), ReplayOptions.DEFAULT);
    assertThat(result.faults()).isEmpty();
    assertThat(result.rows()).isEqualTo(4000);
    assertThat(result.skippedRows()).isZero();
    assertThat(result.ticks()).isEqualTo(4000);
    // Demand from 1200 1/min and 25 % throttle: about 6.7 s to 14 s.
    assertThat(result.secondsIn(SafetyState.CONTROLLING)).isBetween(6.9, 7.4);
    double all = result.stateSeconds().values().stream().mapToDouble(x -> x).sum();
    assertThat(all).isCloseTo(SyntheticDrive.SECONDS, within(1e-6));
    assertThat(result.peakMapKpaAbs()).isBetween(170.0, 172.0);
    assertThat(result.peakDutyFraction()).isBetween(0.3, 0.55);
    assertThat(result.judged()).contains(FaultCode.MAP_FROZEN, FaultCode.MAP_NOISY);
  }

  @Test
  void theControllerSeesTheRecordedValues() throws LogRefusedException {
    TraceResult result = replay(SyntheticDrive.slow(), ReplayOptions.DEFAULT);
    TraceSeries series = result.series();
    for (int i = 0; i < series.size(); i++) {
      double t = series.seconds(i);
      if (t > 8.0 && t < 12.9) {
        assertThat(series.mapKpaAbs(i)).isBetween(170.0 - 1e-9, 171.0 + 1e-9);
        assertThat(series.engineRpm(i)).isCloseTo(900.0 + (t - 6.0) / 7.0 * 3000.0, within(12.0));
        assertThat(series.throttlePct(i)).isBetween(90.0 - 1e-9, 90.4 + 1e-9);
      }
    }
  }

  @Test
  void sensorsAreAsCoarseAndSlowAsTheRecording() throws LogRefusedException {
    AnalogSensor map =
        channel(replay(SyntheticDrive.slow(), ReplayOptions.DEFAULT), AnalogChannel.MAP).sensor();
    assertThat(map.stepVolts()).isCloseTo(4.0 / 280.0, within(1e-9)); // 1 kPa
    assertThat(map.refreshMillis()).isCloseTo(200.0, within(0.5));
    assertThat(map.frozenIsWatched()).isFalse();
    assertThat(map.maxRatePerSecond()).isCloseTo(3000.0 + 1.0 / 0.2, within(0.1));
    AnalogSensor fine =
        channel(replay(SyntheticDrive.fast(), ReplayOptions.DEFAULT), AnalogChannel.MAP).sensor();
    assertThat(fine.stepVolts()).isEqualTo(187.5e-6);
    assertThat(fine.refreshMillis()).isCloseTo(5.0, within(0.001));
    assertThat(fine.frozenIsWatched()).isTrue();
  }

  @Test
  void whatTheRecordingCannotShowIsSaid() throws LogRefusedException {
    assertThat(replay(SyntheticDrive.slow(), ReplayOptions.DEFAULT).notes())
        .anyMatch(n -> n.startsWith("map: too coarse or too slow a recording"))
        .anyMatch(n -> n.startsWith("map: read anew every 200 ms"))
        .contains("supply is not in the log: replayed as not fitted");
    TraceResult fast = replay(SyntheticDrive.fast(), ReplayOptions.DEFAULT);
    assertThat(fast.notes()).noneMatch(n -> n.startsWith("map"));
    assertThat(fast.settings().sensors().channel(AnalogChannel.SUPPLY)).isNull();
    assertThat(fast.judged()).doesNotContain(FaultCode.SUPPLY_SIGNAL, FaultCode.SUPPLY_LOW);
  }

  @Test
  void aPauseOfTheLoggerStartsTheControllerAgainAndIsNoFault() throws LogRefusedException {
    TraceResult result =
        replay(SyntheticDrive.slowWithPause(30.0), ReplayOptions.DEFAULT.withAmbient(98.0));
    assertThat(result.restarts()).isEqualTo(1);
    assertThat(result.faults()).isEmpty();
    // After the pause the logger reads engine speed first; the pressure's turn is three rows on.
    assertThat(result.skippedRows()).isEqualTo(3);
    assertThat(result.log().pauses()).hasSize(1);
    // After the pause the engine runs, and the sensor has shown no life to the new controller.
    int rest = SafetyState.RESTING.ordinal();
    TraceSeries series = result.series();
    for (int i = 0; i < series.size(); i++) {
      if (series.seconds(i) > 40.2 && series.seconds(i) < 43.5) {
        assertThat(series.state(i)).isEqualTo(rest);
        assertThat(series.dutyFraction(i)).isZero();
      }
    }
  }

  @Test
  void byTheOtherRuleAPauseIsStaleData() throws LogRefusedException {
    TraceResult result =
        replay(
            SyntheticDrive.slowWithPause(30.0),
            ReplayOptions.DEFAULT.withGapRule(GapRule.STALE_DATA));
    assertThat(result.restarts()).isZero();
    assertThat(result.count(FaultCode.MAP_STALE)).isEqualTo(1);
    FaultEvent stale =
        result.faults().stream().filter(e -> e.code() == FaultCode.MAP_STALE).findFirst().get();
    // Last sample at 10.0 s, allowed three times 200 ms.
    assertThat(stale.seconds()).isBetween(10.55, 10.7);
    assertThat(stale.clearedSeconds()).isBetween(42.0, 42.5);
    TraceResult without =
        replay(SyntheticDrive.slow(), ReplayOptions.DEFAULT.withGapRule(GapRule.STALE_DATA));
    assertThat(without.faults()).isEmpty();
  }

  @Test
  void aSignalThatDropsOutOfTheLogIsStale() throws LogRefusedException {
    TraceResult result = replay(SyntheticDrive.fastWithMapBlank(9.0, 9.5), ReplayOptions.DEFAULT);
    assertThat(result.faults()).extracting(FaultEvent::code).containsExactly(FaultCode.MAP_STALE);
    assertThat(result.faults().get(0).seconds()).isBetween(9.0, 9.04);
    assertThat(replay(SyntheticDrive.fastWithMapBlank(9.0, 9.009), ReplayOptions.DEFAULT).faults())
        .isEmpty();
  }

  @Test
  void recordedPressureAboveTheStatedLimitIsOverboostAndBelowIsNot() throws LogRefusedException {
    RecordedLog log = SyntheticDrive.fast();
    TraceResult over = replay(log, ReplayOptions.DEFAULT.withCutoff(160.0));
    assertThat(over.overboosts()).isNotEmpty();
    OverboostEvent first = over.overboosts().get(0);
    // 40 to 170 kPa in 1.5 s from 6.0 s: 160 kPa is reached at 7.385 s.
    assertThat(first.seconds()).isBetween(7.37, 7.42);
    assertThat(first.peakKpaAbs()).isBetween(170.0, 172.0);
    assertThat(over.faults().get(0).code()).isEqualTo(FaultCode.OVERBOOST);
    assertThat(over.faults().get(0).mapKpaAbs()).isBetween(159.0, 163.0);
    assertThat(over.faults().get(0).frame()).hasSize(LogFormat.COLUMN_COUNT);
    assertThat(over.notes()).anyMatch(n -> n.contains("valve_no_effect"));
    assertThat(replay(log, ReplayOptions.DEFAULT.withCutoff(175.0)).overboosts()).isEmpty();
  }

  @Test
  void anOverboostLimitTheSensorCannotShowIsRefused() throws LogRefusedException {
    RecordedLog log = SyntheticDrive.slow();
    assertThatThrownBy(() -> replay(log, ReplayOptions.DEFAULT.withCutoff(273.0)))
        .isInstanceOf(IllegalArgumentException.class)
        .hasMessageContaining("272.0 kPa");
    assertThatThrownBy(() -> replay(log, ReplayOptions.DEFAULT.withCutoff(90.0)))
        .isInstanceOf(IllegalArgumentException.class);
    assertThat(replay(log, ReplayOptions.DEFAULT.withCutoff(272.0)).faults()).isEmpty();
  }

  @Test
  void valuesTheSensorCannotShowAreClippedAndCounted() throws LogRefusedException {
    RecordedLog log =
        SyntheticDrive.parse(
            "time [s],MAP [kPa],rpm,throttle [%]\n0,98,900,5\n0.1,310,900,5\n0.2,320,900,5\n"
                + "0.3,300,900,5\n0.4,98,900,5\n");
    TraceResult result = replay(log, ReplayOptions.DEFAULT);
    assertThat(channel(result, AnalogChannel.MAP).clipped()).isEqualTo(2);
    assertThat(channel(result, AnalogChannel.MAP).samples()).isEqualTo(5);
    assertThat(result.peakMapKpaAbs()).isCloseTo(300.0, within(1e-9));
    assertThat(channel(result, AnalogChannel.THROTTLE).clipped()).isZero();
  }

  @Test
  void thePedalStandsInForAThrottleThatDoesNotFollowTheDriver() throws LogRefusedException {
    StringBuilder text = new StringBuilder("time [s],MAP [kPa],rpm,throttle [%],pedal [%]\n");
    for (int i = 0; i < 400; i++) {
      double map = i < 100 ? 99.0 : 140.0;
      int pedal = i >= 100 && i < 300 ? 60 : 10;
      int flap = i < 100 ? 60 : 83;
      text.append(String.format(Locale.ROOT, "%.2f,%.0f,2500,%d,%d%n", 0.05 * i, map, flap, pedal));
    }
    RecordedLog log = SyntheticDrive.parse(text.toString());
    ReplayOptions options =
        ReplayOptions.DEFAULT.withAmbient(98.0).withLife(MapLocation.BEFORE_THROTTLE, 15.0);
    TraceResult pedal = replay(log, options.withDemand(AnalogChannel.PEDAL));
    assertThat(pedal.faults()).isEmpty();
    assertThat(pedal.secondsIn(SafetyState.CONTROLLING)).isCloseTo(10.0, within(0.2));
    assertThat(pedal.settings().sensors().channel(AnalogChannel.PEDAL)).isNull();
    TraceResult throttle = replay(log, options);
    assertThat(throttle.secondsIn(SafetyState.CONTROLLING)).isGreaterThan(14.5);
  }

  @Test
  void withoutTheDeclaredSignOfLifeControlNeverBecomesReady() throws LogRefusedException {
    TraceResult result =
        replay(
            SyntheticDrive.fast(),
            ReplayOptions.DEFAULT.withLife(MapLocation.BEFORE_THROTTLE, 90.0));
    assertThat(result.secondsIn(SafetyState.RESTING)).isCloseTo(20.0, within(1e-6));
    assertThat(result.peakDutyFraction()).isZero();
  }

  @Test
  void aLogWithoutNeededSignalsIsRefused() {
    for (String header : List.of("MAP [kPa],rpm", "MAP [kPa],throttle [%]", "rpm,throttle [%]")) {
      assertThatThrownBy(
              () ->
                  replay(
                      SyntheticDrive.parse("time [s]," + header + "\n0,50,50\n0.1,50,51\n"),
                      ReplayOptions.DEFAULT))
          .isInstanceOf(LogRefusedException.class)
          .hasMessageContaining("no column for");
    }
  }

  @Test
  void twoReplaysGiveTheSameNumbers() throws LogRefusedException {
    TraceSplice splice = TraceSplice.from(9.0, AnalogChannel.MAP, SpliceKind.INTERMITTENT, 0.3);
    ReplayOptions options = ReplayOptions.DEFAULT.withSplices(List.of(splice));
    TraceResult a = replay(SyntheticDrive.fast(), options);
    TraceResult b = replay(SyntheticDrive.fast(), options);
    assertThat(a.stateSeconds()).isEqualTo(b.stateSeconds());
    assertThat(a.faults()).hasSameSizeAs(b.faults());
    for (int i = 0; i < a.faults().size(); i++) {
      assertThat(Arrays.equals(a.faults().get(i).frame(), b.faults().get(i).frame())).isTrue();
    }
  }
}
