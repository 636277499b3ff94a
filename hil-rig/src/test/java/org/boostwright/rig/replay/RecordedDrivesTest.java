package org.boostwright.rig.replay;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;
import static org.junit.jupiter.api.Assumptions.assumeTrue;

import java.nio.file.Files;
import java.nio.file.Path;
import java.util.HashMap;
import java.util.List;
import java.util.Map;
import org.boostwright.core.AnalogChannel;
import org.boostwright.core.monitor.FaultCode;
import org.boostwright.core.settings.MapLocation;
import org.boostwright.core.settings.Settings;
import org.boostwright.core.settings.file.SettingsFile;
import org.boostwright.core.state.SafetyState;
import org.boostwright.rig.replay.csv.LogImport;
import org.boostwright.rig.replay.csv.LogMapping;
import org.boostwright.rig.replay.csv.LogRefusedException;
import org.boostwright.rig.replay.csv.LogSignal;
import org.boostwright.rig.replay.csv.RecordedLog;
import org.boostwright.rig.replay.csv.Repair;
import org.boostwright.rig.replay.csv.RepairKind;
import org.boostwright.rig.replay.csv.SignalTrace;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;
import org.junit.jupiter.params.provider.MethodSource;
import org.junit.jupiter.params.provider.ValueSource;

/**
 * Five recorded road drives of a production turbodiesel: M. Weber, Automotive OBD-II Dataset, KIT,
 * 2023, DOI 10.35097/1130, CC BY 4.0. Skipped where the recordings are not present.
 *
 * <p>Rows, blank cells and pauses were counted with another program (Python's csv module).
 */
class RecordedDrivesTest {
  private static final double LIFE_KPA = 15.0;

  /** Ambient pressure, from the pressure sensor with the engine stopped, kPa absolute. */
  private static final double AMBIENT_KPA = 98.0;

  private static final Map<String, RecordedLog> LOGS = new HashMap<>();
  private static final Map<String, Double> CONTROLLED = new HashMap<>();

  static List<String> drives() {
    return List.of(
        "drive-a-acceleration.csv",
        "drive-b-free.csv",
        "drive-c-normal.csv",
        "drive-d-traffic.csv",
        "drive-e-normal.csv");
  }

  private static RecordedLog drive(String name) throws LogRefusedException {
    Path file = Path.of(System.getProperty("boostwright.shared", ""), "data", "drives", name);
    assumeTrue(
        System.getProperty("boostwright.shared") != null && Files.exists(file),
        "recorded drives are not present (system property boostwright.shared)");
    RecordedLog log = LOGS.get(name);
    if (log == null) {
      log = LogImport.read(file, LogMapping.NONE);
      LOGS.put(name, log);
    }
    return log;
  }

  /** A diesel: pressure is before any throttle that matters, the pedal is the demand. */
  private static ReplayOptions diesel() {
    return ReplayOptions.DEFAULT
        .withAmbient(AMBIENT_KPA)
        .withDemand(AnalogChannel.PEDAL)
        .withLife(MapLocation.BEFORE_THROTTLE, LIFE_KPA)
        .withCutoff(250.0);
  }

  private static int count(RecordedLog log, RepairKind kind) {
    return log.repairs().stream().filter(r -> r.kind() == kind).mapToInt(Repair::count).sum();
  }

  @ParameterizedTest
  @CsvSource({
    // rows, empty cells of the columns read, pauses above 1 s, mangled units in the header
    "drive-a-acceleration.csv, 10176, 24, 0, 0",
    "drive-b-free.csv, 6829, 24, 7, 2",
    "drive-c-normal.csv, 15372, 24, 0, 0",
    "drive-d-traffic.csv, 17934, 24, 10, 2",
    "drive-e-normal.csv, 20413, 33, 2, 0"
  })
  void everyRowIsImportedAndEveryRepairCounted(
      String name, int rows, int emptyCells, int pauses, int mangled) throws LogRefusedException {
    RecordedLog log = drive(name);
    assertThat(log.rows()).isEqualTo(rows);
    assertThat(count(log, RepairKind.MISSING_CELL)).isEqualTo(emptyCells);
    assertThat(log.pauses()).hasSize(pauses);
    assertThat(count(log, RepairKind.PAUSE)).isEqualTo(pauses);
    assertThat(count(log, RepairKind.MANGLED_DEGREE)).isEqualTo(mangled);
    assertThat(log.repairCount()).isEqualTo(emptyCells + pauses + mangled);
    assertThat(log.traces())
        .extracting(SignalTrace::signal)
        .containsExactlyInAnyOrder(
            LogSignal.MAP,
            LogSignal.THROTTLE,
            LogSignal.PEDAL,
            LogSignal.INTAKE_AIR,
            LogSignal.COOLANT,
            LogSignal.ENGINE_SPEED,
            LogSignal.ROAD_SPEED);
    assertThat(log.unusedColumns()).hasSize(3);
  }

