package org.boostwright.core.monitor;

import static org.assertj.core.api.Assertions.assertThat;

import org.boostwright.core.ControllerBench;
import org.boostwright.core.TestSettings;
import org.boostwright.core.state.SafetyState;
import org.junit.jupiter.api.Tag;
import org.junit.jupiter.api.Test;

/** A lost engine-speed signal against an engine that stops; stepped time. */
@Tag("S13")
class EngineSilenceTest {

  private static ControllerBench boosted() {
    ControllerBench bench = new ControllerBench(TestSettings.car());
    bench.driveTo(170.0);
    assertThat(bench.outputs.state).isEqualTo(SafetyState.CONTROLLING);
    return bench;
  }

  @Test
  void pulsesThatStopAtRunningSpeedAreALostSignal() {
    ControllerBench bench = boosted();
    bench.engineRpm = 0.0;
    bench.run(0.3);
    assertThat(bench.outputs.activeFaults).isEqualTo(FaultCode.ENGINE_SPEED_LOST.bit());
    assertThat(bench.outputs.dutyFraction).isZero();
  }

  @Test
  void anEngineThatSlowsDownAndStopsUnderVacuumIsNoLostSignal() {
    ControllerBench bench = boosted();
    bench.throttlePct = 0.0;
    bench.mapKpaAbs = 40.0;
    bench.run(0.5);
    for (double rpm = 800.0; rpm >= 150.0; rpm -= 50.0) {
      bench.engineRpm = rpm;
      bench.run(0.05);
    }
    bench.engineRpm = 0.0;
    for (int i = 0; i < 300; i++) {
      bench.tick();
      assertThat(bench.outputs.activeFaults).isZero();
      assertThat(bench.outputs.dutyFraction).isZero();
    }
  }
}
