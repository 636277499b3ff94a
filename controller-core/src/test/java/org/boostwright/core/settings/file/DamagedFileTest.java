package org.boostwright.core.settings.file;

import static org.assertj.core.api.Assertions.assertThat;

import java.nio.charset.StandardCharsets;
import java.util.Arrays;
import java.util.List;
import java.util.Random;
import java.util.concurrent.atomic.AtomicInteger;
import java.util.stream.IntStream;
import org.boostwright.core.settings.Settings;
import org.junit.jupiter.api.Tag;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.TestReporter;

/**
 * C1: whatever happens to the bytes of a settings file, it loads to the same values, loads to other
 * valid values that the check shows, or is refused with a place; nothing else.
 *
 * <p>Covered: the documented example without its comments, at every length, and at every byte one
 * flipped bit (which one turns with the position) and one other byte by a seeded draw; and the
 * example with its comments at one place in eleven of each of these. With {@code
 * -Dboostwright.exhaustive=true}: the example with its comments, every length, all eight bits and
 * eight other bytes at every position.
 */
@Tag("C1")
class DamagedFileTest {
  private static final boolean EXHAUSTIVE = Boolean.getBoolean("boostwright.exhaustive");
  private static final long SEED = 20260101L;

  private final Settings settings = Example.settings();
  private final String listing = listing(SettingsFile.parse("car.toml", Example.bytes()));
  private final AtomicInteger same = new AtomicInteger();
  private final AtomicInteger shown = new AtomicInteger();
  private final AtomicInteger refused = new AtomicInteger();

  @Test
  void everyLengthLoadsTheSameIsRefusedOrStaysAtRest(TestReporter reporter) {
    damage(
        (bytes, at) -> {
          LoadResult result = judge(Arrays.copyOf(bytes, at), "cut to " + at);
          if (result.ok()) {
            assertRestsOrKeepsEveryLimit(result.orThrow(), at);
          }
        });
    assertEveryOutcomeHappened(reporter);
  }

  @Test
  void flippedBitsAreSameShownOrRefused(TestReporter reporter) {
    damage(
        (bytes, at) -> {
          for (int bit = 0; bit < 8; bit++) {
            if (EXHAUSTIVE || bit == (at * 5) % 8) {
              judge(with(bytes, at, bytes[at] ^ (1 << bit)), "bit " + bit + " of byte " + at);
            }
          }
        });
    assertEveryOutcomeHappened(reporter);
  }

  @Test
  void otherBytesAreSameShownOrRefused(TestReporter reporter) {
    damage(
        (bytes, at) -> {
          Random random = new Random(SEED + at);
          for (int i = 0; i < (EXHAUSTIVE ? 8 : 1); i++) {
            int other = bytes[at] ^ (1 + random.nextInt(255));
            judge(with(bytes, at, other), "byte " + at + " = " + (other & 0xFF));
          }
        });
    assertEveryOutcomeHappened(reporter);
  }

  private interface Damage {
    void at(byte[] bytes, int at);
  }

  private static void damage(Damage damage) {
    byte[] whole = Example.bytes();
    int step = EXHAUSTIVE ? 1 : 11;
    IntStream.range(0, whole.length)
        .filter(at -> at % step == 0)
        .parallel()
        .forEach(at -> damage.at(whole, at));
    if (!EXHAUSTIVE) {
      byte[] dense =
          new String(whole, StandardCharsets.UTF_8)
              .replaceAll("(?m) *#.*$", "")
              .replaceAll("\n\n+", "\n")
              .strip()
              .getBytes(StandardCharsets.UTF_8);
      IntStream.range(0, dense.length).parallel().forEach(at -> damage.at(dense, at));
    }
  }

  private static byte[] with(byte[] bytes, int at, int value) {
    byte[] damaged = bytes.clone();
    damaged[at] = (byte) value;
    return damaged;
  }

  private LoadResult judge(byte[] bytes, String what) {
    LoadResult result = SettingsFile.parse("car.toml", bytes);
    if (!result.ok()) {
      List<Problem> errors =
          result.problems().stream().filter(p -> p.severity() == Severity.ERROR).toList();
      assertThat(errors).as(what).isNotEmpty();
      for (Problem error : errors) {
        assertThat(error.line()).as("%s: %s", what, error).isPositive();
        assertThat(error.column()).as("%s: %s", what, error).isPositive();
        assertThat(error.text()).as(what).isNotBlank();
      }
      refused.incrementAndGet();
    } else if (result.orThrow().equals(settings)) {
      same.incrementAndGet();
    } else {
      assertThat(listing(result)).as(what).isNotEqualTo(listing);
      shown.incrementAndGet();
    }
    return result;
  }

  /** Values as check shows them, without saying which of them are defaults. */
  private static String listing(LoadResult result) {
    StringBuilder text = new StringBuilder();
    for (CheckReport.Value value : SettingsCheck.report("car.toml", result).values()) {
      text.append(value.key()).append(value.text()).append(value.unit()).append('\n');
    }
    return text.toString();
  }

  /** The example is written so that its end can only take ability away, never a limit. */
  private void assertRestsOrKeepsEveryLimit(Settings cut, int length) {
    double highestDuty = Arrays.stream(cut.baseDuty().values()).max().orElseThrow();
    if (highestDuty > 0.0) {
      assertThat(cut.limits()).as("cut to %d", length).isEqualTo(settings.limits());
      assertThat(cut.sensors()).as("cut to %d", length).isEqualTo(settings.sensors());
      assertThat(cut.valve()).as("cut to %d", length).isEqualTo(settings.valve());
      assertThat(cut.optional()).as("cut to %d", length).isEqualTo(settings.optional());
      assertThat(cut.pins()).as("cut to %d", length).isEqualTo(settings.pins());
      assertThat(cut.target()).as("cut to %d", length).isEqualTo(settings.target());
      assertThat(cut.baseDuty()).as("cut to %d", length).isEqualTo(settings.baseDuty());
    }
  }

  private void assertEveryOutcomeHappened(TestReporter reporter) {
    reporter.publishEntry(
        "damaged files", "same " + same + ", shown " + shown + ", refused " + refused);
    assertThat(same.get()).isPositive();
    assertThat(shown.get()).isPositive();
    assertThat(refused.get()).isPositive();
  }
}
