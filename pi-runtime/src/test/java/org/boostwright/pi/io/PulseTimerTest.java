package org.boostwright.pi.io;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import org.junit.jupiter.api.Tag;
import org.junit.jupiter.api.Test;

/** Pulses with their times. Four cylinders, two pulses a turn, 6500 1/min: 217 Hz. */
@Tag("S13")
class PulseTimerTest {
  private static final long SHORTEST = 1_100_000L;
  private final PulseTimer timer = new PulseTimer(SHORTEST);

  @Test
  void periodAndTimeAreThoseOfTheKernelsEdges() {
    timer.update();
    assertThat(timer.seen()).isFalse();
    timer.edge(1_000_000_000L);
    timer.update();
    assertThat(timer.seen()).isTrue();
    assertThat(timer.periodNanos()).isZero();
    long period = Math.round(1e9 / (6500.0 / 60.0 * 2.0));
    for (int i = 1; i <= 10; i++) {
      timer.edge(1_000_000_000L + i * period);
    }
    timer.update();
    assertThat(1e9 / timer.periodNanos()).isEqualTo(216.67, within(0.01));
    assertThat(timer.lastNanos()).isEqualTo(1_000_000_000L + 10 * period);
    timer.update();
    assertThat(timer.lastNanos()).as("no edge, no change").isEqualTo(1_000_000_000L + 10 * period);
  }

  @Test
  void spikesOfTheCoilWireAreSkippedAndCounted() {
    for (int i = 0; i < 100; i++) {
      timer.edge(i * 5_000_000L);
      timer.edge(i * 5_000_000L + 40_000L);
      timer.edge(i * 5_000_000L + 90_000L);
      timer.update();
    }
    assertThat(timer.periodNanos()).isEqualTo(5e6);
    assertThat(timer.spikes()).isEqualTo(200);
  }

  @Test
  void aStormOfEdgesIsBoundedAndCounted() {
    for (int i = 0; i < 10_000; i++) {
      timer.edge(i * 1_000L);
    }
    timer.update();
    assertThat(timer.refused()).isEqualTo(10_000 - 64);
    timer.edge(1_000_000_000L);
    timer.update();
    assertThat(timer.lastNanos()).isEqualTo(1_000_000_000L);
  }
}
