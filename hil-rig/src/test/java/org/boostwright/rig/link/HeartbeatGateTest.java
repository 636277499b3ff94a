package org.boostwright.rig.link;

import static org.assertj.core.api.Assertions.assertThat;

import org.junit.jupiter.api.Tag;
import org.junit.jupiter.api.Test;

/** The simulated gate: closed only while edges come. */
@Tag("T2")
class HeartbeatGateTest {
  private static final long MILLI = 1_000_000L;

  private final HeartbeatGate gate = new HeartbeatGate();

  private void edges(long fromMillis, long toMillis) {
    for (long t = fromMillis; t <= toMillis; t += 5) {
      gate.level(t / 5 % 2 == 0, t * MILLI);
    }
  }

  @Test
  void withoutEdgesItIsOpenWhateverTheLevel() {
    assertThat(gate.closed(0L)).isFalse();
    gate.level(true, 0L);
    gate.level(true, 5 * MILLI);
    assertThat(gate.closed(5 * MILLI)).isFalse();
    assertThat(gate.edges()).isZero();
  }

  @Test
  void edgesHoldItClosedAndTheirEndOpensItWithin100Ms() {
    edges(0, 500);
    assertThat(gate.closed(500 * MILLI)).isTrue();
    assertThat(gate.closed(559 * MILLI)).isTrue();
    assertThat(gate.closed(560 * MILLI)).isFalse();
    assertThat(gate.opensNanos()).isEqualTo(560 * MILLI).isLessThanOrEqualTo(600 * MILLI);
  }

  @Test
  void aLevelStuckEitherWayOpensIt() {
    for (boolean stuck : new boolean[] {false, true}) {
      edges(1000, 1500);
      for (long t = 1505; t <= 1700; t += 5) {
        gate.level(stuck, t * MILLI);
      }
      assertThat(gate.closed(1700 * MILLI)).isFalse();
    }
  }
}
