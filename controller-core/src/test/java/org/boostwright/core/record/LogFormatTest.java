package org.boostwright.core.record;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatIllegalArgumentException;

import java.util.Arrays;
import java.util.HashSet;
import java.util.Random;
import java.util.Set;
import org.boostwright.core.AnalogChannel;
import org.boostwright.core.Inputs;
import org.boostwright.core.Outputs;
import org.boostwright.core.monitor.FaultCode;
import org.boostwright.core.state.SafetyState;
import org.boostwright.core.state.Waiting;
import org.junit.jupiter.api.Tag;
import org.junit.jupiter.api.Test;

/** A row to text and back, to the bit. */
class LogFormatTest {
  private static final double[] SPECIAL = {
    0.0,
    -0.0,
    1.0,
    -1.0,
    0.1,
    Math.PI,
    Double.MIN_VALUE,
    -Double.MIN_VALUE,
    Double.MIN_NORMAL,
    Double.MAX_VALUE,
    -Double.MAX_VALUE,
    1e15,
    1e16,
    9_007_199_254_740_991.0,
    9_007_199_254_740_993e3,
    9.2e18,
    -9.3e18,
    Double.POSITIVE_INFINITY,
    Double.NEGATIVE_INFINITY,
    Double.NaN
  };

  /** What a reader does: split at commas, words by {@code parseWords}, an empty cell is NaN. */
  private static double[] parse(String line) {
    String[] cells = line.split(",", -1);
    assertThat(cells).hasSize(LogFormat.COLUMN_COUNT + 1);
    double[] row = new double[LogFormat.COLUMN_COUNT];
    for (int i = 0; i < row.length; i++) {
      if (LogFormat.isWords(i)) {
        row[i] = LogFormat.parseWords(i, cells[i]);
      } else {
        row[i] = cells[i].isEmpty() ? Double.NaN : Double.parseDouble(cells[i]);
      }
    }
    return row;
  }

  private static long[] bits(double[] row) {
    return Arrays.stream(row).mapToLong(Double::doubleToLongBits).toArray();
  }

  private static double special(Random random) {
    return random.nextBoolean()
        ? SPECIAL[random.nextInt(SPECIAL.length)]
        : Double.longBitsToDouble(random.nextLong());
  }

  private static Inputs randomInputs(Random random) {
    Inputs in = new Inputs();
    for (int c = 0; c < AnalogChannel.COUNT; c++) {
      in.volts[c] = special(random);
      in.sampleNanos[c] = random.nextLong() >> 10;
      in.answered[c] = random.nextBoolean();
    }
    in.enginePeriodNanos = special(random);
    in.enginePulseNanos = random.nextLong() >> 10;
    in.engineSeen = random.nextBoolean();
    in.roadPeriodNanos = special(random);
    in.roadPulseNanos = random.nextLong() >> 10;
    in.roadSeen = random.nextBoolean();
    in.keyOn = random.nextBoolean();
    in.permit = random.nextBoolean();
    in.coilFeed = random.nextBoolean();
    in.highBoost = random.nextBoolean();
    in.coilEnergised = random.nextBoolean();
    in.benchRequest = random.nextBoolean();
    in.benchDutyFraction = special(random);
    return in;
  }

  private static Outputs randomOutputs(Random random) {
    Outputs out = new Outputs();
    out.dutyFraction = random.nextDouble();
    out.pwmEnabled = random.nextBoolean();
    out.coilSupplyClosed = random.nextBoolean();
    out.engineCutRequest = random.nextBoolean();
    out.heartbeatPermitted = random.nextBoolean();
    out.state = SafetyState.values()[random.nextInt(SafetyState.values().length)];
    out.waiting = Waiting.values()[random.nextInt(Waiting.values().length)];
    long all = (1L << FaultCode.COUNT) - 1;
    out.activeFaults = random.nextLong() & all;
    out.findings = random.nextBoolean() ? 0L : random.nextLong() & all;
    out.mapKpaAbs = special(random);
    out.throttlePct = special(random);
    out.engineRpm = special(random);
    out.roadKmh = special(random);
    out.gear = random.nextInt(7);
    out.intakeAirC = special(random);
    out.ambientKpaAbs = special(random);
    out.targetKpaAbs = special(random);
    out.baseDutyFraction = special(random);
    out.trimDutyFraction = special(random);
    out.spooling = random.nextBoolean();
    out.outsideTable = random.nextInt(1_000_000);
    out.lateTicks = random.nextInt(1_000_000);
    return out;
  }

