package org.boostwright.core.control;

import static org.assertj.core.api.Assertions.assertThat;

import org.junit.jupiter.api.Test;

/** Low at once, high after a second without a break. */
class BoostSelectorTest {
  private static final long TICK = 5_000_000L;

  private final BoostSelector selector = new BoostSelector();
  private long now = Long.MAX_VALUE - 100 * TICK;

  private boolean ask(boolean high, int ticks) {
    boolean is = false;
    for (int i = 0; i < ticks; i++) {
      now += TICK;
      is = selector.high(now, high);
    }
    return is;
  }

  @Test
  void highNeedsAWholeSecondAndLowNone() {
    assertThat(ask(true, 200)).as("0.995 s").isFalse();
    assertThat(ask(true, 1)).isTrue();
    assertThat(ask(false, 1)).isFalse();
    assertThat(ask(true, 200)).isFalse();
    assertThat(ask(true, 1)).isTrue();
  }

  @Test
  void aContactThatChattersIsLow() {
    for (int i = 0; i < 50; i++) {
      assertThat(ask(true, 199)).isFalse();
      assertThat(ask(false, 1)).isFalse();
    }
  }

  @Test
  void onceHighItStaysHighForAsLongAsItIsAsked() {
    ask(true, 201);
    // Half of all the time a clock can tell apart, in steps of a tenth of it.
    for (int i = 0; i < 20; i++) {
      now += Long.MAX_VALUE / 10;
      assertThat(selector.high(now, true)).isTrue();
    }
  }
}
