package org.boostwright.rig.plant;

/**
 * Valve, hose, actuator chamber and actuator, solved from PWM edge to PWM edge.
 *
 * <p>Steps end at every edge of the drive and at every movement of the spool; between them the
 * chamber pressure is integrated with a two-stage Rosenbrock method (ROS2: Verwer, Spee, Blom and
 * Hundsdorfer, SIAM J. Sci. Comput. 20, 1999, 1456-1480), which stays stable however small the
 * chamber or large the leak.
 */
public final class BoostLine {
  /** Sonic conductance of an open 4 mm nipple, m3/(s Pa): orifice with discharge factor 0.8. */
  public static final double NIPPLE_CONDUCTANCE = 2.0e-8;

  private static final double MAX_STEP_SECONDS = 1e-3;
  private static final double GAMMA = 1.0 - 1.0 / Math.sqrt(2.0);

  private final ValveParams valve;
  private final ChamberParams chamber;
  private final ValveFaults faults = new ValveFaults();
  private final PwmGenerator pwm = new PwmGenerator();
  private final Spool spool;
  private final Actuator actuator;
  private final double strokeM3;
  private final double flowScale;
  private final double pressurePerKg;

  private boolean supplyClosed;
  private double batteryVolts = 14.0;
  private double chamberPa;
  private double drawnKg;

  // Results of the last evaluation: flows kg/s, slope 1/Pa.
  private double pathKgPerSecond;
  private double pathSlopeUp;
  private double pathSlopeDown;
  private double netKgPerSecond;
  private double netSlope;
  private double supplyKgPerSecond;

  /** A line at rest with its chamber at {@code startPa} absolute. */
  public BoostLine(
      ValveParams valve, ChamberParams chamber, ActuatorParams actuatorParams, double startPa) {
    this.valve = valve;
    this.chamber = chamber;
    spool = new Spool(valve, faults);
    actuator = new Actuator(actuatorParams);
    strokeM3 = actuatorParams.strokeVolumeM3();
    flowScale = IsoFlow.RHO0 * Math.sqrt(IsoFlow.T0 / chamber.gasKelvin());
    pressurePerKg = chamber.polytropicExponent() * ChamberParams.GAS_CONSTANT * chamber.gasKelvin();
    chamberPa = startPa;
  }

  /** What is wrong with valve and hoses; may be changed at any moment. */
  public ValveFaults faults() {
    return faults;
  }

  /** The PWM channel. */
  public PwmGenerator pwm() {
    return pwm;
  }

  /** Opens or closes the high-side switch of the coil. */
  public void setSupplyClosed(boolean closed) {
    supplyClosed = closed;
  }

  /** Voltage of the coil's supply, V. */
  public void setBatteryVolts(double volts) {
    batteryVolts = volts;
  }

  /** Chamber pressure, Pa absolute. */
  public double chamberPa() {
    return chamberPa;
  }

  /** Sets the chamber pressure, Pa absolute. */
  public void setChamberPa(double pa) {
    chamberPa = pa;
  }

  /** Spool at its energised end. */
  public boolean spoolEnergised() {
    return spool.energised();
  }

  /** Coil current, A. */
  public double coilAmps() {
    return spool.amps();
  }

  /** Wastegate lift, 0 to 1. */
  public double lift() {
    return actuator.lift();
  }

  /** Puts the wastegate at a lift of 0 to 1. */
  public void setLift(double lift) {
    actuator.setLift(lift);
  }

  /** Holds the wastegate at a lift of 0 to 1; NaN lets it go. */
  public void setStuckLift(double lift) {
    actuator.setStuckLift(lift);
  }

  /** Lift at which the spring balances these pressures (Pa), not limited by the stops. */
  public double balanceLift(double gaugePa, double backPressurePa) {
    return actuator.balanceLift(gaugePa, backPressurePa);
  }

  /** Air taken from the supply during the last {@link #advance}, kg; negative when pushed back. */
  public double drawnKg() {
    return drawnKg;
  }

  /** Flow out of the supply now if its pressure were {@code supplyPa}, kg/s. */
  double supplyKgPerSecondAt(double supplyPa, double ambientPa) {
    evaluate(chamberPa, supplyPa, ambientPa);
    return supplyKgPerSecond;
  }

