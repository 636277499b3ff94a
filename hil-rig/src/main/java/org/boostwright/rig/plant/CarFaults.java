package org.boostwright.rig.plant;

import org.boostwright.core.AnalogChannel;

/**
 * Everything that can be wrong with a virtual car, each settable at any moment.
 *
 * <p>The holders inside belong to the parts they spoil; {@link #clear()} makes the whole car sound.
 */
public final class CarFaults {
  /** Valve, coil, driver, hoses and chamber. */
  public final ValveFaults valve;

  /** Engine-speed signal. */
  public final PulseFaults tach;

  /** Road-speed signal. */
  public final PulseFaults road;

  /** Pressure hose off the MAP sensor: it sees ambient. */
  public boolean mapHoseOff;

  /** Leak between intercooler and throttle, m2; 5e-5 is a split hose, 1e-3 a hose blown off. */
  public double chargeLeakM2;

  /** Wastegate stuck at a lift of 0 (shut) to 1 (open); NaN = free. */
  public double wastegateStuckLift = Double.NaN;

  /** Recirculation valve stuck at 0 (shut) to 1 (open); NaN = free. */
  public double recirculationStuck = Double.NaN;

  /** Throttle plate stuck at this percentage whatever the driver asks; NaN = free. */
  public double throttleStuckPct = Double.NaN;

  /** Engine cut not wired or broken: a request does nothing. */
  public boolean engineCutBroken;

  private final WireFaults[] wires;

  CarFaults(ValveFaults valve, PulseFaults tach, PulseFaults road, WireFaults[] wires) {
    this.valve = valve;
    this.tach = tach;
    this.road = road;
    this.wires = wires;
  }

  /** Wire, electronics and converter channel of one sensor. */
  public WireFaults wire(AnalogChannel channel) {
    return wires[channel.ordinal()];
  }

  /** Makes the whole car sound. */
  public void clear() {
    valve.clear();
    tach.clear();
    road.clear();
    for (WireFaults wire : wires) {
      wire.clear();
    }
    mapHoseOff = false;
    chargeLeakM2 = 0.0;
    wastegateStuckLift = Double.NaN;
    recirculationStuck = Double.NaN;
    throttleStuckPct = Double.NaN;
    engineCutBroken = false;
  }
}
