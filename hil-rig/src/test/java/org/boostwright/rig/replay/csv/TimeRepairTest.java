package org.boostwright.rig.replay.csv;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatThrownBy;
import static org.assertj.core.api.Assertions.within;
import static org.boostwright.rig.replay.csv.Logs.mapping;
import static org.boostwright.rig.replay.csv.Logs.read;
import static org.boostwright.rig.replay.csv.Logs.repairs;

import java.util.Locale;
import java.util.stream.LongStream;
import org.junit.jupiter.api.Test;

/** Times in order: every repair with its twin that needs none. */
class TimeRepairTest {

  private static RecordedLog times(String... times) throws LogRefusedException {
    StringBuilder text = new StringBuilder("time,rpm\n");
    for (int i = 0; i < times.length; i++) {
      text.append(times[i]).append(',').append(1000 + i).append('\n');
    }
    return read(text.toString());
  }

  private static double[] seconds(RecordedLog log) {
    return LongStream.range(0, log.rows()).mapToDouble(i -> log.nanos((int) i) * 1e-9).toArray();
  }

  private static double[] rpm(RecordedLog log) throws LogRefusedException {
    SignalTrace trace = log.require(LogSignal.ENGINE_SPEED);
    double[] values = new double[log.rows()];
    for (int i = 0; i < values.length; i++) {
      values[i] = trace.value(i);
    }
    return values;
  }

  @Test
  void timeOfDayPassesMidnight() throws LogRefusedException {
    RecordedLog log = times("23:59:59.5", "23:59:59.9", "00:00:00.3", "00:00:00.7");
    assertThat(seconds(log)).containsExactly(new double[] {0.0, 0.4, 0.8, 1.2}, within(1e-9));
    assertThat(log.repairs())
        .singleElement()
        .isEqualTo(new Repair(RepairKind.MIDNIGHT, "", 1, 4, 4, ""));
    assertThat(times("22:59:59.5", "22:59:59.9", "23:00:00.3").repairs()).isEmpty();
  }

  @Test
  void aStragglerFromBeforeMidnightIsLeftOut() throws LogRefusedException {
    RecordedLog log = times("23:59:59.8", "00:00:00.2", "23:59:59.9", "00:00:00.4", "00:00:00.6");
    assertThat(rpm(log)).containsExactly(1000, 1001, 1003, 1004);
    assertThat(repairs(log, RepairKind.BACKWARD_TIME)).hasSize(1);
    assertThat(repairs(log, RepairKind.MIDNIGHT)).hasSize(1);
    assertThat(log.pauses()).isEmpty();
  }

  @Test
  void dateBeforeTheTimeAndZuluAreSkipped() throws LogRefusedException {
    RecordedLog log =
        times("2024-02-29 10:00:00.0", "2024-02-29 10:00:00.5", "2024-02-29 10:00:01");
    assertThat(seconds(log)).containsExactly(new double[] {0.0, 0.5, 1.0}, within(1e-9));
    assertThat(seconds(times("2024-02-29T10:00:00Z", "2024-02-29T10:00:01Z")))
        .containsExactly(0.0, 1.0);
  }

  @Test
  void aRowOutOfOrderIsLeftOut() throws LogRefusedException {
    RecordedLog log = times("1.0", "1.1", "1.2", "1.05", "1.3", "1.4");
    assertThat(rpm(log)).containsExactly(1000, 1001, 1002, 1004, 1005);
    assertThat(log.repairs())
        .containsExactly(new Repair(RepairKind.BACKWARD_TIME, "", 1, 5, 5, ""));
    assertThat(times("1.0", "1.1", "1.2", "1.25", "1.3", "1.4").repairs()).isEmpty();
  }

  @Test
  void aRowThatLiesAheadAloneIsLeftOut() throws LogRefusedException {
    RecordedLog log = times("1.0", "1.1", "9.2", "1.3", "1.4", "1.5");
    assertThat(rpm(log)).containsExactly(1000, 1001, 1003, 1004, 1005);
    assertThat(log.pauses()).isEmpty();
  }

  @Test
  void aClockSetBackForGoodStartsTheRecordingAgain() throws LogRefusedException {
    String[] times = new String[60];
    for (int i = 0; i < 60; i++) {
      times[i] = String.format(Locale.ROOT, "%.1f", (i < 30 ? 100.0 : 50.0) + 0.1 * i);
    }
    RecordedLog log = times(times);
    assertThat(log.rows()).isEqualTo(60);
    assertThat(log.pauses()).singleElement().satisfies(p -> assertThat(p.row()).isEqualTo(30));
    assertThat(log.pauses().get(0).seconds()).isNaN();
    assertThat(repairs(log, RepairKind.CLOCK_SET_BACK)).hasSize(1);
    assertThat(seconds(log)[31] - seconds(log)[30]).isCloseTo(0.1, within(1e-9));
  }