  /**
   * Lets time pass. Pressures change linearly from their start to their end value.
   *
   * @param seconds how long, s
   * @param supplyStartPa supply pressure at the start, Pa absolute
   * @param supplyEndPa supply pressure at the end, Pa absolute
   * @param ambientPa ambient pressure, Pa absolute
   * @param backStartPa exhaust minus turbine outlet pressure at the start, Pa
   * @param backEndPa the same at the end, Pa
   */
  public void advance(
      double seconds,
      double supplyStartPa,
      double supplyEndPa,
      double ambientPa,
      double backStartPa,
      double backEndPa) {
    drawnKg = 0.0;
    double done = 0.0;
    while (done < seconds) {
      boolean closed = supplyClosed || faults.supplySwitchStuckClosed;
      spool.drive(closed && (pwm.output() || faults.driverStuckOn), batteryVolts);
      double h = Math.min(seconds - done, MAX_STEP_SECONDS);
      h = Math.min(h, Math.min(pwm.untilChangeSeconds(), spool.untilChangeSeconds()));
      double middle = (done + 0.5 * h) / seconds;
      step(
          h,
          supplyStartPa + middle * (supplyEndPa - supplyStartPa),
          ambientPa,
          backStartPa + middle * (backEndPa - backStartPa));
      pwm.elapse(h);
      spool.elapse(h);
      // The last step ends exactly, so that no sliver is left over by rounding.
      done = h == seconds - done ? seconds : done + h;
    }
  }

  private void step(double h, double supplyPa, double ambientPa, double backPa) {
    double liftBefore = actuator.lift();
    double volume = chamber.volumeM3() + strokeM3 * liftBefore;
    double perKg = pressurePerKg / volume;

    evaluate(chamberPa, supplyPa, ambientPa);
    double drawn = supplyKgPerSecond;
    double divisor = 1.0 - GAMMA * h * perKg * netSlope;
    double k1 = perKg * netKgPerSecond / divisor;
    evaluate(chamberPa + h * k1, supplyPa, ambientPa);
    double k2 = (perKg * netKgPerSecond - 2.0 * k1) / divisor;
    double before = chamberPa;
    chamberPa += h * (1.5 * k1 + 0.5 * k2);
    drawnKg += 0.5 * h * (drawn + supplyKgPerSecond);

    actuator.advance(h, 0.5 * (before + chamberPa) - ambientPa, backPa);
    if (strokeM3 > 0.0) {
      double grown = chamber.volumeM3() + strokeM3 * actuator.lift();
      chamberPa *= Math.pow(volume / grown, chamber.polytropicExponent());
    }
  }

  /** Flow into the chamber, its slope over chamber pressure, and flow out of the supply. */
  private void evaluate(double pa, double supplyPa, double ambientPa) {
    netKgPerSecond = 0.0;
    netSlope = 0.0;
    supplyKgPerSecond = 0.0;
    boolean energised = spool.energised();
    double conductance = energised ? valve.ventConductance() : valve.supplyConductance();
    double feedPa = faults.supplyHoseOff ? ambientPa : supplyPa;
    switch (faults.portSwap.joined(energised)) {
      case SUPPLY_ACTUATOR -> {
        double c = conductance * Math.min(faults.supplyOpen, faults.actuatorOpen);
        if (faults.actuatorHoseOff) {
          path(c, feedPa, ambientPa);
        } else {
          path(c, feedPa, pa);
          netKgPerSecond += pathKgPerSecond;
          netSlope += pathSlopeDown;
        }
        supplyKgPerSecond = pathKgPerSecond;
      }
      case ACTUATOR_VENT -> {
        if (!faults.actuatorHoseOff) {
          toAmbient(conductance * Math.min(faults.actuatorOpen, faults.ventOpen), pa, ambientPa);
        }
      }
      case SUPPLY_VENT -> {
        path(conductance * Math.min(faults.supplyOpen, faults.ventOpen), feedPa, ambientPa);
        supplyKgPerSecond = pathKgPerSecond;
      }
    }
    if (faults.actuatorHoseOff) {
      toAmbient(NIPPLE_CONDUCTANCE, pa, ambientPa);
    } else if (faults.leakConductance > 0.0) {
      toAmbient(faults.leakConductance, pa, ambientPa);
    }
    if (faults.supplyHoseOff) {
      path(NIPPLE_CONDUCTANCE, supplyPa, ambientPa);
      supplyKgPerSecond = pathKgPerSecond;
    }
  }

  private void toAmbient(double conductance, double pa, double ambientPa) {
    path(conductance, pa, ambientPa);
    netKgPerSecond -= pathKgPerSecond;
    netSlope -= pathSlopeUp;
  }

  /** Flow from {@code from} to {@code to} and its slopes over both pressures. */
  private void path(double conductance, double from, double to) {
    double c = conductance * flowScale;
    double b = valve.criticalRatio();
    if (from >= to) {
      double ratio = to / from;
      double factor = IsoFlow.factor(ratio, b);
      double slope = IsoFlow.slope(ratio, b);
      pathKgPerSecond = c * from * factor;
      pathSlopeUp = c * (factor - ratio * slope);
      pathSlopeDown = c * slope;
    } else {
      double ratio = from / to;
      double factor = IsoFlow.factor(ratio, b);
      double slope = IsoFlow.slope(ratio, b);
      pathKgPerSecond = -c * to * factor;
      pathSlopeUp = -c * slope;
      pathSlopeDown = -c * (factor - ratio * slope);
    }
  }
}
