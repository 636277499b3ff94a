package org.boostwright.rig.plant;

import static org.boostwright.rig.plant.EngineFlows.C;
import static org.boostwright.rig.plant.EngineFlows.EM;
import static org.boostwright.rig.plant.EngineFlows.IC;
import static org.boostwright.rig.plant.EngineFlows.IM;

import org.boostwright.core.Inputs;
import org.boostwright.core.Outputs;

/**
 * A whole car to put the controller into: it takes the controller's outputs and the driver's
 * wishes, lets time pass and answers what the sensors read and what was really the case.
 *
 * <p>Deterministic: the same parameters, seed and calls give the same bits. Nothing is allocated
 * after construction. A new car stands still with its key on, the valve at rest and every fault
 * clear.
 */
public final class VirtualCar {
  /** How long a gear change lifts the throttle, s. */
  public static final double SHIFT_SECONDS = 0.3;

  private static final double PER_SECOND = 1e9;
  private static final double FINE_STEP_SECONDS = 0.25e-3;
  private static final double JUMP_STEP_SECONDS = 0.05e-3;
  private static final int FINE_CALLS = 5;
  private static final double JUMP = 0.2;
  private static final double MOVE = 0.02;
  private static final double THROTTLE_SHUT_PCT = 1.0;
  private static final double SETTLE_SECONDS = 4.0;
  private static final double SETTLE_ROTOR_FACTOR = 0.1;

  private final PlantParams params;
  private final double longestStepSeconds;
  private final Powerplant plant;
  private final Drivetrain drivetrain;
  private final CarSensors sensors;
  private final CarFaults faults;

  private long clockNanos;
  private double throttlePct;
  private boolean engineCutRequested;
  private boolean coilSupplyCommanded;
  private boolean coilFeed = true;
  private double airDensity;
  private double heldThrottlePct;
  private int sensed = IM;
  private int callsSinceJump;

  /**
   * @param params what the car is made of
   * @param atmosphere the air around it
   * @param seed of its noise
   */
  public VirtualCar(PlantParams params, Atmosphere atmosphere, long seed) {
    this(params, atmosphere, seed, Powerplant.STEP_SECONDS);
  }

  /** A car solved in steps of at most {@code longestStepSeconds}. */
  VirtualCar(PlantParams params, Atmosphere atmosphere, long seed, double longestStepSeconds) {
    this.params = params;
    this.longestStepSeconds = longestStepSeconds;
    plant =
        new Powerplant(
            params.engine(), params.valve(), params.chamber(), params.actuator(), atmosphere);
    plant.line.pwm().setFrequencyHz(params.pwmHz());
    drivetrain = new Drivetrain(params.car(), params.engine().displacementM3());
    sensors = new CarSensors(params.sensors(), seed);
    faults =
        new CarFaults(
            plant.line.faults(), sensors.tach.faults, sensors.road.faults, sensors.wireFaults());
    setAtmosphere(atmosphere);
    takeOverCommands();
    callsSinceJump = FINE_CALLS;
    sensors.settle(
        plant.engine.p[sensed], heldThrottlePct, plant.engine.t[IM], plant.engine.flows.ambientPa);
  }

  /** What the car is made of. */
  public PlantParams params() {
    return params;
  }

  /** What is wrong with it; may be changed at any moment. */
  public CarFaults faults() {
    return faults;
  }

  /** Keys, switches and battery. */
  public CarSensors sensors() {
    return sensors;
  }

  /** Changes the air around the car, as a climb does. */
  public void setAtmosphere(Atmosphere atmosphere) {
    plant.engine.setAtmosphere(atmosphere);
    airDensity = atmosphere.kpaAbs() * 1e3 / (ChamberParams.GAS_CONSTANT * atmosphere.kelvin());
  }

  /** Throttle (and pedal) the driver asks for, 0 to 100 percent. */
  public void setThrottlePct(double pct) {
    if (!(pct >= 0.0 && pct <= 100.0)) {
      throw new IllegalArgumentException("throttle " + pct + " % must lie within 0 and 100 %");
    }
    throttlePct = pct;
  }

  /** Where the pressure sensor's hose ends: before the throttle, or in the manifold. */
  public void setMapBeforeThrottle(boolean before) {
    sensed = before ? IC : IM;
  }

  /** Takes over the controller's commands. */
  public void apply(Outputs outputs) {
    coil(outputs.dutyFraction, outputs.pwmEnabled, outputs.coilSupplyClosed);
    engineCutRequested = outputs.engineCutRequest;
  }

  /** Drives the coil directly. */
  public void coil(double dutyFraction, boolean pwmEnabled, boolean supplyClosed) {
    plant.line.pwm().setDuty(dutyFraction);
    plant.line.pwm().setEnabled(pwmEnabled);
    coilSupplyCommanded = supplyClosed;
  }