  @Test
  void rowsThatShareATimeAreSpreadEvenly() throws LogRefusedException {
    String[] times = new String[20];
    for (int i = 0; i < 20; i++) {
      times[i] = "10:00:0" + i / 5;
    }
    RecordedLog log = times(times);
    for (int i = 0; i < 20; i++) {
      assertThat(seconds(log)[i]).isCloseTo(0.2 * i, within(1e-9));
    }
    assertThat(repairs(log, RepairKind.REPEATED_TIME))
        .containsExactly(new Repair(RepairKind.REPEATED_TIME, "", 16, 3, 21, ""));
  }

  @Test
  void rowsThatShareATimeBeforeAPauseAreNotSpreadOverIt() throws LogRefusedException {
    RecordedLog log = times("0.0", "0.1", "0.2", "0.2", "60.0", "60.1", "60.2");
    assertThat(seconds(log)[3]).isCloseTo(0.3, within(1e-9));
    assertThat(log.pauses()).hasSize(1);
  }

  @Test
  void pausesAreFoundAndReported() throws LogRefusedException {
    RecordedLog log = times("0.0", "0.1", "0.2", "1.15", "1.25", "2.30", "2.4");
    assertThat(log.pauses()).singleElement().satisfies(p -> assertThat(p.line()).isEqualTo(7));
    assertThat(log.pauses().get(0).seconds()).isCloseTo(1.05, within(1e-9));
    assertThat(repairs(log, RepairKind.PAUSE)).hasSize(1);
    RecordedLog declared =
        read("time [s],rpm\n0,1\n0.1,2\n0.6,3\n0.7,4\n", mapping("pause_s = 0.4"));
    assertThat(declared.pauses()).hasSize(1);
  }

  @Test
  void aSlowLoggerHasNoPauses() throws LogRefusedException {
    RecordedLog log = times("0", "1.5", "3.0", "4.5", "6.0", "7.5");
    assertThat(log.pauses()).isEmpty();
    assertThat(log.seconds()).isCloseTo(7.5, within(1e-9));
  }

  @Test
  void secondsAndMillisecondsWithoutAUnitAreToldApartOrAskedFor() throws LogRefusedException {
    RecordedLog seconds = times("0.00", "0.09", "0.18");
    assertThat(seconds.seconds()).isCloseTo(0.18, within(1e-9));
    assertThat(seconds.notes()).anyMatch(n -> n.contains("taken as seconds"));
    RecordedLog millis = times("1000", "1090", "1180");
    assertThat(millis.seconds()).isCloseTo(0.18, within(1e-9));
    assertThat(millis.notes()).anyMatch(n -> n.contains("taken as milliseconds"));
    assertThatThrownBy(() -> times("0", "3", "6"))
        .isInstanceOf(LogRefusedException.class)
        .hasMessageContaining("declare format under [time]");
    RecordedLog declared = read("time,rpm\n0,1\n3,2\n6,3\n", mapping("[time]\nformat = \"ms\""));
    assertThat(declared.seconds()).isCloseTo(0.006, within(1e-9));
  }

  @Test
  void clocksThatCountFrom1970AreRead() throws LogRefusedException {
    RecordedLog log = read("time_ms,rpm\n1700000000000,1\n1700000000090,2\n");
    assertThat(log.seconds()).isCloseTo(0.09, within(1e-9));
  }

  @Test
  void aRowWithoutAReadableTimeIsLeftOutAndTooManyAreRefused() throws LogRefusedException {
    RecordedLog log = times("0.0", "", "0.2", "x", "0.4");
    assertThat(rpm(log)).containsExactly(1000, 1002, 1004);
    assertThat(repairs(log, RepairKind.UNREADABLE_TIME).get(0).count()).isEqualTo(2);
    assertThatThrownBy(() -> times("0.0", "a", "b", "c", "d", "0.1"))
        .isInstanceOf(LogRefusedException.class)
        .hasMessageStartingWith("log.csv:3:1: 4 of 6 rows have no readable time, first 'a'");
  }

  @Test
  void timeThatNeverMovesOrHasNoOrderIsRefused() {
    assertThatThrownBy(() -> times("5", "5", "5"))
        .isInstanceOf(LogRefusedException.class)
        .hasMessageContaining("[time]");
    String[] shuffled = new String[200];
    for (int i = 0; i < 200; i++) {
      shuffled[i] = String.valueOf(0.1 * ((i * 77) % 200));
    }
    assertThatThrownBy(() -> times(shuffled))
        .isInstanceOf(LogRefusedException.class)
        .hasMessageContaining("out of order in time");
  }
}