  @ParameterizedTest
  @MethodSource("drives")
  void resolutionAndRefreshAreFound(String name) throws LogRefusedException {
    RecordedLog log = drive(name);
    SignalTrace map = log.require(LogSignal.MAP);
    // The set's description: 1 kPa steps, one of ten signals per row, 0.75 to 0.93 s old at times.
    assertThat(map.resolution().size()).isEqualTo(1.0);
    assertThat(map.refresh().rows()).isEqualTo(10.0);
    assertThat(map.refresh().millis()).isBetween(750.0, 930.0);
    assertThat(log.require(LogSignal.ENGINE_SPEED).refresh().rows()).isEqualTo(10.0);
    // 8-bit percent printed to a tenth: steps of 100/255 = 0.392 appear as 0.3 or 0.4.
    assertThat(log.require(LogSignal.PEDAL).resolution().size()).isCloseTo(0.35, within(0.06));
  }

  @ParameterizedTest
  @MethodSource("drives")
  void noDriveRaisesAFaultWhateverStandsForDemand(String name) throws LogRefusedException {
    RecordedLog log = drive(name);
    Settings car = ReplayCar.settings();
    TraceResult throttle =
        TraceReplay.run(car, log, ReplayOptions.DEFAULT.withAmbient(AMBIENT_KPA));
    assertThat(throttle.faults()).isEmpty();
    TraceResult pedal = TraceReplay.run(car, log, diesel());
    assertThat(pedal.faults()).isEmpty();
    assertThat(pedal.overboosts()).isEmpty();
    assertThat(pedal.rows() + pedal.skippedRows()).isEqualTo(log.rows());
    // Ready once boost had risen, and controlled whenever the driver asked for boost.
    assertThat(pedal.secondsIn(SafetyState.READY)).isGreaterThan(100.0);
    assertThat(pedal.secondsIn(SafetyState.CONTROLLING)).isGreaterThan(60.0);
    assertThat(pedal.peakDutyFraction()).isGreaterThan(0.3);
    assertThat(pedal.notes()).anyMatch(n -> n.startsWith("map: too coarse or too slow"));
    assertThat(pedal.channels()).allMatch(c -> c.clipped() == 0);
  }

  @ParameterizedTest
  @ValueSource(strings = {"drive-b-free.csv", "drive-d-traffic.csv"})
  void pausesRestartTheControllerAndByTheOtherRuleAreStale(String name) throws LogRefusedException {
    RecordedLog log = drive(name);
    TraceResult stale =
        TraceReplay.run(ReplayCar.settings(), log, diesel().withGapRule(GapRule.STALE_DATA));
    assertThat(stale.count(FaultCode.MAP_STALE)).isPositive();
    // Nothing but lost data: pressure, demand, intake air, and the pulses that went with them.
    assertThat(stale.faults())
        .extracting(FaultEvent::code)
        .isSubsetOf(
            FaultCode.MAP_STALE,
            FaultCode.THROTTLE_STALE,
            FaultCode.INTAKE_AIR_SIGNAL,
            FaultCode.ENGINE_SPEED_LOST);
  }

  @ParameterizedTest
  @MethodSource("drives")
  void aStatedLimitTripsOnlyWhereTheRecordedPressureWasAboveIt(String name)
      throws LogRefusedException {
    double limitKpa = 200.0;
    RecordedLog log = drive(name);
    TraceResult result = TraceReplay.run(ReplayCar.settings(), log, diesel().withCutoff(limitKpa));
    assertThat(result.overboosts()).isNotEmpty();
    assertThat(result.faults())
        .extracting(FaultEvent::code)
        .isSubsetOf(FaultCode.OVERBOOST, FaultCode.OVERBOOST_REPEATED, FaultCode.VALVE_NO_EFFECT);
    SignalTrace map = log.require(LogSignal.MAP);
    for (OverboostEvent event : result.overboosts()) {
      int row = 0;
      while (log.line(row) < event.line()) {
        row++;
      }
      int above = 0;
      for (int back = Math.max(0, row - 200); back <= row; back++) {
        above += map.isFresh(back) && map.value(back) > limitKpa ? 1 : 0;
      }
      // Three samples above the limit confirm (up 10 each, down 1 for a good one, at 30); the
      // last twenty are looked at.
      assertThat(above).isGreaterThanOrEqualTo(3);
      assertThat(map.value(row)).isGreaterThan(limitKpa);
      assertThat(event.peakKpaAbs()).isGreaterThan(limitKpa);
    }
  }

  /** Middle of the longest time in which the replay controls without a break, s. */
  private static double longestControl(String name) throws LogRefusedException {
    Double known = CONTROLLED.get(name);
    if (known == null) {
      known = longestControl(TraceReplay.run(ReplayCar.settings(), drive(name), diesel()));
      CONTROLLED.put(name, known);
    }
    return known;
  }

