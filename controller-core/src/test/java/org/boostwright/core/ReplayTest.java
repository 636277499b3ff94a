package org.boostwright.core;

import static org.assertj.core.api.Assertions.assertThat;

import java.util.Arrays;
import org.boostwright.core.record.LogFormat;
import org.junit.jupiter.api.Tag;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;

/** A recorded run, also a wild one, replays to the same bits; two runs of one seed are the same. */
@Tag("U7")
class ReplayTest {
  private static final int TICKS = 8_000;

  private static double[][] record(long seed, double wildShare) {
    Controller controller = new Controller(WildInputTest.everything());
    WildDriver driver = new WildDriver(seed, wildShare, 52);
    Inputs in = new Inputs();
    Outputs out = new Outputs();
    double[][] rows = new double[TICKS][LogFormat.COLUMN_COUNT];
    for (int i = 0; i < TICKS; i++) {
      long now = 5_000_000L * i + seed * 1_000_003L;
      driver.fill(in, now);
      controller.step(now, in, out);
      LogFormat.fill(rows[i], now, in, out);
    }
    return rows;
  }

  private static long[] bits(double[] row) {
    return Arrays.stream(row).mapToLong(Double::doubleToLongBits).toArray();
  }

  /** The row as text and back, as a recorder and a reader do it. */
  private static double[] throughText(double[] row) {
    StringBuilder text = new StringBuilder();
    LogFormat.appendRow(text, row, "");
    String[] cells = text.toString().split(",", -1);
    double[] back = new double[row.length];
    for (int i = 0; i < row.length; i++) {
      if (LogFormat.isWords(i)) {
        back[i] = LogFormat.parseWords(i, cells[i]);
      } else {
        back[i] = cells[i].isEmpty() ? Double.NaN : Double.parseDouble(cells[i]);
      }
    }
    return back;
  }

  @ParameterizedTest
  @CsvSource({"1, 0.0", "2, 0.002", "3, 0.05", "4, 1.0"})
  void aRecordedRunReplaysToTheSameBits(long seed, double wildShare) {
    double[][] recorded = record(seed, wildShare);
    Controller again = new Controller(WildInputTest.everything());
    Inputs in = new Inputs();
    Outputs out = new Outputs();
    double[] row = new double[LogFormat.COLUMN_COUNT];
    boolean driven = false;
    for (int i = 0; i < TICKS; i++) {
      double[] read = throughText(recorded[i]);
      LogFormat.restoreInputs(read, in);
      long now = (long) read[LogFormat.TIME_NS];
      again.step(now, in, out);
      LogFormat.fill(row, now, in, out);
      if (!Arrays.equals(row, recorded[i])) {
        assertThat(bits(row)).as("tick %d", i).isEqualTo(bits(recorded[i]));
      }
      driven |= out.dutyFraction > 0.0;
    }
    assertThat(driven || wildShare > 0.01).as("the valve was driven").isTrue();
  }

  @ParameterizedTest
  @CsvSource({"7, 0.01"})
  void twoRunsOfOneSeedAreTheSame(long seed, double wildShare) {
    assertThat(Arrays.deepEquals(record(seed, wildShare), record(seed, wildShare))).isTrue();
    assertThat(Arrays.deepEquals(record(seed, wildShare), record(seed + 1, wildShare))).isFalse();
  }
}
