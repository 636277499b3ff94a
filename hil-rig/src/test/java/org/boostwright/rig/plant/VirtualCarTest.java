package org.boostwright.rig.plant;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatThrownBy;
import static org.assertj.core.api.Assertions.within;

import com.sun.management.ThreadMXBean;
import java.lang.management.ManagementFactory;
import org.boostwright.core.Inputs;
import org.boostwright.core.Outputs;
import org.junit.jupiter.api.Tag;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;

/** The whole car: pulls, gear changes, commands and repeatability. */
class VirtualCarTest {
  private static CarRun pull(double dutyPct) {
    CarRun run = new CarRun(PlantParams.PROJECT_CAR);
    run.car.settleAt(2500.0, 15.0);
    run.car.driveInGearAtRpm(3, 2500.0);
    run.car.setThrottlePct(100.0);
    run.car.coil(dutyPct / 100.0, dutyPct > 0.0, dutyPct > 0.0);
    return run;
  }

  /**
   * An independent model of the project car: 30 Hz PWM, third gear from 2500 1/min, full throttle,
   * sea level; sanity check within 4 kPa. Its throttle before the pull is not given (15 % here); it
   * decides the readings at 3600 1/min, where the turbo still spools.
   */
  @ParameterizedTest
  @CsvSource({
    "0, 155, 155, 152, 147",
    "20, 163, 162, 158, 153",
    "40, 182, 185, 178, 172",
    "50, 190, 206, 197, 188",
    "60, 191, 228, 217, NaN",
    "100, 191, 243, 229, NaN"
  })
  void dutyDecidesBoostAsTheIndependentModelSays(
      double dutyPct, double at3600, double at4500, double at5500, double at6200) {
    CarRun run = pull(dutyPct);
    double[] rpm = {3600.0, 4500.0, 5500.0, 6200.0};
    double[] expected = {at3600, at4500, at5500, at6200};
    for (int i = 0; i < rpm.length; i++) {
      while (run.car.engineRpm() < rpm[i]) {
        run.tick();
      }
      if (!Double.isNaN(expected[i])) {
        assertThat(run.car.mapKpaAbs())
            .as("duty %.0f %% at %.0f 1/min", dutyPct, rpm[i])
            .isCloseTo(expected[i], within(4.0));
      }
    }
  }

  /** Assumption A-05: lift 0.3 s at 180 kPa, then full throttle at 0.72 of the speed, coil off. */
  @ParameterizedTest
  @CsvSource({"5000, 198", "6500, 224"})
  void gearChangeOverboostsWithoutTheRecirculationValve(double rpm, double peakKpaAbs) {
    assertThat(gearChangePeak(rpm, EngineParams.PROJECT_CAR))
        .as("twin with the valve")
        .isLessThan(165.0);
    assertThat(
            gearChangePeak(
                rpm, EngineParams.PROJECT_CAR.withRecirculation(RecirculationParams.ABSENT)))
        .isCloseTo(peakKpaAbs, within(2.0));
  }

  private static double gearChangePeak(double rpm, EngineParams engine) {
    CarRun run = new CarRun(PlantParams.PROJECT_CAR.withEngine(engine));
    double low = 0.0;
    double high = 1.0;
    for (int i = 0; i < 12; i++) {
      run.car.faults().wastegateStuckLift = 0.5 * (low + high);
      run.car.settleAt(rpm, 100.0);
      if (run.car.mapKpaAbs() > 180.0) {
        low = run.car.wastegateLift();
      } else {
        high = run.car.wastegateLift();
      }
    }
    run.car.faults().wastegateStuckLift = Double.NaN;
    run.car.setThrottlePct(0.0);
    run.seconds(0.3);
    run.car.holdRpm(0.72 * rpm);
    run.car.setThrottlePct(100.0);
    run.peakMapKpaAbs = 0.0;
    for (int i = 0; i < 1000; i++) {
      run.car.advance(1_000_000L);
      run.peakMapKpaAbs = Math.max(run.peakMapKpaAbs, run.car.mapKpaAbs());
    }
    return run.peakMapKpaAbs;
  }

