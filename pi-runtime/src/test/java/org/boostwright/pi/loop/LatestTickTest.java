package org.boostwright.pi.loop;

import static org.assertj.core.api.Assertions.assertThat;

import java.util.Arrays;
import org.boostwright.core.record.LogFormat;
import org.junit.jupiter.api.Test;

/** The newest row as other threads see it. */
class LatestTickTest {
  private final LatestTick latest = new LatestTick();
  private final double[] row = new double[LogFormat.COLUMN_COUNT];
  private final double[] seen = new double[LogFormat.COLUMN_COUNT];

  @Test
  void beforeTheFirstTickThereIsNothing() {
    assertThat(latest.read(seen)).isFalse();
  }

  @Test
  void theNewestRowIsReadWhole() {
    Arrays.fill(row, 1.0);
    latest.publish(row);
    Arrays.fill(row, 2.0);
    latest.publish(row);
    Arrays.fill(row, 3.0);
    assertThat(latest.read(seen)).isTrue();
    assertThat(seen).containsOnly(2.0);
  }

  @Test
  void noReaderEverSeesHalfARow() throws InterruptedException {
    int rows = 200_000;
    Thread writer =
        new Thread(
            () -> {
              double[] own = new double[LogFormat.COLUMN_COUNT];
              for (int i = 1; i <= rows; i++) {
                Arrays.fill(own, i);
                latest.publish(own);
              }
            });
    writer.start();
    double last = 0.0;
    while (last < rows) {
      if (latest.read(seen)) {
        assertThat(seen[0]).isGreaterThanOrEqualTo(last);
        last = seen[0];
        for (double value : seen) {
          if (value != last) {
            assertThat(seen).containsOnly(last);
          }
        }
      }
    }
    writer.join();
  }
}