  /** Asks the engine to stop burning, directly. */
  public void requestEngineCut(boolean cut) {
    engineCutRequested = cut;
  }

  /** Frequency of the PWM, Hz; another one than the settings say is a fault. */
  public void setPwmHz(double hz) {
    plant.line.pwm().setFrequencyHz(hz);
  }

  /** Wires the coil drive the wrong way round. */
  public void setPwmInverted(boolean inverted) {
    plant.line.pwm().setInverted(inverted);
  }

  /** Spring-only switch: false breaks the coil feed by hand. */
  public void setCoilFeed(boolean feeds) {
    coilFeed = feeds;
  }

  /** Engine off; it runs down and the car stands. */
  public void stopEngine() {
    drivetrain.standStill();
  }

  /** Holds the engine at a speed, 1/min, as a dynamometer does. */
  public void holdRpm(double rpm) {
    holdRpm(rpm, 0.0);
  }

  /** Starts at a speed, 1/min, and changes it at a rate, 1/min per second. */
  public void holdRpm(double rpm, double rpmPerSecond) {
    if (!(rpm >= 0.0 && rpm <= 12_000.0)) {
      throw new IllegalArgumentException(
          "engine speed " + rpm + " 1/min must lie within 0 and 12000");
    }
    drivetrain.hold(rpm * Math.PI / 30.0, rpmPerSecond * Math.PI / 30.0);
  }

  /** In gear on a level road at a road speed, km/h. */
  public void driveInGear(int gear, double roadKmh) {
    drivetrain.road(gear, roadKmh / 3.6);
  }

  /** In gear on a level road at the road speed that belongs to an engine speed, 1/min. */
  public void driveInGearAtRpm(int gear, double rpm) {
    driveInGear(gear, rpm / params.car().rpmPerKmh(gear));
  }

  /** Changes gear: clutch open and throttle lifted for {@link #SHIFT_SECONDS}. */
  public void shiftTo(int gear) {
    drivetrain.shift(gear, SHIFT_SECONDS);
  }

  /** Out of gear: the engine is free and idles with the throttle shut. */
  public void neutral() {
    drivetrain.neutral();
  }

  /** Lets time pass, ns. */
  public void advance(long nanos) {
    double seconds = nanos / PER_SECOND;
    takeOverCommands();
    int steps = Math.max(1, (int) Math.ceil(seconds / longestStep() - 1e-9));
    double h = seconds / steps;
    double turned = 0.0;
    double driven = 0.0;
    for (int i = 0; i < steps; i++) {
      double rad = drivetrain.radPerSecond();
      double speed = drivetrain.metresPerSecond();
      double sensedBefore = plant.engine.p[sensed];
      step(h, 1.0);
      sensors.pressure(h, sensedBefore, plant.engine.p[sensed], plant.engine.flows.ambientPa);
      turned += 0.5 * h * (rad + drivetrain.radPerSecond()) / (2.0 * Math.PI);
      driven += 0.5 * h * (speed + drivetrain.metresPerSecond());
    }
    sensors.advance(
        clockNanos,
        nanos,
        turned,
        driven,
        drivetrain.radPerSecond(),
        heldThrottlePct,
        throttlePct,
        plant.engine.t[IM],
        plant.engine.flows.ambientPa);
    clockNanos += nanos;
  }

  /** Puts the throttle where driver, gear change or fault want it. */
  private void moveThrottle() {
    double before = plant.engine.flows.throttleM2;
    if (!Double.isNaN(faults.throttleStuckPct)) {
      heldThrottlePct = faults.throttleStuckPct;
    } else {
      heldThrottlePct = drivetrain.shifting() ? 0.0 : throttlePct;
    }
    double area = EngineFlows.throttleArea(heldThrottlePct) + params.car().idleAirM2();
    plant.engine.flows.throttleM2 = area;
    double change = Math.abs(area - before) / before;
    if (change > JUMP) {
      callsSinceJump = 0;
    } else if (change > MOVE) {
      callsSinceJump = Math.min(callsSinceJump, 1);
    }
  }

  /** Short steps after the throttle jumped, while pressures move fastest. */
  private double longestStep() {
    double longest = longestStepSeconds;
    if (callsSinceJump < FINE_CALLS) {
      longest = Math.min(longest, callsSinceJump == 0 ? JUMP_STEP_SECONDS : FINE_STEP_SECONDS);
      callsSinceJump++;
    }
    return longest;
  }

