package org.boostwright.rig.link;

import org.boostwright.core.AnalogChannel;
import org.boostwright.core.Inputs;
import org.boostwright.core.Outputs;
import org.boostwright.rig.plant.CarFaults;
import org.boostwright.rig.plant.VirtualCar;
import org.jspecify.annotations.Nullable;

/**
 * What a fault case can reach: car, line and, where the rig started it, the controller's program.
 *
 * @param loop the rig's ticks
 * @param car the virtual car
 * @param driver drives it
 * @param wires the serial line
 * @param runtime the controller's program; null when somebody else started it
 */
record FaultBench(
    RigLoop loop,
    VirtualCar car,
    RoadDriver driver,
    SerialWires wires,
    @Nullable RuntimeProcess runtime) {

  CarFaults faults() {
    return car.faults();
  }

  Inputs inputs() {
    return loop.inputs();
  }

  double volts(AnalogChannel channel) {
    return loop.inputs().volts[channel.ordinal()];
  }

  Outputs outputs() {
    return loop.observer().last();
  }

  RuntimeProcess program() {
    RuntimeProcess program = runtime;
    if (program == null) {
      throw new IllegalStateException("this case needs a program that the rig has started");
    }
    return program;
  }
}
