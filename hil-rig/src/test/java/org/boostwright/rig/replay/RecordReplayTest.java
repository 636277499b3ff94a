package org.boostwright.rig.replay;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatThrownBy;

import java.nio.charset.StandardCharsets;
import java.util.List;
import java.util.Random;
import org.boostwright.core.AnalogChannel;
import org.boostwright.core.Controller;
import org.boostwright.core.Inputs;
import org.boostwright.core.Outputs;
import org.boostwright.core.monitor.FaultCode;
import org.boostwright.core.record.LogFormat;
import org.boostwright.core.settings.Settings;
import org.boostwright.core.state.Permission;
import org.boostwright.core.state.SafetyState;
import org.boostwright.rig.replay.csv.LogImport;
import org.boostwright.rig.replay.csv.LogMapping;
import org.boostwright.rig.replay.csv.LogRefusedException;
import org.boostwright.rig.replay.csv.LogSignal;
import org.boostwright.rig.replay.csv.RecordedLog;
import org.junit.jupiter.api.BeforeAll;
import org.junit.jupiter.api.Tag;
import org.junit.jupiter.api.Test;

/** A recorded run gives its own outputs again, to the bit; anything changed in it shows. */
@Tag("U7")
class RecordReplayTest {
  private static final int TICKS = 4000;
  private static String record = "";

  /** Rough inputs on purpose: noise, dropped samples, NaN, infinity, late ticks, every switch. */
  @BeforeAll
  static void recordARun() {
    Random random = new Random(17);
    Controller controller = new Controller(ReplayCar.settings());
    Inputs in = new Inputs();
    Outputs out = new Outputs();
    double[] row = new double[LogFormat.COLUMN_COUNT];
    StringBuilder text = new StringBuilder();
    LogFormat.appendHeader(text);
    text.append('\n');
    long now = 123_456_789L;
    in.keyOn = true;
    in.permit = true;
    in.coilFeed = true;
    for (int i = 0; i < TICKS; i++) {
      now += Controller.TICK_NANOS + (i % 500 == 499 ? 4_000_000L : random.nextInt(2000));
      double t = i * 0.005;
      double map = t < 4.0 ? 98.0 : t < 6.0 ? 45.0 : Math.min(170.0, 45.0 + 80.0 * (t - 6.0));
      double volts = 0.5 + 4.0 * (map + 0.3 * random.nextGaussian() - 20.0) / 280.0;
      if (i > 2500 && i % 400 < 4) {
        volts = i % 800 < 4 ? Double.NaN : Double.POSITIVE_INFINITY;
      }
      if (random.nextInt(50) > 0) {
        in.sample(AnalogChannel.MAP, volts, now - random.nextInt(100_000));
      }
      double throttle = t < 6.0 ? 0.7 : 4.1;
      in.sample(AnalogChannel.THROTTLE, throttle + 1e-3 * random.nextGaussian(), now);
      in.sample(AnalogChannel.INTAKE_AIR, 2.5 + 1e-3 * random.nextGaussian(), now);
      if (t > 4.0) {
        in.engineSeen = true;
        in.enginePulseNanos = now - random.nextInt(1_000_000);
        double rpm = t < 6.0 ? 900.0 : Math.min(3000.0, 900.0 + 3000.0 * (t - 6.0));
        in.enginePeriodNanos = 60e9 / 2.0 / rpm;
      }
      in.highBoost = i % 700 < 350;
      controller.step(now, in, out);
      LogFormat.fill(row, now, in, out);
      LogFormat.appendRow(text, row, i == 0 ? LogFormat.VERSION + " digest 17" : "");
      text.append('\n');
    }
    record = text.toString();
  }

  private static RecordResult replay(Settings settings, String text) throws LogRefusedException {
    byte[] bytes = text.getBytes(StandardCharsets.UTF_8);
    return RecordReplay.run(settings, Permission.FULL, bytes, "run.csv");
  }

  private static String withCell(int line, String column, String cell) {
    String[] lines = record.split("\n", -1);
    String[] cells = lines[line - 1].split(",", -1);
    cells[LogFormat.column(column)] = cell;
    lines[line - 1] = String.join(",", cells);
    return String.join("\n", lines);
  }

  @Test
  void everyOutputOfEveryRowComesAgainToTheBit() throws LogRefusedException {
    RecordResult result = replay(ReplayCar.settings(), record);
    assertThat(result.firstDifference()).isNull();
    assertThat(result.bitEqual()).isTrue();
    assertThat(result.rows()).isEqualTo(TICKS);
    assertThat(result.missingTicks()).isZero();
    assertThat(result.meta()).isEqualTo("boostwright-log-1 digest 17");
    // The run was worth replaying: control, faults, rest.
    assertThat(result.stateSeconds().get(SafetyState.CONTROLLING)).isGreaterThan(2.0);
    assertThat(result.faults()).extracting(FaultEvent::code).contains(FaultCode.MAP_NOT_A_NUMBER);
  }

  @Test
  void aVoltageThatDiffersInItsLastDigitsShows() throws LogRefusedException {
    String cell = record.split("\n", -1)[2000].split(",", -1)[LogFormat.column("map_raw_v")];
    double nudged = Double.parseDouble(cell) + 1e-9;
    RecordResult result =
        replay(ReplayCar.settings(), withCell(2001, "map_raw_v", Double.toString(nudged)));
    assertThat(result.bitEqual()).isFalse();
    assertThat(result.firstDifference()).isNotNull();
    assertThat(result.firstDifference().line()).isEqualTo(2001);
  }

