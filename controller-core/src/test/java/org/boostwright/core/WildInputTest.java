package org.boostwright.core;

import static org.assertj.core.api.Assertions.assertThat;

import java.util.EnumSet;
import java.util.Random;
import java.util.Set;
import org.boostwright.core.settings.OptionalWires;
import org.boostwright.core.settings.Settings;
import org.boostwright.core.settings.SpoolSettings;
import org.boostwright.core.state.SafetyState;
import org.junit.jupiter.api.Tag;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.ValueSource;

/** Whatever comes in, in every tick: duty is finite and within 0 to 1, and 0 in a rest state. */
@Tag("S10")
@Tag("U4")
class WildInputTest {

  /** A car with everything wired and every channel fitted. */
  static Settings everything() {
    TestCar car =
        new TestCar()
            .fit(AnalogChannel.PEDAL, 0.0, 100.0, 5.0)
            .fit(AnalogChannel.INTAKE_AIR, -20.0, 120.0, 100.0)
            .fit(AnalogChannel.COOLANT, -20.0, 120.0, 100.0)
            .fit(AnalogChannel.BAROMETER, 50.0, 110.0, 50.0)
            .fit(AnalogChannel.SUPPLY, 0.0, 20.0, 20.0);
    car.wires = new OptionalWires(true, true, true, false, true);
    car.spool = new SpoolSettings(true, 0.3, 3.0, 10.0);
    car.gearRpmPerKmh = new double[] {113.83, 68.52, 48.22, 36.25, 29.36};
    car.gearTargetKpaAbs = new double[] {160.0, 175.0, 180.0, 180.0, 180.0};
    return car.build();
  }

  private static void check(Outputs out, long tick) {
    double duty = out.dutyFraction;
    boolean sound = duty >= 0.0 && duty <= 1.0;
    if (out.state.isRest()) {
      sound &= duty == 0.0 && !out.pwmEnabled && !out.coilSupplyClosed && !out.heartbeatPermitted;
    }
    if (out.state == SafetyState.READY) {
      sound &= duty == 0.0;
    }
    if (!sound) {
      assertThat(duty).as("tick %d, %s, duty %s", tick, out.state, duty).isNaN();
      throw new AssertionError("tick " + tick + ", " + out.state + ", duty " + duty);
    }
  }

  @ParameterizedTest
  @ValueSource(longs = {1, 2, 3, 4, 5})
  void twoHundredThousandTicksWithWildOnesAmongThem(long seed) {
    Controller controller = new Controller(everything());
    WildDriver driver = new WildDriver(seed, 0.002, 62);
    Inputs in = new Inputs();
    Outputs out = new Outputs();
    Set<SafetyState> seen = EnumSet.noneOf(SafetyState.class);
    long now = new Random(seed).nextLong();
    for (long i = 0; i < 200_000; i++) {
      now += 5_000_000L;
      driver.fill(in, now);
      controller.step(now, in, out);
      check(out, i);
      seen.add(out.state);
    }
    assertThat(controller.crash()).isEmpty();
    assertThat(seen)
        .as("the drive was not at rest all the time")
        .contains(
            SafetyState.READY,
            SafetyState.CONTROLLING,
            SafetyState.HELD_AT_SPRING,
            SafetyState.BENCH);
  }

  @Test
  void aHundredThousandTicksOfNothingButWildInputs() {
    Controller controller = new Controller(everything());
    WildDriver driver = new WildDriver(99L, 1.0, 62);
    Random random = new Random(99L);
    Inputs in = new Inputs();
    Outputs out = new Outputs();
    long now = 0L;
    for (long i = 0; i < 100_000; i++) {
      // The clock itself is wild, too: stands still, jumps, runs backwards.
      now += random.nextInt(50) == 0 ? random.nextLong() >> random.nextInt(60) : 5_000_000L;
      driver.fill(in, now);
      controller.step(now, in, out);
      check(out, i);
    }
    assertThat(controller.crash()).isEmpty();
  }

  @Test
  void afterAWildMinuteASoundDriveControlsAgain() {
    Settings settings = TestSettings.car();
    ControllerBench bench = new ControllerBench(settings);
    WildDriver driver = new WildDriver(5L, 1.0, 40);
    for (int i = 0; i < 12_000; i++) {
      bench.nowNanos += 5_000_000L;
      driver.fill(bench.inputs, bench.nowNanos);
      bench.inputs.benchDutyFraction = 0.0;
      bench.controller.step(bench.nowNanos, bench.inputs, bench.outputs);
      check(bench.outputs, i);
    }
    bench.inputs.clear();
    bench.inputs.keyOn = true;
    bench.inputs.permit = true;
    bench.inputs.coilFeed = true;
    bench.run(3.0);
    bench.driveTo(170.0);
    bench.run(1.0);
    assertThat(bench.outputs.activeFaults).isZero();
    assertThat(bench.outputs.state).isEqualTo(SafetyState.CONTROLLING);
  }
}