  @Test
  @Tag("P6")
  void recirculationValveStuckShutSpikesAndStuckOpenNeverBoosts() {
    CarRun open = pull(0.0);
    open.car.faults().recirculationStuck = 1.0;
    open.seconds(3.0);
    assertThat(open.car.mapKpaAbs()).isLessThan(125.0);

    CarRun sound = pull(0.0);
    sound.seconds(3.0);
    sound.car.shiftTo(4);
    sound.seconds(0.2);
    CarRun shut = pull(0.0);
    shut.car.faults().recirculationStuck = 0.0;
    shut.seconds(3.0);
    shut.car.shiftTo(4);
    shut.seconds(0.2);
    assertThat(shut.car.boostKpaAbs()).isGreaterThan(sound.car.boostKpaAbs() + 30.0);
  }

  @Test
  void gearChangeLiftsTheThrottleAndDropsTheSpeed() {
    CarRun run = pull(0.0);
    while (run.car.engineRpm() < 6000.0) {
      run.tick();
    }
    double before = run.car.engineRpm();
    run.car.shiftTo(4);
    run.seconds(0.1);
    assertThat(run.car.shifting()).isTrue();
    assertThat(run.car.throttlePct()).isZero();
    run.seconds(0.25);
    assertThat(run.car.shifting()).isFalse();
    assertThat(run.car.throttlePct()).isEqualTo(100.0);
    assertThat(run.car.gear()).isEqualTo(4);
    assertThat(run.car.engineRpm()).isCloseTo(before * 1.00 / 1.33, within(0.02 * before));
  }

  @Test
  @Tag("P2")
  void hoseOffTheActuatorRunsAwayWithTheCoilOff() {
    CarRun run = new CarRun(PlantParams.PROJECT_CAR);
    run.car.settleAt(4500.0, 100.0);
    run.car.faults().valve.actuatorHoseOff = true;
    run.seconds(3.0);
    assertThat(run.car.mapKpaAbs()).isGreaterThan(235.0);
    run.car.requestEngineCut(true);
    run.seconds(0.5);
    assertThat(run.car.mapKpaAbs()).as("with the engine cut").isLessThan(200.0);
  }

  /** Common practice, no source. */
  @Test
  @Tag("P3")
  void pluggedOrMissingSignalLineMeansTheGateNeverOpens() {
    for (boolean plugged : new boolean[] {true, false}) {
      CarRun run = pull(0.0);
      run.car.faults().valve.supplyOpen = plugged ? 0.0 : 1.0;
      run.car.faults().valve.supplyHoseOff = !plugged;
      while (run.car.engineRpm() < 4500.0) {
        run.tick();
        if (run.car.exhaustKpaAbs() < 400.0) {
          // Only from 307 kPa across the closed gate does the exhaust itself begin to push it open.
          assertThat(run.car.wastegateLift()).isZero();
        }
      }
      assertThat(run.car.wastegateLift()).isLessThan(0.05);
      assertThat(run.car.mapKpaAbs()).isGreaterThan(235.0);
    }
  }

  @Test
  @Tag("P2")
  void wastegateStuckShutRunsAwayAndStuckOpenNeverBoosts() {
    CarRun run = new CarRun(PlantParams.PROJECT_CAR);
    run.car.settleAt(4000.0, 100.0);
    run.car.faults().wastegateStuckLift = 0.0;
    run.seconds(4.0);
    assertThat(run.car.mapKpaAbs()).isCloseTo(250.0, within(1.5));
    run.car.faults().wastegateStuckLift = 1.0;
    run.seconds(4.0);
    assertThat(run.car.mapKpaAbs()).isLessThan(120.0);
  }

  @Test
  @Tag("P3")
  void chargeAirLeakMakesTheSameDutyGiveLessBoost() {
    CarRun run = new CarRun(PlantParams.PROJECT_CAR);
    run.car.settleAt(4500.0, 100.0);
    double sound = run.car.mapKpaAbs();
    run.car.faults().chargeLeakM2 = 3e-4;
    run.seconds(3.0);
    assertThat(run.car.mapKpaAbs()).isLessThan(sound - 20.0);
    run.car.faults().clear();
    run.seconds(4.0);
    assertThat(run.car.mapKpaAbs()).isCloseTo(sound, within(0.5));
  }

  @Test
  void springOnlySwitchBreaksTheCoilFeed() {
    CarRun run = pull(60.0);
    run.car.setCoilFeed(false);
    run.seconds(3.0);
    assertThat(run.car.mapKpaAbs()).isLessThan(160.0);
    assertThat(run.inputs.coilFeed).isFalse();
    assertThat(run.inputs.coilEnergised).isFalse();
  }

