package org.boostwright.core.monitor;

import static org.assertj.core.api.Assertions.assertThat;

import org.boostwright.core.AnalogChannel;
import org.boostwright.core.ControllerBench;
import org.boostwright.core.TestSettings;
import org.boostwright.core.settings.AnalogSensor;
import org.boostwright.core.settings.SensorSettings;
import org.boostwright.core.settings.Settings;
import org.junit.jupiter.api.Tag;
import org.junit.jupiter.api.Test;

/** A source that is read anew only every second, such as a recorded log. */
class SlowSourceTest {

  private static ControllerBench slowSource() {
    Settings car = TestSettings.car();
    AnalogSensor map = TestSettings.mapSensor();
    AnalogSensor[] channels = car.sensors().channels();
    channels[AnalogChannel.MAP.ordinal()] =
        new AnalogSensor(
            map.calibration(),
            map.validLowVolts(),
            map.validHighVolts(),
            map.stepVolts(),
            0.0,
            1000.0,
            map.maxRatePerSecond());
    SensorSettings sensors =
        new SensorSettings(channels, car.sensors().mapLocation(), 20.0, 0.3, 100.0);
    return new ControllerBench(
        new Settings(
            car.car(),
            car.units(),
            sensors,
            car.valve(),
            car.target(),
            car.baseDuty(),
            car.limits(),
            car.feedback(),
            car.spool(),
            car.optional()));
  }

  private static void sampleOnce(ControllerBench bench) {
    bench.mapSampled = true;
    bench.tick();
    bench.mapSampled = false;
  }

  @Test
  @Tag("S6")
  void pressureThatMovesBetweenItsSamplesIsNotNoise() {
    ControllerBench bench = slowSource();
    bench.throttlePct = 50.0;
    for (int i = 0; i < 60; i++) {
      bench.mapKpaAbs = i % 2 == 0 ? 100.0 : 160.0;
      sampleOnce(bench);
      bench.run(0.895);
      assertThat(bench.outputs.activeFaults).isZero();
    }
    assertThat(bench.controller.faults().ran() & FaultCode.MAP_NOISY.bit()).isZero();
  }

  @Test
  @Tag("S14")
  void oneHeldSampleMeasuresNoAmbient() {
    ControllerBench bench = slowSource();
    bench.mapKpaAbs = 84.5;
    sampleOnce(bench);
    bench.run(2.5);
    assertThat(bench.controller.monitor().engine().stopped()).isFalse();
    assertThat(bench.outputs.ambientKpaAbs).isEqualTo(100.0);
    assertThat(bench.outputs.activeFaults).isZero();
  }

  @Test
  @Tag("S14")
  void samplesThatAgreeOverASecondMeasureAmbient() {
    ControllerBench bench = slowSource();
    bench.mapKpaAbs = 84.5;
    for (int i = 0; i < 4; i++) {
      sampleOnce(bench);
      bench.run(0.895);
    }
    assertThat(bench.controller.monitor().engine().stopped()).isTrue();
    assertThat(bench.outputs.ambientKpaAbs).isBetween(83.5, 85.5);
  }
}
