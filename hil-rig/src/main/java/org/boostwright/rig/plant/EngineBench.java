package org.boostwright.rig.plant;

import static org.boostwright.rig.plant.EngineFlows.AF;
import static org.boostwright.rig.plant.EngineFlows.C;
import static org.boostwright.rig.plant.EngineFlows.CYLINDER_IN;
import static org.boostwright.rig.plant.EngineFlows.EM;
import static org.boostwright.rig.plant.EngineFlows.IC;
import static org.boostwright.rig.plant.EngineFlows.IM;
import static org.boostwright.rig.plant.EngineFlows.TO;

/**
 * The bare engine on a brake: engine speed, throttle and wastegate lift are given, nothing controls
 * it.
 */
public final class EngineBench {
  /** Solver step, s. */
  public static final double STEP_SECONDS = 1e-3;

  private static final double SETTLED_PER_SECOND = 1e-7;
  private static final int MAX_SETTLE_STEPS = 60_000;

  private final Engine engine;
  private final double inertia;
  private final double stepSeconds;

  /** An engine at standstill with the usual solver step. */
  public EngineBench(EngineParams params, Atmosphere atmosphere) {
    this(params, atmosphere, STEP_SECONDS);
  }

  /**
   * @param params engine
   * @param atmosphere the air around it
   * @param stepSeconds solver step, s
   */
  public EngineBench(EngineParams params, Atmosphere atmosphere, double stepSeconds) {
    engine = new Engine(params, atmosphere);
    inertia = params.turbo().inertiaKgM2();
    this.stepSeconds = stepSeconds;
  }

  /** Engine speed, 1/min. */
  public void setRpm(double rpm) {
    engine.flows.engineRadPerSecond = rpm * Math.PI / 30.0;
  }

  /** Throttle, 0 to 100 percent. */
  public void setThrottlePct(double pct) {
    engine.flows.throttleM2 = EngineFlows.throttleArea(pct);
  }

  /** Wastegate lift, 0 shut to 1 open. */
  public void setLift(double lift) {
    engine.flows.lift = lift;
  }

  /** Lets time pass, s. */
  public void advance(double seconds) {
    int steps = Math.max(1, (int) Math.ceil(seconds / stepSeconds - 1e-9));
    for (int i = 0; i < steps; i++) {
      step(seconds / steps, inertia);
    }
  }

  /**
   * Runs with a light rotor until nothing moves any more.
   *
   * @return false when it has not settled within a minute of its time
   */
  public boolean settle() {
    for (int i = 0; i < MAX_SETTLE_STEPS; i++) {
      double intake = engine.p[IM];
      double exhaust = engine.p[EM];
      double rotor = engine.rotor;
      step(STEP_SECONDS, 0.1 * inertia);
      double moved =
          Math.abs(engine.p[IM] / intake - 1.0)
              + Math.abs(engine.p[EM] / exhaust - 1.0)
              + Math.abs(engine.rotor / rotor - 1.0);
      if (moved < SETTLED_PER_SECOND * STEP_SECONDS) {
        return true;
      }
    }
    return false;
  }

  private void step(double h, double j) {
    engine.step(h, engine.flows.engineRadPerSecond, engine.flows.lift, 0.0, j);
  }

  /** The engine itself, for balances. */
  Engine engine() {
    return engine;
  }

  /** Intake manifold pressure, kPa absolute. */
  public double intakeKpaAbs() {
    return engine.p[IM] * 1e-3;
  }

  /** Pressure before the throttle, kPa absolute. */
  public double boostKpaAbs() {
    return engine.p[IC] * 1e-3;
  }

  /** Compressor outlet pressure, kPa absolute. */
  public double compressorOutKpaAbs() {
    return engine.p[C] * 1e-3;
  }

  /** Compressor inlet pressure, kPa absolute. */
  public double compressorInKpaAbs() {
    return engine.p[AF] * 1e-3;
  }

  /** Exhaust manifold pressure, kPa absolute. */
  public double exhaustKpaAbs() {
    return engine.p[EM] * 1e-3;
  }

  /** Pressure after the turbine, kPa absolute. */
  public double turbineOutKpaAbs() {
    return engine.p[TO] * 1e-3;
  }

  /** Exhaust manifold temperature, K. */
  public double exhaustKelvin() {
    return engine.t[EM];
  }

  /** Intake manifold temperature, K. */
  public double intakeKelvin() {
    return engine.t[IM];
  }

  /** Rotor speed of the turbo, 1000/min. */
  public double turboKrpm() {
    return engine.rotor * 30e-3 / Math.PI;
  }

  /** Air into the cylinders, g/s. */
  public double airGramsPerSecond() {
    return engine.flows.flow[CYLINDER_IN] * 1e3;
  }

  /** Compressor efficiency. */
  public double compressorEfficiency() {
    return engine.flows.compressorEfficiency;
  }

  /** Turbine efficiency. */
  public double turbineEfficiency() {
    return engine.flows.turbineEfficiency;
  }
}