  private void step(double h, double rotorFactor) {
    plant.engine.flows.fuelCut = engineCutRequested && !faults.engineCutBroken;
    double radEnd =
        drivetrain.advance(
            h,
            plant.engine.p[IM],
            heldThrottlePct < THROTTLE_SHUT_PCT,
            plant.engine.flows.fuelCut,
            airDensity);
    plant.step(h, radEnd, rotorFactor);
  }

  private void takeOverCommands() {
    moveThrottle();
    plant.line.setSupplyClosed(coilSupplyCommanded && coilFeed);
    plant.line.setBatteryVolts(sensors.batteryVolts);
    plant.line.setStuckLift(faults.wastegateStuckLift);
    plant.recirculationStuck = faults.recirculationStuck;
    plant.engine.flows.leakM2 = faults.chargeLeakM2;
    sensors.mapHoseOff(faults.mapHoseOff);
  }

  /**
   * Goes at once to the settled state at an engine speed (1/min, held) and throttle (percent), with
   * the coil driven as it last was. The clock does not move.
   */
  public void settleAt(double rpm, double pct) {
    setThrottlePct(pct);
    holdRpm(rpm);
    settle();
  }

  /** Lets everything settle under present commands while engine and road speed stay. */
  private void settle() {
    takeOverCommands();
    callsSinceJump = FINE_CALLS;
    int light = (int) Math.round(SETTLE_SECONDS / Powerplant.STEP_SECONDS);
    for (int i = 0; i < light + light / 8; i++) {
      step(Powerplant.STEP_SECONDS, i < light ? SETTLE_ROTOR_FACTOR : 1.0);
    }
    sensors.settle(
        plant.engine.p[IM], heldThrottlePct, plant.engine.t[IM], plant.engine.flows.ambientPa);
    sensors.tach.settle(
        clockNanos, drivetrain.radPerSecond() / (2.0 * Math.PI) * ProjectCar.TACH_PULSES_PER_REV);
  }

  /**
   * Reads every fitted sensor.
   *
   * @param inputs written; benchRequest and benchDutyFraction stay as they are
   * @param nowNanos present time on the caller's clock
   */
  public void read(Inputs inputs, long nowNanos) {
    sensors.read(inputs, nowNanos, nowNanos - clockNanos);
    inputs.coilFeed = coilFeed;
    inputs.coilEnergised = plant.line.coilAmps() > CarSensors.COIL_SEEN_AMPS;
  }

  /** Time since construction, ns. */
  public long clockNanos() {
    return clockNanos;
  }

  /** True manifold pressure, pulsation left out, kPa absolute. */
  public double mapKpaAbs() {
    return plant.engine.p[IM] * 1e-3;
  }

  /** True pressure before the throttle, kPa absolute. */
  public double boostKpaAbs() {
    return plant.engine.p[IC] * 1e-3;
  }

  /** True compressor outlet pressure, which supplies the valve, kPa absolute. */
  public double supplyKpaAbs() {
    return plant.engine.p[C] * 1e-3;
  }

  /** True exhaust manifold pressure, kPa absolute. */
  public double exhaustKpaAbs() {
    return plant.engine.p[EM] * 1e-3;
  }

  /** True ambient pressure, kPa absolute. */
  public double ambientKpaAbs() {
    return plant.engine.flows.ambientPa * 1e-3;
  }

  /** True actuator pressure, kPa gauge. */
  public double actuatorKpaGauge() {
    return (plant.line.chamberPa() - plant.engine.flows.ambientPa) * 1e-3;
  }

  /** True wastegate lift, 0 to 1. */
  public double wastegateLift() {
    return plant.line.lift();
  }

  /** True opening of the recirculation valve, 0 to 1. */
  public double recirculationOpen() {
    return plant.recirculationOpen();
  }

  /** True rotor speed of the turbo, 1000/min. */
  public double turboKrpm() {
    return plant.engine.rotor * 30e-3 / Math.PI;
  }

  /** True engine speed, 1/min. */
  public double engineRpm() {
    return drivetrain.radPerSecond() * 30.0 / Math.PI;
  }

  /** True road speed, km/h. */
  public double roadKmh() {
    return drivetrain.metresPerSecond() * 3.6;
  }

  /** Gear engaged or being engaged; 0 out of gear. */
  public int gear() {
    return drivetrain.gear();
  }

  /** True while a gear change is under way. */
  public boolean shifting() {
    return drivetrain.shifting();
  }

  /** True throttle opening, percent. */
  public double throttlePct() {
    return heldThrottlePct;
  }

  /** True intake manifold temperature, degC. */
  public double intakeAirC() {
    return plant.engine.t[IM] - 273.15;
  }

  /** Spool of the valve at its energised end. */
  public boolean spoolEnergised() {
    return plant.line.spoolEnergised();
  }

  /** Coil current, A. */
  public double coilAmps() {
    return plant.line.coilAmps();
  }
}
