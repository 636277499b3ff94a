package org.boostwright.core.upkeep;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatThrownBy;
import static org.assertj.core.api.Assertions.within;

import org.boostwright.core.Outputs;
import org.boostwright.core.bench.proof.DamagedProofException;
import org.junit.jupiter.api.Test;

/** Hours and valve cycles, tick by tick and as written. */
class OperatingHoursTest {
  private static final long TICK = 5_000_000L;

  private final HoursMeter meter = new HoursMeter();
  private final Outputs outputs = new Outputs();
  private long now = Long.MAX_VALUE - 3 * TICK;

  private void run(int ticks, boolean running, double duty, double hz) {
    outputs.pwmEnabled = duty > 0.0;
    outputs.dutyFraction = duty;
    for (int i = 0; i < ticks; i++) {
      meter.update(now, running, outputs, hz);
      now += TICK;
    }
  }

  @Test
  void hoursStartsAndCyclesAreCountedOverARollOfTheClock() {
    run(200, false, 0.0, 30.0);
    run(2000, true, 0.0, 30.0);
    run(400, true, 0.4, 30.0);
    run(200, false, 0.0, 30.0);
    run(200, true, 1.0, 30.0);
    OperatingHours counted = meter.counted("2026-01-01");
    assertThat(counted.starts()).isEqualTo(2);
    assertThat(counted.engineSeconds()).isCloseTo(13.0, within(1e-6));
    assertThat(counted.drivenSeconds()).isCloseTo(3.0, within(1e-6));
    // Held open throughout is no stroke: 2 s at 30 Hz only.
    assertThat(counted.valveCycles()).isCloseTo(60.0, within(1e-6));
  }

  @Test
  void aGapAndATimeThatStandsStillCountNothing() {
    run(1, true, 0.4, 30.0);
    now += 10_000_000_000L;
    run(1, true, 0.4, 30.0);
    now -= 2 * TICK;
    run(1, true, 0.4, 30.0);
    assertThat(meter.counted("x").engineSeconds()).isZero();
    outputs.dutyFraction = Double.NaN;
    meter.update(now, true, outputs, Double.NaN);
    assertThat(meter.counted("x").valveCycles()).isZero();
  }

  @Test
  void everyChangedLetterAndEveryMissingEndShows() throws Exception {
    OperatingHours hours = new OperatingHours("2026-05-01T10:00:00Z", 12, 3600.5, 71.25, 2137.0);
    String text = hours.text();
    assertThat(OperatingHours.read(text)).isEqualTo(hours);
    for (int i = 0; i < text.length(); i++) {
      String cut = text.substring(0, i);
      String other = cut + (char) (text.charAt(i) ^ 1) + text.substring(i + 1);
      assertThatThrownBy(() -> OperatingHours.read(cut)).isInstanceOf(DamagedProofException.class);
      assertThatThrownBy(() -> OperatingHours.read(other))
          .isInstanceOf(DamagedProofException.class);
    }
  }

  @Test
  void whatCannotHaveBeenCountedIsRefused() {
    assertThatThrownBy(() -> new OperatingHours("x", 0, Double.NaN, 0, 0))
        .isInstanceOf(IllegalArgumentException.class);
    assertThatThrownBy(() -> new OperatingHours("", 0, 0, 0, 0))
        .isInstanceOf(IllegalArgumentException.class);
    assertThatThrownBy(() -> new OperatingHours("x", -1, 0, 0, 0))
        .isInstanceOf(IllegalArgumentException.class);
  }
}
