package org.boostwright.rig.plant;

import static org.assertj.core.api.Assertions.assertThat;

import java.util.Random;
import org.boostwright.core.AnalogChannel;
import org.boostwright.core.Inputs;
import org.junit.jupiter.api.Test;

/** Whatever is done to the car, its state stays physical: the solver must not be what breaks. */
class PlantAbuseTest {
  @Test
  void randomFaultsAndDrivingNeverLeaveThePhysicalRange() {
    for (int seed = 0; seed < 12; seed++) {
      abuse(seed, 4000);
    }
  }

  static void abuse(int seed, int ticks) {
    Random random = new Random(seed);
    Atmosphere atmosphere =
        Atmosphere.at(3000.0 * random.nextDouble(), 60.0 * random.nextDouble() - 15.0);
    PlantParams params = PlantParams.PROJECT_CAR.spread(seed, 2.0);
    if (random.nextInt(3) == 0) {
      params = params.withEngine(params.engine().withTurbo(TurboParams.PUBLISHED));
    }
    VirtualCar car = new VirtualCar(params, atmosphere, seed);
    Inputs inputs = new Inputs();
    for (int tick = 0; tick < ticks; tick++) {
      if (tick % 20 == 0) {
        disturb(car, random);
      }
      car.advance(CarRun.TICK_NANOS);
      car.read(inputs, car.clockNanos());
      String where = "seed " + seed + " tick " + tick;
      assertThat(car.mapKpaAbs()).as(where).isBetween(1.0, 450.0);
      assertThat(car.boostKpaAbs()).as(where).isBetween(30.0, 500.0);
      assertThat(car.exhaustKpaAbs()).as(where).isBetween(50.0, 1500.0);
      assertThat(car.turboKrpm()).as(where).isBetween(1.0, 350.0);
      // Air that is sucked from ambient down to 8 kPa in no time cools to 142 K:
      // 293*(8/101)^0.2857.
      assertThat(car.intakeAirC()).as(where).isBetween(-140.0, 350.0);
      assertThat(car.wastegateLift()).as(where).isBetween(0.0, 1.0);
      assertThat(car.recirculationOpen()).as(where).isBetween(0.0, 1.0);
      assertThat(car.actuatorKpaGauge()).as(where).isBetween(-100.0, 400.0);
      for (double volts : inputs.volts) {
        assertThat(volts).as(where).isBetween(0.0, 5.0001);
      }
    }
  }

  private static void disturb(VirtualCar car, Random random) {
    CarFaults faults = car.faults();
    switch (random.nextInt(18)) {
      case 0, 1, 2 -> car.setThrottlePct(random.nextBoolean() ? 100.0 : 0.0);
      case 3 -> car.setThrottlePct(100.0 * random.nextDouble());
      case 4 -> car.coil(random.nextDouble(), true, true);
      case 5 -> car.coil(0.0, false, false);
      case 6 -> car.holdRpm(7000.0 * random.nextDouble());
      case 7 -> car.driveInGearAtRpm(1 + random.nextInt(5), 1000.0 + 5500.0 * random.nextDouble());
      case 8 -> {
        if (car.gear() > 0) {
          car.shiftTo(1 + random.nextInt(5));
        }
      }
      case 9 -> car.neutral();
      case 10 -> car.stopEngine();
      case 11 -> faults.wastegateStuckLift = random.nextBoolean() ? random.nextInt(2) : Double.NaN;
      case 12 -> faults.recirculationStuck = random.nextBoolean() ? random.nextInt(2) : Double.NaN;
      case 13 -> faults.chargeLeakM2 = random.nextBoolean() ? 1.5e-3 * random.nextDouble() : 0.0;
      case 14 -> {
        faults.valve.actuatorHoseOff = random.nextBoolean();
        faults.valve.supplyHoseOff = random.nextBoolean();
        faults.valve.leakConductance = 3e-8 * random.nextDouble();
      }
      case 15 -> {
        faults.valve.portSwap = PortSwap.values()[random.nextInt(4)];
        faults.valve.stuck = ValveFaults.Stuck.values()[random.nextInt(3)];
        faults.valve.slowFactor = 3.0 * random.nextDouble();
      }
      case 16 -> {
        car.requestEngineCut(random.nextBoolean());
        faults.wire(AnalogChannel.MAP).wire = WireFaults.Wire.values()[random.nextInt(4)];
      }
      default -> {
        faults.clear();
        car.setAtmosphere(Atmosphere.at(3000.0 * random.nextDouble(), 20.0));
      }
    }
  }
}