  @Test
  void outputsDriveTheCoilAndRestStopsIt() {
    CarRun run = new CarRun(PlantParams.PROJECT_CAR);
    Outputs outputs = new Outputs();
    outputs.dutyFraction = 1.0;
    outputs.pwmEnabled = true;
    outputs.coilSupplyClosed = true;
    run.car.apply(outputs);
    run.seconds(0.1);
    assertThat(run.car.spoolEnergised()).isTrue();
    assertThat(run.inputs.coilEnergised).isTrue();
    outputs.rest();
    run.car.apply(outputs);
    run.seconds(0.05);
    assertThat(run.car.spoolEnergised()).isFalse();
    assertThat(run.inputs.coilEnergised).isFalse();
  }

  @Test
  @Tag("U7")
  void sameSeedGivesTheSameBits() {
    assertThat(digest(3)).isEqualTo(digest(3));
    assertThat(digest(3)).isNotEqualTo(digest(4));
  }

  private static long digest(long seed) {
    VirtualCar car = new VirtualCar(PlantParams.PROJECT_CAR, Atmosphere.REFERENCE, seed);
    Inputs inputs = new Inputs();
    car.settleAt(3000.0, 30.0);
    car.driveInGearAtRpm(2, 3000.0);
    car.setThrottlePct(100.0);
    car.coil(0.45, true, true);
    long digest = 17;
    for (int i = 0; i < 400; i++) {
      if (i == 200) {
        car.faults().valve.slowFactor = 2.0;
        car.shiftTo(3);
      }
      car.advance(CarRun.TICK_NANOS);
      car.read(inputs, car.clockNanos());
      for (double volts : inputs.volts) {
        digest = 31 * digest + Double.doubleToLongBits(volts);
      }
      digest = 31 * digest + Double.doubleToLongBits(inputs.enginePeriodNanos);
      digest = 31 * digest + Double.doubleToLongBits(car.mapKpaAbs());
    }
    return digest;
  }

  @Test
  void nothingIsAllocatedWhileTimePasses() {
    ThreadMXBean threads = (ThreadMXBean) ManagementFactory.getThreadMXBean();
    VirtualCar car = new VirtualCar(PlantParams.PROJECT_CAR, Atmosphere.REFERENCE, 1);
    Inputs inputs = new Inputs();
    car.settleAt(3000.0, 30.0);
    car.coil(0.4, true, true);
    threads.getCurrentThreadAllocatedBytes();
    long before = threads.getCurrentThreadAllocatedBytes();
    for (int i = 0; i < 2000; i++) {
      car.setThrottlePct(i % 100 < 50 ? 100.0 : 20.0);
      car.advance(CarRun.TICK_NANOS);
      car.read(inputs, car.clockNanos());
    }
    assertThat(threads.getCurrentThreadAllocatedBytes() - before).isLessThan(2000L);
  }

  @Test
  void throttleOutsideItsRangeIsRefused() {
    CarRun run = new CarRun(PlantParams.PROJECT_CAR);
    assertThatThrownBy(() -> run.car.setThrottlePct(Double.NaN))
        .isInstanceOf(IllegalArgumentException.class);
    assertThatThrownBy(() -> run.car.setThrottlePct(101.0))
        .isInstanceOf(IllegalArgumentException.class);
  }

  @Test
  void carsOfASeriesLieWithinTheirTolerances() {
    assertThat(PlantParams.PROJECT_CAR.spread(5, 0.0)).isEqualTo(PlantParams.PROJECT_CAR);
    assertThat(PlantParams.PROJECT_CAR.spread(5, 1.0))
        .isEqualTo(PlantParams.PROJECT_CAR.spread(5, 1.0));
    double lowest = Double.POSITIVE_INFINITY;
    double highest = 0.0;
    for (int seed = 0; seed < 40; seed++) {
      CarRun run = new CarRun(PlantParams.PROJECT_CAR.spread(seed, 1.0));
      run.car.settleAt(4500.0, 100.0);
      lowest = Math.min(lowest, run.car.mapKpaAbs());
      highest = Math.max(highest, run.car.mapKpaAbs());
    }
    // Spring 3 kPa and span 8 % either way: a few kPa of boost around 155.1 kPa.
    assertThat(lowest).isBetween(145.0, 154.0);
    assertThat(highest).isBetween(156.5, 165.0);
  }
}
