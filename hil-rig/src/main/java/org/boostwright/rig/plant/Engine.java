package org.boostwright.rig.plant;

import static org.boostwright.rig.plant.EngineFlows.AF;
import static org.boostwright.rig.plant.EngineFlows.C;
import static org.boostwright.rig.plant.EngineFlows.COMPRESSOR;
import static org.boostwright.rig.plant.EngineFlows.CYLINDER_IN;
import static org.boostwright.rig.plant.EngineFlows.CYLINDER_OUT;
import static org.boostwright.rig.plant.EngineFlows.DRAW;
import static org.boostwright.rig.plant.EngineFlows.EM;
import static org.boostwright.rig.plant.EngineFlows.EXHAUST;
import static org.boostwright.rig.plant.EngineFlows.FILTER;
import static org.boostwright.rig.plant.EngineFlows.FLOWS;
import static org.boostwright.rig.plant.EngineFlows.G_AIR;
import static org.boostwright.rig.plant.EngineFlows.G_EXH;
import static org.boostwright.rig.plant.EngineFlows.IC;
import static org.boostwright.rig.plant.EngineFlows.IM;
import static org.boostwright.rig.plant.EngineFlows.INTERCOOLER;
import static org.boostwright.rig.plant.EngineFlows.LEAK;
import static org.boostwright.rig.plant.EngineFlows.NODES;
import static org.boostwright.rig.plant.EngineFlows.RECIRCULATION;
import static org.boostwright.rig.plant.EngineFlows.THROTTLE;
import static org.boostwright.rig.plant.EngineFlows.TO;
import static org.boostwright.rig.plant.EngineFlows.TURBINE;
import static org.boostwright.rig.plant.EngineFlows.WASTEGATE;

/**
 * The mean-value engine as six gas volumes and a rotor: {@code dm/dt = sum W_in - sum W_out},
 * {@code d(mT)/dt = gamma*(sum W_in*T_in - sum W_out*T)}, {@code p = R*mT/V}.
 *
 * <p>Mass m and m*T are the states, so that balances close exactly. An open throttle makes a pole
 * near -14,000 1/s, so a step is linearly implicit: the two-stage Rosenbrock method ROS2 (Verwer,
 * Spee, Blom and Hundsdorfer, SIAM J. Sci. Comput. 20, 1999, 1456-1480), second order for any
 * approximate Jacobian; here it holds the slopes of the flows over the pressures. Of its two
 * L-stable parameters the larger one is taken: with the smaller one the inner stage of the fast
 * pressures overshoots far past their goal, across the kinks of the nozzle function.
 */
final class Engine {
  static final double[] VOLUME_M3 = {15.085e-3, 6.0e-3, 4.7e-3, 1.8e-3, 1.59e-3, 20e-3};
  private static final double GAMMA = 1.0 + 1.0 / Math.sqrt(2.0);
  private static final double FRICTION = 9.7187e-7;

  /** Own assumption: with the engine stopped the bearings stop the rotor, s. */
  private static final double RUN_DOWN_SECONDS = 1.5;

  /** Slowest rotor speed of the model, rad/s; its maps have no meaning below. */
  private static final double MIN_ROTOR = 200.0;

  final EngineFlows flows;
  final double[] p = new double[NODES];
  final double[] t = new double[NODES];
  final double[] m = new double[NODES];
  final double[] mt = new double[NODES];

  /** Mass moved by each flow since construction, kg. */
  final double[] totalKg = new double[FLOWS];

  /** Rotor speed of the turbo, rad/s. */
  double rotor = MIN_ROTOR;

  private final double[] paPerKgK = new double[NODES];
  private final PressureCoupling coupling;
  private final double[] mStart = new double[NODES];
  private final double[] mtStart = new double[NODES];
  private final double[] heat1 = new double[NODES];
  private final double[] heat2 = new double[NODES];
  private final double[] flow1 = new double[FLOWS];
  private final double[] flow2 = new double[FLOWS];
  private final double[] mass = new double[NODES];

  /** An engine at standstill, filled with ambient air. */
  Engine(EngineParams params, Atmosphere atmosphere) {
    flows = new EngineFlows(params);
    for (int i = 0; i < NODES; i++) {
      paPerKgK[i] = (i < EM ? EngineFlows.R_AIR : EngineFlows.R_EXH) / VOLUME_M3[i];
    }
    coupling = new PressureCoupling(paPerKgK);
    setAtmosphere(atmosphere);
    for (int i = 0; i < NODES; i++) {
      mt[i] = flows.ambientPa / paPerKgK[i];
      m[i] = mt[i] / flows.ambientK;
    }
    refresh();
  }

  /** The air around the engine, from the next step on. */
  void setAtmosphere(Atmosphere atmosphere) {
    flows.ambientPa = atmosphere.kpaAbs() * 1e3;
    flows.ambientK = atmosphere.kelvin();
  }