  private static double longestControl(TraceResult result) {
    TraceSeries series = result.series();
    int controlling = SafetyState.CONTROLLING.ordinal();
    double begin = Double.NaN;
    double best = 0.0;
    double middle = Double.NaN;
    for (int i = 0; i < series.size(); i++) {
      if (series.state(i) != controlling) {
        begin = Double.NaN;
        continue;
      }
      begin = Double.isNaN(begin) ? series.seconds(i) : begin;
      if (series.seconds(i) - begin > best) {
        best = series.seconds(i) - begin;
        middle = begin + 0.5 * best;
      }
    }
    return middle;
  }

  /** Each fault in two drives; over all faults every drive has four. */
  @ParameterizedTest
  @CsvSource({
    "a-acceleration, c-normal,  MAP,      OPEN,            0,   MAP_SIGNAL_LOW,   0.04",
    "b-free,         d-traffic, MAP,      SHORT_TO_GROUND, 0,   MAP_SIGNAL_LOW,   0.04",
    "c-normal,       e-normal,  MAP,      SHORT_TO_SUPPLY, 0,   MAP_SIGNAL_HIGH,  0.04",
    "a-acceleration, d-traffic, MAP,      NOT_A_NUMBER,    0,   MAP_NOT_A_NUMBER, 0.04",
    "b-free,         e-normal,  MAP,      INTERMITTENT,    0.5, MAP_SIGNAL_LOW,   0.10",
    "a-acceleration, c-normal,  MAP,      JUMP,            70,  MAP_JUMPS,        0.50",
    "b-free,         d-traffic, MAP,      STALE,           0,   MAP_STALE,        6.00",
    "c-normal,       e-normal,  THROTTLE, OPEN,            0,   THROTTLE_SIGNAL,  0.04",
    "a-acceleration, d-traffic, THROTTLE, SHORT_TO_SUPPLY, 0,   THROTTLE_SIGNAL,  0.04",
    "b-free,         e-normal,  THROTTLE, STALE,           0,   THROTTLE_STALE,   6.00"
  })
  void aFaultSplicedIntoADriveIsCaught(
      String first,
      String second,
      AnalogChannel channel,
      SpliceKind kind,
      double amount,
      FaultCode expected,
      double seconds)
      throws LogRefusedException {
    for (String drive : List.of(first, second)) {
      String name = "drive-" + drive + ".csv";
      double at = longestControl(name);
      TraceSplice splice = new TraceSplice(channel, kind, at, at + 10.0, amount);
      TraceResult result =
          TraceReplay.run(ReplayCar.settings(), drive(name), diesel().withSplices(List.of(splice)));
      assertThat(result.everySpliceTookEffect()).isTrue();
      assertThat(result.faults()).as(name).isNotEmpty();
      FaultEvent fault = result.faults().get(0);
      assertThat(fault.code()).as(name).isEqualTo(expected);
      assertThat(fault.seconds()).as(name).isBetween(at, at + seconds);
      // At rest for the 10 s it lasts, but for what its own detection took.
      double rest =
          result.secondsIn(SafetyState.HELD_AT_SPRING)
              + result.secondsIn(SafetyState.LOCKED_UNTIL_RESTART);
      assertThat(rest).as(name).isGreaterThan(10.0 - seconds);
    }
  }

  @ParameterizedTest
  @CsvSource({
    // begins with the key on and the engine stopped for 9 s; stops for 39 s at 1165 s
    "drive-c-normal.csv, 0",
    "drive-d-traffic.csv, 1150"
  })
  void anOffsetIsSeenWhenTheEngineIsStopped(String name, double from) throws LogRefusedException {
    TraceSplice splice = TraceSplice.from(from, AnalogChannel.MAP, SpliceKind.OFFSET, 12.0);
    TraceResult result =
        TraceReplay.run(ReplayCar.settings(), drive(name), diesel().withSplices(List.of(splice)));
    assertThat(result.faults().get(0).code()).isEqualTo(FaultCode.MAP_AMBIENT_MISMATCH);
    assertThat(result.faults().get(0).seconds()).isBetween(from, from + 25.0);
    assertThat(result.faults().get(0).engineRpm()).isLessThan(100.0);
  }

  @ParameterizedTest
  @ValueSource(strings = {"drive-c-normal.csv", "drive-d-traffic.csv"})
  void theShippedCarClipsWhatItsSensorsCannotShowAndRaisesNothing(String name)
      throws LogRefusedException {
    RecordedLog log = drive(name);
    Path file = Path.of(System.getProperty("boostwright.root", "."), "docs", "project-car.toml");
    Settings car = SettingsFile.load(file).orThrow();
    TraceResult result = TraceReplay.run(car, log, diesel());
    assertThat(result.faults()).isEmpty();
    // Intake air reads from -40 to 149 degC while the engine is stopped; this sensor ends at 120.
    FedChannel air =
        result.channels().stream()
            .filter(c -> c.channel() == AnalogChannel.INTAKE_AIR)
            .findFirst()
            .orElseThrow();
    assertThat(air.clipped()).isBetween(1L, air.samples() / 20);
    assertThat(result.notes()).contains("supply is not in the log: replayed as not fitted");
  }
}
