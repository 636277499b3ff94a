package org.boostwright.rig.plant;

import static org.boostwright.rig.plant.EngineFlows.C;
import static org.boostwright.rig.plant.EngineFlows.DRAW;
import static org.boostwright.rig.plant.EngineFlows.EM;
import static org.boostwright.rig.plant.EngineFlows.IC;
import static org.boostwright.rig.plant.EngineFlows.IM;
import static org.boostwright.rig.plant.EngineFlows.TO;

/**
 * Engine, boost line and recirculation valve working on each other.
 *
 * <p>Within a step the boost line sees the engine's pressures carried on at their last rate, and
 * the engine sees the lift at both ends of the step; no part waits for the other.
 */
final class Powerplant {
  static final double STEP_SECONDS = 1e-3;

  final Engine engine;
  final BoostLine line;

  /** Holds the recirculation valve at 0 shut to 1 open; NaN lets it go. */
  double recirculationStuck = Double.NaN;

  private final RecirculationParams recirculation;
  private final double inertia;
  private double recirculationOpen;
  private double supplyRate;
  private double backRate;
  private double dropRate;

  Powerplant(
      EngineParams engineParams,
      ValveParams valve,
      ChamberParams chamber,
      ActuatorParams actuator,
      Atmosphere atmosphere) {
    engine = new Engine(engineParams, atmosphere);
    line = new BoostLine(valve, chamber, actuator, atmosphere.kpaAbs() * 1e3);
    recirculation = engineParams.recirculation();
    inertia = engineParams.turbo().inertiaKgM2();
  }

  /** Opening of the recirculation valve, 0 to 1. */
  double recirculationOpen() {
    return Double.isNaN(recirculationStuck) ? recirculationOpen : recirculationStuck;
  }

  /**
   * One step.
   *
   * @param h length, s; {@link #STEP_SECONDS} or less
   * @param radEnd engine speed at the end, rad/s
   * @param rotorFactor factor on the rotor's inertia; below 1 it settles sooner
   */
  void step(double h, double radEnd, double rotorFactor) {
    double supply = engine.p[C];
    double back = engine.p[EM] - engine.p[TO];
    double drop = engine.p[IC] - engine.p[IM];
    engine.flows.lift = line.lift();
    line.advance(
        h, supply, supply + h * supplyRate, engine.flows.ambientPa, back, back + h * backRate);
    engine.flows.flow[DRAW] = line.drawnKg() / h;
    engine.flows.recirculationM2 = recirculationM2();
    moveRecirculation(h, drop + 0.5 * h * dropRate);
    engine.step(h, radEnd, line.lift(), recirculationM2(), rotorFactor * inertia);
    supplyRate = (engine.p[C] - supply) / h;
    backRate = (engine.p[EM] - engine.p[TO] - back) / h;
    dropRate = (engine.p[IC] - engine.p[IM] - drop) / h;
  }

  private double recirculationM2() {
    return recirculationOpen() * Math.PI / 4 * recirculation.boreM() * recirculation.boreM();
  }

  private void moveRecirculation(double h, double dropPa) {
    double goal =
        (dropPa * 1e-3 - recirculation.openAboveKpa())
            / (recirculation.fullAtKpa() - recirculation.openAboveKpa());
    goal = goal > 0.0 ? Math.min(goal, 1.0) : 0.0;
    if (goal == 0.0 && recirculationOpen < 1e-6) {
      // Shut for good: spares the flow through a hair's width.
      recirculationOpen = 0.0;
      return;
    }
    recirculationOpen =
        goal + (recirculationOpen - goal) * Math.exp(-h / recirculation.lagSeconds());
  }
}