  @Test
  @Tag("U7")
  void aRowGoesThroughTextAndBackToTheBit() {
    Random random = new Random(21);
    double[] row = new double[LogFormat.COLUMN_COUNT];
    for (int i = 0; i < 5_000; i++) {
      LogFormat.fill(row, random.nextLong() >> 10, randomInputs(random), randomOutputs(random));
      StringBuilder text = new StringBuilder();
      LogFormat.appendRow(text, row, "meta");
      assertThat(text.toString()).endsWith(",meta").doesNotContain("\n", "\"");
      assertThat(bits(parse(text.toString()))).isEqualTo(bits(row));
    }
  }

  @Test
  @Tag("U7")
  void restoredInputsFillTheSameRow() {
    Random random = new Random(22);
    double[] row = new double[LogFormat.COLUMN_COUNT];
    double[] again = new double[LogFormat.COLUMN_COUNT];
    Inputs restored = new Inputs();
    for (int i = 0; i < 5_000; i++) {
      Outputs out = randomOutputs(random);
      long now = random.nextLong() >> 10;
      LogFormat.fill(row, now, randomInputs(random), out);
      LogFormat.restoreInputs(row, restored);
      LogFormat.fill(again, now, restored, out);
      assertThat(bits(again)).isEqualTo(bits(row));
    }
  }

  @Test
  @Tag("U7")
  void everyInputIsRestoredToItsOwnField() {
    Random random = new Random(23);
    double[] row = new double[LogFormat.COLUMN_COUNT];
    Inputs restored = new Inputs();
    for (int i = 0; i < 500; i++) {
      Inputs in = randomInputs(random);
      LogFormat.fill(row, 1L, in, new Outputs());
      restored.copyFrom(randomInputs(random));
      LogFormat.restoreInputs(row, restored);
      assertThat(restored)
          .usingRecursiveComparison()
          .withEqualsForType((a, b) -> a.equals(b), Double.class)
          .isEqualTo(in);
    }
  }

  @Test
  void everyOutputStandsInTheColumnOfItsName() {
    Random random = new Random(24);
    double[] row = new double[LogFormat.COLUMN_COUNT];
    for (int i = 0; i < 200; i++) {
      Outputs o = randomOutputs(random);
      LogFormat.fill(row, 77L, new Inputs(), o);
      Object[][] expected = {
        {"time_ns", 77.0},
        {"duty_fraction", o.dutyFraction},
        {"pwm_enabled", o.pwmEnabled ? 1.0 : 0.0},
        {"coil_supply_closed", o.coilSupplyClosed ? 1.0 : 0.0},
        {"engine_cut_request", o.engineCutRequest ? 1.0 : 0.0},
        {"heartbeat_permitted", o.heartbeatPermitted ? 1.0 : 0.0},
        {"state", (double) o.state.ordinal()},
        {"waiting", (double) o.waiting.ordinal()},
        {"faults", (double) o.activeFaults},
        {"findings", (double) o.findings},
        {"map_kpa_abs", o.mapKpaAbs},
        {"throttle_pct", o.throttlePct},
        {"engine_rpm", o.engineRpm},
        {"road_kmh", o.roadKmh},
        {"gear", (double) o.gear},
        {"intake_air_c", o.intakeAirC},
        {"ambient_kpa_abs", o.ambientKpaAbs},
        {"target_kpa_abs", o.targetKpaAbs},
        {"base_duty_fraction", o.baseDutyFraction},
        {"trim_duty_fraction", o.trimDutyFraction},
        {"spooling", o.spooling ? 1.0 : 0.0},
        {"outside_table", (double) o.outsideTable},
        {"late_ticks", (double) o.lateTicks},
      };
      for (Object[] pair : expected) {
        assertThat(row[LogFormat.column((String) pair[0])]).as("%s", pair[0]).isEqualTo(pair[1]);
      }
    }
  }

