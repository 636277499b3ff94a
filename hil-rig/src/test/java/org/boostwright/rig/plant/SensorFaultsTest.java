package org.boostwright.rig.plant;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import org.boostwright.core.AnalogChannel;
import org.junit.jupiter.api.Tag;
import org.junit.jupiter.api.Test;

/** Each fault of a sensor's wire, electronics and converter takes effect, and goes away again. */
class SensorFaultsTest {
  private static final int MAP = AnalogChannel.MAP.ordinal();

  private static CarRun atFullScale() {
    CarRun run = CarRun.quiet();
    run.mapWire().offsetVolts = 4.5 - ProjectCar.mapVolts(101.3);
    run.seconds(0.2);
    assertThat(run.mapVolts()).isCloseTo(4.5, within(0.01));
    return run;
  }

  /** From the top of the sensor's range, the worst case, below the 0.2 V threshold. */
  @Test
  @Tag("S1")
  void openWireFallsBelowItsThresholdWithin19Ms() {
    CarRun run = atFullScale();
    run.mapWire().wire = WireFaults.Wire.OPEN;
    int millis = 0;
    while (run.mapVolts() >= 0.2) {
      run.car.advance(1_000_000L);
      run.car.read(run.inputs, run.car.clockNanos());
      millis++;
    }
    assertThat(millis).isBetween(10, 19);
  }

  @Test
  @Tag("S2")
  void shortToGroundFallsBelowItsThresholdWithin19Ms() {
    CarRun run = atFullScale();
    run.mapWire().wire = WireFaults.Wire.SHORT_TO_GROUND;
    run.seconds(0.015);
    assertThat(run.mapVolts()).isLessThan(0.2);
  }

  @Test
  @Tag("S3")
  void shortToSupplyRisesAbove48VoltsWithin19Ms() {
    CarRun run = CarRun.quiet();
    run.seconds(0.1);
    run.mapWire().wire = WireFaults.Wire.SHORT_TO_SUPPLY;
    run.seconds(0.015);
    assertThat(run.mapVolts()).isGreaterThan(4.8);
    run.mapWire().clear();
    run.seconds(0.05);
    assertThat(run.mapVolts()).isCloseTo(ProjectCar.mapVolts(101.3), within(0.002));
  }

  @Test
  @Tag("S12")
  void openThermistorRisesToItsPullUp() {
    CarRun run = CarRun.quiet();
    run.car.faults().wire(AnalogChannel.INTAKE_AIR).wire = WireFaults.Wire.OPEN;
    run.car.faults().wire(AnalogChannel.THROTTLE).wire = WireFaults.Wire.OPEN;
    run.seconds(0.1);
    assertThat(run.volts(AnalogChannel.INTAKE_AIR)).isGreaterThan(4.98);
    assertThat(run.volts(AnalogChannel.THROTTLE)).isLessThan(0.02);
  }

  @Test
  @Tag("S4")
  void frozenCodeRepeatsExactlyWithANewTime() {
    CarRun run = new CarRun(PlantParams.PROJECT_CAR);
    run.seconds(0.1);
    double before = run.mapVolts();
    run.mapWire().frozen = true;
    run.car.holdRpm(3000.0);
    for (int i = 0; i < 100; i++) {
      run.tick();
      assertThat(run.mapVolts()).isEqualTo(before);
      assertThat(run.inputs.sampleNanos[MAP]).isEqualTo(run.car.clockNanos());
    }
    assertThat(run.car.mapKpaAbs()).isLessThan(50.0);
    run.mapWire().frozen = false;
    run.tick();
    assertThat(run.mapVolts()).isNotEqualTo(before);
  }

  @Test
  @Tag("S9")
  void staleSampleKeepsItsOldTime() {
    CarRun run = new CarRun(PlantParams.PROJECT_CAR);
    run.seconds(0.1);
    long before = run.inputs.sampleNanos[MAP];
    run.mapWire().stale = true;
    run.seconds(0.1);
    assertThat(run.inputs.sampleNanos[MAP]).isEqualTo(before);
    assertThat(run.inputs.answered[MAP]).isTrue();
  }

  @Test
  @Tag("B1")
  void convertersSilenceIsSeen() {
    CarRun run = new CarRun(PlantParams.PROJECT_CAR);
    run.seconds(0.1);
    run.mapWire().noAnswer = true;
    run.tick();
    assertThat(run.inputs.answered[MAP]).isFalse();
    assertThat(run.inputs.answered[AnalogChannel.THROTTLE.ordinal()]).isTrue();
    run.mapWire().noAnswer = false;
    run.tick();
    assertThat(run.inputs.answered[MAP]).isTrue();
  }

