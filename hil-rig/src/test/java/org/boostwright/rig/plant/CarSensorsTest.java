package org.boostwright.rig.plant;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import org.boostwright.core.AnalogChannel;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;

/** What the controller reads of a sound car. */
class CarSensorsTest {
  @Test
  void engineOffReadsAmbientAndNoPulses() {
    CarRun run = CarRun.quiet();
    run.seconds(2.0);
    assertThat(ProjectCar.mapCurve().at(run.mapVolts())).isCloseTo(101.3, within(0.1));
    assertThat(run.inputs.engineSeen).isFalse();
    assertThat(run.inputs.roadSeen).isFalse();
    assertThat(run.inputs.keyOn).isTrue();
    assertThat(run.volts(AnalogChannel.THROTTLE)).isCloseTo(0.5, within(0.01));
    assertThat(run.volts(AnalogChannel.SUPPLY)).isCloseTo(2.8, within(0.01));
    assertThat(ProjectCar.temperatureCurve().at(run.volts(AnalogChannel.INTAKE_AIR)))
        .isCloseTo(19.85, within(1.0));
    assertThat(run.inputs.answered[AnalogChannel.PEDAL.ordinal()]).isFalse();
  }

  @Test
  void idleShowsVacuum() {
    CarRun run = CarRun.quiet();
    run.car.holdRpm(850.0);
    run.car.neutral();
    run.seconds(3.0);
    assertThat(run.car.engineRpm()).isCloseTo(850.0, within(1.0));
    assertThat(run.car.mapKpaAbs()).isBetween(25.0, 40.0);
    assertThat(ProjectCar.mapCurve().at(run.mapVolts()))
        .isCloseTo(run.car.mapKpaAbs(), within(0.2));
  }

  /** Assumption A-06: 0.3 kPa of noise on the pressure signal. */
  @Test
  void ratedNoiseHasItsStandardDeviation() {
    CarRun run =
        new CarRun(
            PlantParams.PROJECT_CAR.withSensors(SensorParams.DEFAULT.withMapNoise(0.3, 0.0)));
    run.seconds(1.0);
    assertThat(deviationKpa(run, 4000)).isCloseTo(0.3, within(0.015));
    run.mapWire().noiseFactor = 5.0;
    assertThat(deviationKpa(run, 4000)).isCloseTo(1.5, within(0.075));
  }

  private static double deviationKpa(CarRun run, int samples) {
    double sum = 0.0;
    double squares = 0.0;
    for (int i = 0; i < samples; i++) {
      run.tick();
      double kpa = ProjectCar.mapCurve().at(run.mapVolts());
      sum += kpa;
      squares += kpa * kpa;
    }
    double mean = sum / samples;
    return Math.sqrt(squares / samples - mean * mean);
  }

  /**
   * Assumption A-06: 5 kPa peak to peak at rpm/30 Hz, behind a lag of 1 ms and the filter. Expected
   * amplitude from the gain of two first-order lags, {@code 1/sqrt(1 + (2*pi*f*tau)^2)} each.
   */
  @ParameterizedTest
  @CsvSource({"1500", "3330", "6470"})
  void pulsationComesThroughLagAndFilter(double rpm) {
    CarRun run =
        new CarRun(
            PlantParams.PROJECT_CAR.withSensors(SensorParams.DEFAULT.withMapNoise(0.0, 5.0)));
    run.car.settleAt(rpm, 40.0);
    run.seconds(0.5);
    double rms = deviationKpa(run, 4000);
    double omega = 2.0 * Math.PI * rpm / 30.0;
    double gain = 1.0 / Math.hypot(1.0, omega * 1e-3) / Math.hypot(1.0, omega * 3.3e-3);
    assertThat(rms).isCloseTo(2.5 * gain / Math.sqrt(2.0), within(0.03 * 2.5 * gain + 0.01));
  }

  @Test
  void everySampleIsAWholeNumberOfConverterSteps() {
    CarRun run = new CarRun(PlantParams.PROJECT_CAR);
    for (int i = 0; i < 200; i++) {
      run.tick();
      for (double volts : run.inputs.volts) {
        double codes = volts / 187.5e-6;
        assertThat(codes).isCloseTo(Math.rint(codes), within(1e-6));
      }
    }
  }

  /** Two pulses per revolution: 6500 1/min are 216.67 Hz. */
  @ParameterizedTest
  @CsvSource({"6500, 4615384.6", "850, 35294117.6"})
  void enginePulsesComeTwiceARevolution(double rpm, double periodNanos) {
    CarRun run = CarRun.quiet();
    run.car.holdRpm(rpm);
    run.seconds(1.0);
    assertThat(run.inputs.engineSeen).isTrue();
    assertThat(run.inputs.enginePeriodNanos).isCloseTo(periodNanos, within(2.0));
    long age = run.car.clockNanos() - run.inputs.enginePulseNanos;
    assertThat(age).isBetween(0L, (long) periodNanos + 1L);
  }

  /** 4000 pulses per kilometre: 100 km/h are 111.1 Hz. */
  @Test
  void roadPulsesFollowTheRoad() {
    CarRun run = CarRun.quiet();
    run.car.settleAt(3000.0, 30.0);
    run.car.driveInGear(4, 100.0);
    run.seconds(0.1);
    double kmh = 3600.0 / 4000.0 / (run.inputs.roadPeriodNanos * 1e-9);
    assertThat(run.inputs.roadSeen).isTrue();
    assertThat(kmh).isCloseTo(run.car.roadKmh(), within(0.2));
    assertThat(run.car.engineRpm() / run.car.roadKmh())
        .isCloseTo(run.car.params().car().rpmPerKmh(4), within(1e-6));
  }

  @Test
  void pulseTimesAreOnTheCallersClock() {
    CarRun run = CarRun.quiet();
    run.car.holdRpm(3000.0);
    run.seconds(1.0);
    long other = 123_456_789_000L;
    long age = run.car.clockNanos() - run.inputs.enginePulseNanos;
    run.car.read(run.inputs, other);
    assertThat(other - run.inputs.enginePulseNanos).isEqualTo(age);
    assertThat(run.inputs.sampleNanos[AnalogChannel.MAP.ordinal()]).isEqualTo(other);
  }

  @Test
  void settledCarReadsAtOnceAsIfItHadAlwaysRun() {
    CarRun run = CarRun.quiet();
    run.car.settleAt(4500.0, 100.0);
    run.car.read(run.inputs, run.car.clockNanos());
    assertThat(ProjectCar.mapCurve().at(run.mapVolts()))
        .isCloseTo(run.car.mapKpaAbs(), within(0.05));
    assertThat(run.inputs.enginePeriodNanos).isCloseTo(1e9 / 150.0, within(1.0));
    double settled = run.car.mapKpaAbs();
    run.seconds(1.0);
    assertThat(run.car.mapKpaAbs()).isCloseTo(settled, within(0.05));
  }
}