  @Test
  void everyColumnHasANameOfItsOwnAndTheHeaderListsThem() {
    Set<String> names = new HashSet<>();
    for (int i = 0; i < LogFormat.COLUMN_COUNT; i++) {
      assertThat(LogFormat.name(i)).matches("[a-z]+(_[a-z]+)*");
      assertThat(names.add(LogFormat.name(i))).as(LogFormat.name(i)).isTrue();
      assertThat(LogFormat.column(LogFormat.name(i))).isEqualTo(i);
    }
    assertThat(LogFormat.column("no_such_column")).isEqualTo(-1);
    StringBuilder header = new StringBuilder();
    LogFormat.appendHeader(header);
    String[] cells = header.toString().split(",", -1);
    assertThat(cells).hasSize(LogFormat.COLUMN_COUNT + 1).endsWith("meta");
    for (int i = 0; i < LogFormat.COLUMN_COUNT; i++) {
      assertThat(cells[i]).isEqualTo(LogFormat.name(i));
    }
    assertThat(cells[LogFormat.TIME_NS]).isEqualTo("time_ns");
    assertThat(cells[LogFormat.DUTY]).isEqualTo("duty_fraction");
    assertThat(cells[LogFormat.MAP]).isEqualTo("map_kpa_abs");
  }

  @Test
  void numbersAreAsShortAsTheyReadBack() {
    assertThat(text(12.0)).isEqualTo("12");
    assertThat(text(0.0)).isEqualTo("0");
    assertThat(text(-0.0)).isEqualTo("-0.0");
    assertThat(text(-3.0)).isEqualTo("-3");
    assertThat(text(0.1)).isEqualTo("0.1");
    assertThat(text(Double.NaN)).isEmpty();
    for (double number : SPECIAL) {
      if (!Double.isNaN(number)) {
        assertThat(Double.doubleToRawLongBits(Double.parseDouble(text(number))))
            .isEqualTo(Double.doubleToRawLongBits(number));
      }
    }
  }

  private static String text(double number) {
    StringBuilder to = new StringBuilder();
    LogFormat.appendNumber(to, number);
    return to.toString();
  }

  @Test
  void statesAndFaultsAreWords() {
    double[] row = new double[LogFormat.COLUMN_COUNT];
    Outputs out = new Outputs();
    out.state = SafetyState.HELD_AT_SPRING;
    out.waiting = Waiting.SENSOR_LIFE;
    out.activeFaults = FaultCode.MAP_STALE.bit() | FaultCode.OVERBOOST.bit();
    LogFormat.fill(row, 0L, new Inputs(), out);
    StringBuilder text = new StringBuilder();
    LogFormat.appendRow(text, row, "");
    String[] cells = text.toString().split(",", -1);
    assertThat(cells[LogFormat.STATE]).isEqualTo("held at spring");
    assertThat(cells[LogFormat.WAITING]).isEqualTo("sensor_life");
    assertThat(cells[LogFormat.FAULTS]).isEqualTo("map_stale overboost");
    assertThat(cells[LogFormat.FINDINGS]).isEmpty();
    assertThat(LogFormat.isWords(LogFormat.STATE)).isTrue();
    assertThat(LogFormat.isWords(LogFormat.DUTY)).isFalse();
  }

  @Test
  void wordsOfNoVersionAreRefused() {
    assertThatIllegalArgumentException()
        .isThrownBy(() -> LogFormat.parseWords(LogFormat.STATE, "asleep"))
        .withMessageContaining("asleep");
    assertThatIllegalArgumentException()
        .isThrownBy(() -> LogFormat.parseWords(LogFormat.WAITING, "godot"));
    assertThatIllegalArgumentException()
        .isThrownBy(() -> LogFormat.parseWords(LogFormat.FAULTS, "map_stale map_tired"))
        .withMessageContaining("map_tired");
    assertThat(LogFormat.parseWords(LogFormat.FAULTS, "")).isZero();
  }
}
