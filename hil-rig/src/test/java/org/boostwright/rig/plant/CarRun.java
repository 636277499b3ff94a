package org.boostwright.rig.plant;

import org.boostwright.core.AnalogChannel;
import org.boostwright.core.Inputs;

/** Drives a {@link VirtualCar} tick by tick for tests. */
final class CarRun {
  static final long TICK_NANOS = 5_000_000L;

  final VirtualCar car;
  final Inputs inputs = new Inputs();
  double peakMapKpaAbs;

  CarRun(PlantParams params) {
    this(params, Atmosphere.REFERENCE);
  }

  CarRun(PlantParams params, Atmosphere atmosphere) {
    car = new VirtualCar(params, atmosphere, 7);
  }

  /** The project car without noise and pulsation. */
  static CarRun quiet() {
    return new CarRun(
        PlantParams.PROJECT_CAR.withSensors(SensorParams.DEFAULT.withMapNoise(0.0, 0.0)));
  }

  CarRun seconds(double seconds) {
    for (int i = 0; i < Math.round(seconds / 5e-3); i++) {
      tick();
    }
    return this;
  }

  void tick() {
    car.advance(TICK_NANOS);
    car.read(inputs, car.clockNanos());
    peakMapKpaAbs = Math.max(peakMapKpaAbs, car.mapKpaAbs());
  }

  double volts(AnalogChannel channel) {
    return inputs.volts[channel.ordinal()];
  }

  double mapVolts() {
    return volts(AnalogChannel.MAP);
  }

  WireFaults mapWire() {
    return car.faults().wire(AnalogChannel.MAP);
  }
}
