package org.boostwright.rig.plant;

import static org.boostwright.rig.plant.EngineFlows.AF;
import static org.boostwright.rig.plant.EngineFlows.C;
import static org.boostwright.rig.plant.EngineFlows.EM;
import static org.boostwright.rig.plant.EngineFlows.FLOWS;
import static org.boostwright.rig.plant.EngineFlows.IC;
import static org.boostwright.rig.plant.EngineFlows.IM;
import static org.boostwright.rig.plant.EngineFlows.NODES;
import static org.boostwright.rig.plant.EngineFlows.TO;

/**
 * The mean-value engine as six gas volumes and a rotor: {@code dm/dt = sum W_in - sum W_out},
 * {@code d(mT)/dt = gamma*(sum W_in*T_in - sum W_out*T)}, {@code p = R*mT/V}.
 *
 * <p>Mass m and m*T are the states, so that balances close exactly. An open throttle makes a pole
 * near -14,000 1/s, so a step is linearly implicit: the two-stage Rosenbrock method ROS2 (Verwer,
 * Spee, Blom and Hundsdorfer, SIAM J. Sci. Comput. 20, 1999, 1456-1480), second order for any
 * approximate Jacobian. Only the slopes of the flows over the pressures are taken into it; along
 * the chain of volumes that is a tridiagonal matrix.
 */
final class Engine {
  static final double[] VOLUME_M3 = {15.085e-3, 6.0e-3, 4.7e-3, 1.8e-3, 1.59e-3, 20e-3};
  private static final double GAMMA = 1.0 + 1.0 / Math.sqrt(2.0);
  private static final double FRICTION = 9.7187e-7;

  /** Slowest rotor speed of the model, rad/s; its maps have no meaning below. */
  private static final double MIN_ROTOR = 200.0;

  // Volume each flow leaves and enters; -1 is outside.
  private static final int[] FROM = {-1, AF, C, IC, IM, -1, EM, EM, TO, C, IC, C};
  private static final int[] INTO = {AF, C, IC, IM, -1, EM, TO, TO, -1, AF, -1, -1};
  // Volume whose pressure drives each flow from above; the cylinders' exhaust follows the intake.
  private static final int[] DRIVEN_BY = {-1, AF, C, IC, IM, IM, EM, EM, TO, C, IC, -1};

  final EngineFlows flows;
  final double[] p = new double[NODES];
  final double[] t = new double[NODES];
  final double[] m = new double[NODES];
  final double[] mt = new double[NODES];

  /** Mass moved by each flow since construction, kg; what it took along and brought, kg K. */
  final double[] totalKg = new double[FLOWS];

  final double[] totalLeftKgK = new double[FLOWS];
  final double[] totalEnteredKgK = new double[FLOWS];

  double rotor = 2000.0;

  private final double[] paPerKgK = new double[NODES];
  private final double[] gamma = new double[NODES];
  private final double[] mStart = new double[NODES];
  private final double[] mtStart = new double[NODES];
  private final double[] rate1 = new double[NODES];
  private final double[] rate2 = new double[NODES];
  private final double[] pivot = new double[NODES];
  private final double[] below = new double[NODES];
  private final double[] above = new double[NODES];
  private final double[] up = new double[FLOWS];
  private final double[] down = new double[FLOWS];
  private final double[] leave = new double[FLOWS];
  private final double[] enter = new double[FLOWS];
  private final double[] flow1 = new double[FLOWS];

  /** An engine at standstill, filled with ambient air. */
  Engine(EngineParams params, Atmosphere atmosphere) {
    flows = new EngineFlows(params);
    for (int i = 0; i < NODES; i++) {
      boolean air = i < EM;
      paPerKgK[i] = (air ? EngineFlows.R_AIR : EngineFlows.R_EXH) / VOLUME_M3[i];
      gamma[i] = air ? EngineFlows.G_AIR : EngineFlows.G_EXH;
    }
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
    double gh = GAMMA * h;
    flows.evaluate(p, t, rotor);
    double rotorStart = rotor;
    double rotor1 = rotorRate(inertia);
    keepSlopes();
    factor(gh);
    heatRates(rate1);
    solve(rate1);
    for (int i = 0; i < FLOWS; i++) {
      flow1[i] = flows.flow[i] + gh * slopeTimes(i, rate1);
    }
    System.arraycopy(m, 0, mStart, 0, NODES);
    System.arraycopy(mt, 0, mtStart, 0, NODES);
    for (int i = 0; i < FLOWS; i++) {
      move(i, h * flow1[i]);
    }
    for (int i = 0; i < NODES; i++) {
      mt[i] += h * rate1[i];
    }
    rotor = Math.max(MIN_ROTOR, rotorStart + h * rotor1);
    refresh();

    flows.engineRadPerSecond = radEnd;
    flows.lift = liftEnd;
    flows.recirculationM2 = recirculationEndM2;
    flows.evaluate(p, t, rotor);
    double rotor2 = rotorRate(inertia);
    heatRates(rate2);
    for (int i = 0; i < NODES; i++) {
      rate2[i] -= 2.0 * rate1[i];
    }
    solve(rate2);
    System.arraycopy(mStart, 0, m, 0, NODES);
    for (int i = 0; i < FLOWS; i++) {
      double added = gh * slopeTimes(i, rate2) - 2.0 * flow1[i];
      double now = flows.flow[i];
      double kg = h * (1.5 * flow1[i] + 0.5 * (now + added));
      move(i, kg);
      totalKg[i] += kg;
      double own = h * (1.5 * flow1[i] + 0.5 * added);
      totalLeftKgK[i] += own * leave[i] + 0.5 * h * now * flows.leaveK[i];
      totalEnteredKgK[i] += own * enter[i] + 0.5 * h * now * flows.enterK[i];
    }
    for (int i = 0; i < NODES; i++) {
      mt[i] = mtStart[i] + h * (1.5 * rate1[i] + 0.5 * rate2[i]);
    }
    rotor = Math.max(MIN_ROTOR, rotorStart + 0.5 * h * (rotor1 + rotor2));
    refresh();
  }