  /**
   * One step with everything that drives it in {@link #flows}; engine speed, lift and recirculation
   * go to their end values in its course.
   *
   * @param h length, s
   * @param radEnd engine speed at the end, rad/s
   * @param liftEnd wastegate lift at the end
   * @param recirculationEndM2 recirculation area at the end, m2
   * @param inertia rotor inertia, kg m2; a small one finds the settled state quickly
   */
  void step(double h, double radEnd, double liftEnd, double recirculationEndM2, double inertia) {
    flows.evaluate(p, t, rotor);
    double rotorStart = rotor;
    double rotor1 = rotorRate(inertia);
    coupling.prepare(flows, GAMMA * h);
    heatRates(heat1);
    coupling.solve(heat1);
    coupling.added(heat1, flow1);
    for (int i = 0; i < FLOWS; i++) {
      flow1[i] += flows.flow[i];
    }
    massRates(flow1);
    for (int i = 0; i < NODES; i++) {
      mStart[i] = m[i];
      mtStart[i] = mt[i];
      m[i] += h * mass[i];
      mt[i] += h * heat1[i];
    }
    rotor = Math.max(MIN_ROTOR, rotorStart + h * rotor1);
    refresh();

    flows.engineRadPerSecond = radEnd;
    flows.lift = liftEnd;
    flows.recirculationM2 = recirculationEndM2;
    flows.evaluate(p, t, rotor);
    double rotor2 = rotorRate(inertia);
    heatRates(heat2);
    for (int i = 0; i < NODES; i++) {
      heat2[i] -= 2.0 * heat1[i];
    }
    coupling.solve(heat2);
    coupling.added(heat2, flow2);
    for (int i = 0; i < FLOWS; i++) {
      flow2[i] = 0.5 * (flow1[i] + flow2[i] + flows.flow[i]);
      totalKg[i] += h * flow2[i];
    }
    massRates(flow2);
    for (int i = 0; i < NODES; i++) {
      m[i] = mStart[i] + h * mass[i];
      mt[i] = mtStart[i] + h * (1.5 * heat1[i] + 0.5 * heat2[i]);
    }
    rotor = Math.max(MIN_ROTOR, rotorStart + 0.5 * h * (rotor1 + rotor2));
    refresh();
  }

  /** Pressures and temperatures from the states. */
  private void refresh() {
    for (int i = 0; i < NODES; i++) {
      p[i] = mt[i] * paPerKgK[i];
      t[i] = mt[i] / m[i];
    }
  }

  private double rotorRate(double inertia) {
    double rate = (flows.torqueTurbine - flows.torqueCompressor - FRICTION * rotor) / inertia;
    return flows.engineRadPerSecond > 0.0 ? rate : rate - rotor / RUN_DOWN_SECONDS;
  }

  private void massRates(double[] w) {
    mass[AF] = w[FILTER] + w[RECIRCULATION] - w[COMPRESSOR];
    mass[C] = w[COMPRESSOR] - w[INTERCOOLER] - w[RECIRCULATION] - w[DRAW];
    mass[IC] = w[INTERCOOLER] - w[THROTTLE] - w[LEAK];
    mass[IM] = w[THROTTLE] - w[CYLINDER_IN];
    mass[EM] = w[CYLINDER_OUT] - w[TURBINE] - w[WASTEGATE];
    mass[TO] = w[TURBINE] + w[WASTEGATE] - w[EXHAUST];
  }

  private void heatRates(double[] rate) {
    double[] w = flows.flow;
    double[] leave = flows.leaveK;
    double[] enter = flows.enterK;
    rate[AF] =
        G_AIR
            * (w[FILTER] * enter[FILTER]
                + w[RECIRCULATION] * enter[RECIRCULATION]
                - w[COMPRESSOR] * leave[COMPRESSOR]);
    rate[C] =
        G_AIR
            * (w[COMPRESSOR] * enter[COMPRESSOR]
                - w[INTERCOOLER] * leave[INTERCOOLER]
                - w[RECIRCULATION] * leave[RECIRCULATION]
                - w[DRAW] * leave[DRAW]);
    rate[IC] =
        G_AIR
            * (w[INTERCOOLER] * enter[INTERCOOLER]
                - w[THROTTLE] * leave[THROTTLE]
                - w[LEAK] * leave[LEAK]);
    rate[IM] = G_AIR * (w[THROTTLE] * enter[THROTTLE] - w[CYLINDER_IN] * leave[CYLINDER_IN]);
    rate[EM] =
        G_EXH
            * (w[CYLINDER_OUT] * enter[CYLINDER_OUT]
                - w[TURBINE] * leave[TURBINE]
                - w[WASTEGATE] * leave[WASTEGATE]);
    rate[TO] =
        G_EXH
            * (w[TURBINE] * enter[TURBINE]
                + w[WASTEGATE] * enter[WASTEGATE]
                - w[EXHAUST] * leave[EXHAUST]);
  }
}
