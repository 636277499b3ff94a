package org.boostwright.rig.kernel;

import static org.assertj.core.api.Assertions.assertThat;

import org.junit.jupiter.api.Tag;
import org.junit.jupiter.api.Test;

/** Everything that cuts or stretches a PWM cycle is seen in the kernel's log, and nothing else. */
@Tag("E1")
class PwmDiaryTest {
  private static final long PERIOD = 33_333_333L;

  private final PwmDiary diary = new PwmDiary(0);
  private long now;

  private void apply(int channel, int flags, long periodNanos, long dutyNanos) {
    now += 5_000_000L;
    diary.take(
        new KernelEvent(KernelEvent.Kind.PWM_APPLY, channel, flags, now, periodNanos, dutyNanos));
  }

  private void apply(boolean on, long periodNanos, long dutyNanos) {
    apply(0, on ? 1 : 0, periodNanos, dutyNanos);
  }

  private void startRunning() {
    apply(false, PERIOD, 0L);
    apply(false, PERIOD, 10_000_000L);
    apply(true, PERIOD, 10_000_000L);
  }

  @Test
  void anOrdinaryRunHasNothingWrong() {
    startRunning();
    assertThat(diary.running()).isTrue();
    assertThat(diary.dutyFraction()).isBetween(0.2999, 0.3001);
    assertThat(diary.hz()).isBetween(29.999, 30.001);
    apply(true, PERIOD, 12_000_000L);
    apply(true, PERIOD, 0L);
    apply(false, PERIOD, 0L);
    assertThat(diary.wrongs()).isEmpty();
    assertThat(diary.updates()).isEqualTo(2L);
    assertThat(diary.off()).isTrue();
    assertThat(diary.dutyFraction()).isZero();
  }

  @Test
  void aNewFrequencyAtRestIsNotWrong() {
    startRunning();
    apply(true, PERIOD, 0L);
    apply(false, PERIOD, 0L);
    apply(false, 20_000_000L, 0L);
    assertThat(diary.wrongs()).isEmpty();
  }

  @Test
  void anotherPeriodWhileItRunsIsWrong() {
    startRunning();
    apply(true, 20_000_000L, 10_000_000L);
    assertThat(diary.wrongs()).hasSize(1).first().asString().contains("another period");
  }

  @Test
  void anUpdateThatDisablesIsWrong() {
    startRunning();
    apply(false, PERIOD, 10_000_000L);
    apply(true, PERIOD, 12_000_000L);
    assertThat(diary.wrongs()).anyMatch(words -> words.contains("disabled with a duty above 0"));
  }

  @Test
  void aFirstApplyAboveDutyZeroIsWrongAfterEveryBoot() {
    apply(false, PERIOD, 1L);
    assertThat(diary.wrongs()).hasSize(1);
    apply(false, PERIOD, 0L);
    diary.boot();
    assertThat(diary.off()).isTrue();
    apply(true, PERIOD, 0L);
    assertThat(diary.wrongs()).hasSize(2).last().asString().contains("first apply after boot");
  }

  @Test
  void anInvertedChannelIsWrong() {
    apply(0, 2, PERIOD, 0L);
    assertThat(diary.wrongs()).hasSize(1).first().asString().contains("polarity");
  }

  @Test
  void anotherChannelIsNoneOfItsBusiness() {
    apply(1, 3, PERIOD, PERIOD);
    assertThat(diary.wrongs()).isEmpty();
    assertThat(diary.applies()).isZero();
  }
}