  @Test
  @Tag("S5")
  void offsetAndScaleShiftTheReading() {
    CarRun run = CarRun.quiet();
    run.mapWire().offsetVolts = 0.1;
    run.mapWire().scale = 1.05;
    run.seconds(0.1);
    assertThat(run.mapVolts()).isCloseTo(0.1 + 1.05 * ProjectCar.mapVolts(101.3), within(0.002));
  }

  @Test
  @Tag("S8")
  void replacedVoltsReachTheConverterAtOnce() {
    CarRun run = CarRun.quiet();
    run.seconds(0.1);
    run.mapWire().replacedVolts = 3.3;
    run.tick();
    assertThat(run.mapVolts()).isCloseTo(3.3, within(1e-3));
  }

  @Test
  @Tag("S7")
  void looseContactAtTheConverterSpoilsItsShareOfSamples() {
    for (double share : new double[] {0.1, 0.5, 0.9}) {
      CarRun run = CarRun.quiet();
      run.seconds(0.1);
      run.mapWire().intermittentFraction = share;
      int bad = 0;
      for (int i = 0; i < 2000; i++) {
        run.tick();
        bad += run.mapVolts() < 0.2 ? 1 : 0;
      }
      assertThat(bad / 2000.0).isCloseTo(share, within(0.04));
    }
  }

  @Test
  @Tag("S7")
  void looseContactInTheWireOpensAndCloses() {
    CarRun run = CarRun.quiet();
    run.seconds(0.1);
    run.mapWire().intermittentFraction = 0.5;
    run.mapWire().intermittentPeriodSeconds = 0.2;
    int low = 0;
    int sound = 0;
    for (int i = 0; i < 2000; i++) {
      run.tick();
      low += run.mapVolts() < 0.2 ? 1 : 0;
      sound += run.mapVolts() > 1.6 ? 1 : 0;
    }
    assertThat(low).isBetween(500, 1100);
    assertThat(sound).isBetween(500, 1100);
  }

  @Test
  @Tag("S11")
  void hoseOffTheSensorReadsAmbientWhileTheEngineBoosts() {
    CarRun run = CarRun.quiet();
    run.car.settleAt(4500.0, 100.0);
    run.car.faults().mapHoseOff = true;
    run.seconds(0.1);
    assertThat(run.car.mapKpaAbs()).isGreaterThan(150.0);
    assertThat(ProjectCar.mapCurve().at(run.mapVolts())).isCloseTo(101.3, within(0.2));
  }

  @Test
  @Tag("S13")
  void engineSpeedSignalIsLostDoubledHalvedAndGappy() {
    CarRun run = CarRun.quiet();
    run.car.holdRpm(3000.0);
    run.seconds(0.5);
    double period = run.inputs.enginePeriodNanos;
    assertThat(period).isCloseTo(1e7, within(2.0));

    run.car.faults().tach.factor = 2.0;
    run.seconds(0.5);
    assertThat(run.inputs.enginePeriodNanos).isCloseTo(period / 2.0, within(2.0));
    run.car.faults().tach.factor = 0.5;
    run.seconds(0.5);
    assertThat(run.inputs.enginePeriodNanos).isCloseTo(period * 2.0, within(2.0));

    run.car.faults().tach.clear();
    run.car.faults().tach.droppedFraction = 0.3;
    int gaps = 0;
    for (int i = 0; i < 400; i++) {
      run.tick();
      gaps += run.inputs.enginePeriodNanos > 1.5 * period ? 1 : 0;
    }
    assertThat(gaps).isBetween(60, 180);

    run.car.faults().tach.clear();
    run.car.faults().tach.lost = true;
    long last = run.inputs.enginePulseNanos;
    run.seconds(0.5);
    assertThat(run.inputs.enginePulseNanos).isEqualTo(last);
  }

  @Test
  @Tag("U6")
  void aFaultOfOneChannelLeavesTheNoiseOfTheOthersAlone() {
    CarRun sound = new CarRun(PlantParams.PROJECT_CAR);
    CarRun faulty = new CarRun(PlantParams.PROJECT_CAR);
    faulty.mapWire().wire = WireFaults.Wire.OPEN;
    faulty.car.faults().tach.droppedFraction = 0.5;
    for (int i = 0; i < 100; i++) {
      sound.tick();
      faulty.tick();
      for (AnalogChannel channel :
          new AnalogChannel[] {AnalogChannel.THROTTLE, AnalogChannel.SUPPLY}) {
        assertThat(faulty.volts(channel)).isEqualTo(sound.volts(channel));
      }
    }
  }
}
