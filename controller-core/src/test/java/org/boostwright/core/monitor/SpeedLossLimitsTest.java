package org.boostwright.core.monitor;

import static org.assertj.core.api.Assertions.assertThat;

import org.boostwright.core.TestCar;
import org.boostwright.core.settings.Settings;
import org.junit.jupiter.api.Tag;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;

/** The watch alone, to the tick, and against the ambient pressure that is known or possible. */
@Tag("S13")
class SpeedLossLimitsTest {
  private final Settings car = new TestCar().build();
  private final WatchBench bench = new WatchBench(car);
  private final EngineWatch engine = new EngineWatch(car);
  private final AmbientWatch ambient = new AmbientWatch(100.0);
  private final SpeedLossWatch watch = new SpeedLossWatch();

  private void run(int ticks) {
    for (int i = 0; i < ticks; i++) {
      bench.tick();
      engine.update(bench.now, bench.signals, false, false);
      ambient.update(bench.now, null, engine, bench.faults);
      watch.update(bench.now, bench.signals, engine, ambient, bench.faults);
    }
  }

  private int count() {
    return bench.faults.count(FaultCode.ENGINE_SPEED_LOST);
  }

  private void stoppedAt(double kpa) {
    bench.kpa = kpa;
    run(700);
    assertThat(engine.stopped()).isTrue();
  }

  private void drivenAt(double kpa) {
    bench.rpm = 4_000.0;
    bench.kpa = kpa;
    run(400);
    bench.rpm = 0.0;
    assertThat(count()).isZero();
  }

  @ParameterizedTest
  @CsvSource({"140, 50", "40, 450"})
  void pulsesAreMissedAfter250MsUnderBoostAnd2250MsUnderVacuum(double kpa, int ticks) {
    stoppedAt(100.0);
    drivenAt(kpa);
    run(ticks - 1);
    assertThat(count()).isZero();
    run(1);
    assertThat(count()).isEqualTo(10);
  }

  @Test
  void boostIsMoreThan15KpaAboveTheAmbientThatWasMeasured() {
    stoppedAt(80.0);
    drivenAt(94.0);
    run(100);
    assertThat(count()).isZero();
    drivenAt(97.0);
    run(50);
    assertThat(count()).isEqualTo(10);
  }

  @Test
  void whileNoneWasMeasuredItIsMoreThan15KpaAboveAnyAtmosphere() {
    drivenAt(119.0);
    run(100);
    assertThat(count()).isZero();
    drivenAt(123.0);
    run(50);
    assertThat(count()).isEqualTo(10);
  }
}