  /** Pressures and temperatures from the states. */
  void refresh() {
    for (int i = 0; i < NODES; i++) {
      p[i] = mt[i] * paPerKgK[i];
      t[i] = mt[i] / m[i];
    }
  }

  private double rotorRate(double inertia) {
    return (flows.torqueTurbine - flows.torqueCompressor - FRICTION * rotor) / inertia;
  }

  private void move(int i, double kg) {
    if (FROM[i] >= 0) {
      m[FROM[i]] -= kg;
    }
    if (INTO[i] >= 0) {
      m[INTO[i]] += kg;
    }
  }

  /** Slopes over m*T of the driving volumes, and the temperatures they belong to. */
  private void keepSlopes() {
    for (int i = 0; i < FLOWS; i++) {
      up[i] = DRIVEN_BY[i] >= 0 ? flows.up[i] * paPerKgK[DRIVEN_BY[i]] : 0.0;
      down[i] = INTO[i] >= 0 ? flows.down[i] * paPerKgK[INTO[i]] : 0.0;
      leave[i] = flows.leaveK[i];
      enter[i] = flows.enterK[i];
    }
  }

  private double slopeTimes(int i, double[] rate) {
    double sum = DRIVEN_BY[i] >= 0 ? up[i] * rate[DRIVEN_BY[i]] : 0.0;
    return INTO[i] >= 0 ? sum + down[i] * rate[INTO[i]] : sum;
  }

  private void heatRates(double[] rate) {
    for (int i = 0; i < NODES; i++) {
      rate[i] = 0.0;
    }
    for (int i = 0; i < FLOWS; i++) {
      double w = flows.flow[i];
      if (FROM[i] >= 0) {
        rate[FROM[i]] -= gamma[FROM[i]] * w * flows.leaveK[i];
      }
      if (INTO[i] >= 0) {
        rate[INTO[i]] += gamma[INTO[i]] * w * flows.enterK[i];
      }
    }
  }

  /** Sets up and eliminates {@code I - gh*A}; {@code below} then holds the multipliers. */
  private void factor(double gh) {
    for (int i = 0; i < NODES; i++) {
      pivot[i] = 1.0;
      below[i] = 0.0;
      above[i] = 0.0;
    }
    for (int i = 0; i < FLOWS; i++) {
      if (FROM[i] >= 0) {
        couple(FROM[i], i, gh * gamma[FROM[i]] * leave[i]);
      }
      if (INTO[i] >= 0) {
        couple(INTO[i], i, -gh * gamma[INTO[i]] * enter[i]);
      }
    }
    for (int i = 1; i < NODES; i++) {
      below[i] /= pivot[i - 1];
      pivot[i] -= below[i] * above[i - 1];
    }
  }

  private void couple(int row, int flow, double scale) {
    if (DRIVEN_BY[flow] >= 0) {
      add(row, DRIVEN_BY[flow], scale * up[flow]);
    }
    if (INTO[flow] >= 0) {
      add(row, INTO[flow], scale * down[flow]);
    }
  }

  private void add(int row, int column, double value) {
    if (column == row) {
      pivot[row] += value;
    } else if (column < row) {
      below[row] += value;
    } else {
      above[row] += value;
    }
  }

  private void solve(double[] rate) {
    for (int i = 1; i < NODES; i++) {
      rate[i] -= below[i] * rate[i - 1];
    }
    rate[NODES - 1] /= pivot[NODES - 1];
    for (int i = NODES - 2; i >= 0; i--) {
      rate[i] = (rate[i] - above[i] * rate[i + 1]) / pivot[i];
    }
  }
}
