package org.boostwright.core.monitor;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import org.junit.jupiter.api.Tag;
import org.junit.jupiter.api.Test;

/** Late ticks: counted one by one, three in a row confirm. */
@Tag("T1")
class TimingWatchTest {
  private static final long TICK = 5_000_000L;

  private final FaultTable faults = new FaultTable();
  private final TimingWatch watch = new TimingWatch(TICK);
  private long now = 17L;

  private double step(long distance) {
    now += distance;
    return watch.update(now, faults);
  }

  private boolean late() {
    return faults.isActive(FaultCode.TICK_LATE);
  }

  @Test
  void theFirstTickIsNotJudged() {
    assertThat(step(0L)).isCloseTo(0.005, within(1e-12));
    assertThat(watch.late()).isZero();
    assertThat(faults.ran()).isZero();
  }

  @Test
  void lessThanOneAndAHalfTicksIsInTime() {
    step(0L);
    for (int i = 0; i < 1_000; i++) {
      assertThat(step(TICK + TICK / 2 - 1)).isCloseTo(0.007499999, within(1e-12));
    }
    step(TICK / 2 + 1);
    assertThat(watch.late()).isZero();
    assertThat(late()).isFalse();
    assertThat(faults.ran()).isEqualTo(FaultCode.TICK_LATE.bit());
  }

  @Test
  void oneAndAHalfTicksIsLateAndTheThirdInARowConfirms() {
    step(0L);
    step(TICK + TICK / 2);
    step(TICK + TICK / 2);
    assertThat(watch.late()).isEqualTo(2);
    assertThat(late()).isFalse();
    step(TICK + TICK / 2);
    assertThat(watch.late()).isEqualTo(3);
    assertThat(late()).isTrue();
  }

  @Test
  void twoInARowAgainAndAgainConfirmNothing() {
    step(0L);
    for (int i = 0; i < 300; i++) {
      step(i % 3 == 2 ? TICK : 2 * TICK);
      assertThat(late()).isFalse();
    }
    assertThat(watch.late()).isEqualTo(200);
  }

  @Test
  void lateAndMadeUpForInTurnConfirms() {
    step(0L);
    step(3 * TICK);
    assertThat(step(TICK / 2)).isCloseTo(0.0025, within(1e-12));
    assertThat(watch.late()).isEqualTo(2);
    assertThat(late()).isFalse();
    step(3 * TICK);
    assertThat(late()).isTrue();
  }

  @Test
  void noTimeAndTimeBackwardsAreLateToo() {
    step(0L);
    assertThat(step(0L)).isZero();
    assertThat(step(-1_000_000_000L)).isZero();
    assertThat(watch.late()).isEqualTo(2);
    step(0L);
    assertThat(late()).isTrue();
  }

  @Test
  void noLawIntegratesMoreThanFourTicks() {
    step(0L);
    assertThat(step(4 * TICK)).isCloseTo(0.02, within(1e-12));
    assertThat(step(86_400_000_000_000L)).isCloseTo(0.02, within(1e-12));
  }

  @Test
  @Tag("T3")
  void theClockMayRollOver() {
    now = Long.MAX_VALUE - 2 * TICK;
    step(0L);
    for (int i = 0; i < 5; i++) {
      assertThat(step(TICK)).isCloseTo(0.005, within(1e-12));
    }
    assertThat(now).isNegative();
    assertThat(watch.late()).isZero();
  }
}
