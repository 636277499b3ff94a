package org.boostwright.rig.link;

import org.boostwright.core.Inputs;
import org.boostwright.rig.plant.VirtualCar;

/** The virtual car behind the wires. */
public final class VirtualCarSide implements CarSide {
  private final VirtualCar car;
  private double pwmHz;

  /** A car with everything as it stands. */
  public VirtualCarSide(VirtualCar car) {
    this.car = car;
    pwmHz = car.params().pwmHz();
  }

  /** The car; driver's wishes and faults are set on it. */
  public VirtualCar car() {
    return car;
  }

  @Override
  public boolean advance(long nanos) {
    car.advance(nanos);
    return true;
  }

  @Override
  public void read(long nowNanos, Inputs inputs) {
    car.read(inputs, nowNanos);
  }

  @Override
  public void coil(double dutyFraction, double hz, boolean pwmEnabled, boolean supplyClosed) {
    if (hz > 0.0 && Math.abs(hz - pwmHz) > 0.01) {
      pwmHz = hz;
      car.setPwmHz(hz);
    }
    car.coil(dutyFraction, pwmEnabled, supplyClosed);
  }

  @Override
  public void engineCut(boolean requested) {
    car.requestEngineCut(requested);
  }
}
