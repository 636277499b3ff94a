package org.boostwright.rig.upkeep;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import java.time.Instant;
import java.time.temporal.ChronoUnit;
import java.util.List;
import java.util.Map;
import org.boostwright.core.bench.proof.ProofMeasurement;
import org.boostwright.core.ladder.Change;
import org.boostwright.core.ladder.Entry;
import org.boostwright.core.ladder.Facts;
import org.boostwright.core.ladder.Ladder;
import org.boostwright.core.ladder.LadderText;
import org.boostwright.core.ladder.Rung;
import org.junit.jupiter.api.Test;

/** Drift of delays, leak and cracking pressure from bench to bench. */
class DriftTest {
  private static final Instant START = Instant.parse("2024-03-01T12:00:00Z");

  private Ladder ladder = Ladder.EMPTY;

  private static ProofMeasurement number(String id, double value) {
    return new ProofMeasurement(id, value, "", Double.NaN, Double.NaN);
  }

  /** A bench some days after the first; the delay's interval reaches 0.2 ms either way. */
  private void bench(long days, double onMs, double leak, double crack) throws Exception {
    Facts facts =
        new Facts(Map.of(), true, "", "seal" + days, START.plus(days, ChronoUnit.DAYS) + "", false);
    ladder =
        ladder.pass(
            Rung.BENCH,
            facts,
            START.plus(days, ChronoUnit.DAYS).toString(),
            "1",
            "",
            List.of(
                number("valve.t_on_ms", onMs),
                number("valve.t_on_low95_ms", onMs - 0.2),
                number("valve.t_on_high95_ms", onMs + 0.2),
                number("bench.leak_kpa_per_s", leak),
                number("actuator.crack_kpa", crack)));
  }

  private void work(Change change, long days) {
    Facts facts = new Facts(Map.of(), false, "", "", "", false);
    ladder = ladder.report(change, facts, START.plus(days, ChronoUnit.DAYS) + "", "1", "");
  }

  private Drift of(Wear wear) throws Exception {
    return Drift.of(wear, LadderText.read(LadderText.write(ladder)), false);
  }

  @Test
  void aDelayBeyondAFifthIsNamedAndItsTwinJustBelowIsNot() throws Exception {
    bench(0, 4.0, 0.5, 50.0);
    bench(400, 4.79, 0.5, 50.0);
    assertThat(of(Wear.ON_DELAY).threshold()).isCloseTo(0.8, within(1e-9));
    assertThat(of(Wear.ON_DELAY).beyond()).isFalse();
    bench(800, 4.81, 0.5, 50.0);
    assertThat(of(Wear.ON_DELAY).beyond()).isTrue();
    assertThat(of(Wear.ON_DELAY).change()).isCloseTo(0.81, within(1e-9));
  }

  @Test
  void aChangeWithinWhatTheMeasurementsCouldBeWrongIsNotNamed() throws Exception {
    bench(0, 1.0, 0.5, 50.0);
    // Threshold 0.5 ms, intervals 0.2 ms either way: apart, named.
    bench(10, 1.51, 0.5, 50.0);
    assertThat(of(Wear.ON_DELAY).beyond()).isTrue();
    Drift wide =
        new Drift(
            Wear.ON_DELAY,
            List.of(
                new Drift.Point(START, 1.0, 0.6, 1.4),
                new Drift.Point(START.plusSeconds(1), 1.51, 1.3, 1.7)));
    assertThat(wide.beyond()).isFalse();
  }

  @Test
  void aSpringThatSetsIsNamedEitherWayAndASmallerLeakIsNoWear() throws Exception {
    bench(0, 4.0, 5.0, 80.0);
    bench(300, 4.0, 0.5, 75.9);
    assertThat(of(Wear.LEAK).beyond()).isFalse();
    assertThat(of(Wear.CRACK).beyond()).isTrue();
    bench(600, 4.0, 10.1, 76.1);
    assertThat(of(Wear.LEAK).beyond()).isTrue();
    assertThat(of(Wear.CRACK).beyond()).isFalse();
  }

  @Test
  void theTrendIsTheLineThroughTheProofsAndSaysWhenTheThresholdIsReached() throws Exception {
    bench(0, 4.0, 0.5, 50.0);
    bench(365, 4.2, 0.5, 50.0);
    assertThat(of(Wear.ON_DELAY).perYear()).isNaN();
    bench(731, 4.4, 0.5, 50.0);
    // 0.4 ms in 731 days; 0.4 ms are left of 0.8.
    assertThat(of(Wear.ON_DELAY).perYear()).isCloseTo(0.4 / 731 * 365.25, within(1e-3));
    assertThat(of(Wear.ON_DELAY).yearsLeft()).isCloseTo(2.0, within(0.02));
    assertThat(of(Wear.CRACK).perYear()).isCloseTo(0.0, within(1e-12));
    assertThat(of(Wear.CRACK).yearsLeft()).isNaN();
  }

  @Test
  void threeBenchesOfOneDayAreNoTrend() throws Exception {
    bench(0, 4.0, 0.5, 50.0);
    bench(1, 4.3, 0.5, 50.0);
    bench(2, 4.1, 0.5, 50.0);
    assertThat(of(Wear.ON_DELAY).perYear()).isNaN();
  }

  @Test
  void anotherPartBeginsANewSeriesAndOtherWorkDoesNot() throws Exception {
    bench(0, 4.0, 0.5, 50.0);
    work(Change.FUEL, 1);
    bench(2, 4.1, 0.5, 50.0);
    assertThat(of(Wear.ON_DELAY).points()).hasSize(2);
    work(Change.VALVE, 3);
    bench(4, 9.0, 0.5, 50.0);
    assertThat(of(Wear.ON_DELAY).points()).hasSize(1);
    assertThat(of(Wear.ON_DELAY).beyond()).isFalse();
    assertThat(of(Wear.CRACK).points()).hasSize(3);
    assertThat(Drift.of(Wear.CRACK, ladder, true).points()).isEmpty();
  }

  @Test
  void aYearIsCountedFromTheLastTimeOnThisCar() throws Exception {
    bench(0, 4.0, 0.5, 50.0);
    bench(100, 4.0, 0.5, 50.0);
    Instant today = START.plus(470, ChronoUnit.DAYS);
    assertThat(Yearly.daysSince(Rung.BENCH, ladder, false, today)).isEqualTo(370.0);
    assertThat(Yearly.daysSince(Rung.BENCH, ladder, true, today)).isNaN();
    assertThat(Yearly.daysSince(Rung.CUT_PROVEN, ladder, false, today)).isNaN();
    assertThat(ladder.entries()).extracting(Entry::kind).containsOnly(Entry.Kind.PASSED);
  }
}
