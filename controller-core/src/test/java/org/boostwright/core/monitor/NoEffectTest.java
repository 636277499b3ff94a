package org.boostwright.core.monitor;

import static org.assertj.core.api.Assertions.assertThat;

import org.boostwright.core.ControllerBench;
import org.boostwright.core.TestSettings;
import org.junit.jupiter.api.Tag;
import org.junit.jupiter.api.Test;

/** Whether the valve had an effect is judged by what is measured after rest, not before. */
@Tag("P2")
class NoEffectTest {

  private static ControllerBench overboosted() {
    ControllerBench bench = new ControllerBench(TestSettings.car());
    bench.driveTo(190.0);
    // As fast as an engine can climb: 100 kPa/s.
    while (bench.mapKpaAbs < TestSettings.LIMIT_KPA + 5.0) {
      bench.mapKpaAbs += 0.5;
      bench.tick();
    }
    assertThat(bench.outputs.activeFaults).isEqualTo(FaultCode.OVERBOOST.bit());
    return bench;
  }

  @Test
  void pressureThatStaysUpAfterRestMeansTheValveHasNoEffect() {
    ControllerBench bench = overboosted();
    bench.run(0.35);
    assertThat(bench.outputs.activeFaults & FaultCode.VALVE_NO_EFFECT.bit()).isNotZero();
    assertThat(bench.outputs.engineCutRequest).isTrue();
  }

  @Test
  void aSensorThatFallsSilentAfterRestSaysNothingAboutTheValve() {
    ControllerBench bench = overboosted();
    bench.mapSampled = false;
    bench.run(0.5);
    assertThat(bench.outputs.activeFaults)
        .isEqualTo(FaultCode.OVERBOOST.bit() | FaultCode.MAP_STALE.bit());
    assertThat(bench.outputs.engineCutRequest).isFalse();
  }
}