  @Test
  void aRecordedOutputThatIsChangedShowsInItsRowOnly() throws LogRefusedException {
    RecordResult result = replay(ReplayCar.settings(), withCell(3001, "duty_fraction", "0.123"));
    assertThat(result.differingRows()).isEqualTo(1);
    assertThat(result.firstDifference().column()).isEqualTo("duty_fraction");
    assertThat(result.firstDifference().recorded()).isEqualTo(0.123);
  }

  @Test
  void otherSettingsGiveOtherOutputs() throws LogRefusedException {
    RecordResult result = replay(ReplayCar.withTarget(150.0), record);
    assertThat(result.bitEqual()).isFalse();
    assertThat(result.rows()).isEqualTo(TICKS);
  }

  @Test
  void aLessPermissiveRungGivesOtherOutputs() throws LogRefusedException {
    RecordResult result =
        RecordReplay.run(
            ReplayCar.settings(),
            Permission.NONE,
            record.getBytes(StandardCharsets.UTF_8),
            "run.csv");
    assertThat(result.bitEqual()).isFalse();
    assertThat(result.stateSeconds().get(SafetyState.CONTROLLING)).isZero();
  }

  @Test
  void aRunReplaysWithThePermissionItsFirstRowNames() throws LogRefusedException {
    for (String text : List.of("none", "0.3", "1.0+trim")) {
      String named = record.replaceFirst("digest 17", "digest permission=" + text);
      RecordResult result =
          RecordReplay.run(
              ReplayCar.settings(), named.getBytes(StandardCharsets.UTF_8), "run.csv");
      assertThat(result.bitEqual()).as(text).isEqualTo(text.equals("1.0+trim"));
    }
    String unknown = record.replaceFirst("digest 17", "permission=everything");
    assertThatThrownBy(
            () ->
                RecordReplay.run(
                    ReplayCar.settings(), unknown.getBytes(StandardCharsets.UTF_8), "run.csv"))
        .isInstanceOf(LogRefusedException.class);
  }

  @Test
  void aRowCutShortByAPowerCutIsLeftOut() throws LogRefusedException {
    int half = record.lastIndexOf('\n', record.length() - 2) + 100;
    RecordResult result = replay(ReplayCar.settings(), record.substring(0, half));
    assertThat(result.incompleteRows()).isEqualTo(1);
    assertThat(result.rows()).isEqualTo(TICKS - 1);
    assertThat(result.bitEqual()).isTrue();
  }

  @Test
  void rowsTheRecorderDroppedAreCounted() throws LogRefusedException {
    StringBuilder text = new StringBuilder();
    String[] lines = record.split("\n");
    for (int i = 0; i < lines.length; i++) {
      if (i < 100 || i >= 110) {
        text.append(lines[i]).append('\n');
      }
    }
    RecordResult result = replay(ReplayCar.settings(), text.toString());
    assertThat(result.missingTicks()).isEqualTo(10);
  }

  @Test
  void damageIsRefusedWithItsPlace() {
    assertThatThrownBy(() -> replay(ReplayCar.settings(), withCell(7, "state", "asleep")))
        .isInstanceOf(LogRefusedException.class)
        .hasMessageStartingWith("run.csv:7:")
        .hasMessageContaining("'asleep' is no state");
    assertThatThrownBy(() -> replay(ReplayCar.settings(), withCell(7, "map_raw_v", "1.2.3")))
        .isInstanceOf(LogRefusedException.class)
        .hasMessageContaining("'1.2.3' is no map_raw_v");
    assertThatThrownBy(() -> replay(ReplayCar.settings(), "time_ns,map\n1,2\n"))
        .isInstanceOf(LogRefusedException.class)
        .hasMessageContaining("not a run recorded by this version");
    assertThatThrownBy(() -> replay(ReplayCar.settings(), record.split("\n")[0] + "\n"))
        .isInstanceOf(LogRefusedException.class)
        .hasMessageContaining("nothing was recorded");
  }

  @Test
  void onlyItsOwnHeaderIsTakenForARecord() {
    assertThat(RecordReplay.isRecord(record.getBytes(StandardCharsets.UTF_8))).isTrue();
    assertThat(RecordReplay.isRecord("time,rpm\n".getBytes(StandardCharsets.UTF_8))).isFalse();
    assertThat(RecordReplay.isRecord(new byte[0])).isFalse();
  }

  @Test
  void aRecordCanAlsoBeImportedLikeAnyLog() throws LogRefusedException {
    RecordedLog log =
        LogImport.parse(record.getBytes(StandardCharsets.UTF_8), "run.csv", LogMapping.NONE);
    assertThat(log.rows()).isEqualTo(TICKS);
    assertThat(log.require(LogSignal.MAP).header()).isEqualTo("map_kpa_abs");
    assertThat(log.require(LogSignal.THROTTLE).header()).isEqualTo("throttle_pct");
    assertThat(log.require(LogSignal.ENGINE_SPEED).header()).isEqualTo("engine_rpm");
    assertThat(log.require(LogSignal.INTAKE_AIR).header()).isEqualTo("intake_air_c");
    assertThat(log.seconds()).isBetween(19.9, 20.2);
  }
}
