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
import static org.boostwright.rig.plant.EngineFlows.IC;
import static org.boostwright.rig.plant.EngineFlows.IM;
import static org.boostwright.rig.plant.EngineFlows.INTERCOOLER;
import static org.boostwright.rig.plant.EngineFlows.LEAK;
import static org.boostwright.rig.plant.EngineFlows.RECIRCULATION;
import static org.boostwright.rig.plant.EngineFlows.THROTTLE;
import static org.boostwright.rig.plant.EngineFlows.TO;
import static org.boostwright.rig.plant.EngineFlows.TURBINE;
import static org.boostwright.rig.plant.EngineFlows.WASTEGATE;

/**
 * How strongly neighbouring volumes push flows into each other: the matrix {@code I - gh*A} of a
 * linearly implicit step, with A the slopes of the heat rates over m*T.
 *
 * <p>Along the chain of volumes A is tridiagonal, and the cylinders cut it in two: the exhaust side
 * follows the intake side but not the other way round. Written out term by term, because this is
 * the hottest code of the rig.
 */
final class PressureCoupling {
  private final double[] pa;

  private double gh;
  private double filterD;
  private double compressorU;
  private double compressorD;
  private double coolerU;
  private double coolerD;
  private double throttleU;
  private double throttleD;
  private double cylinderU;
  private double gasU;
  private double turbineU;
  private double turbineD;
  private double wastegateU;
  private double wastegateD;
  private double exhaustU;
  private double recirculationU;
  private double recirculationD;
  private double leakU;

  private double above0;
  private double above1;
  private double above2;
  private double above4;
  private double below1;
  private double below2;
  private double below3;
  private double below4;
  private double below5;
  private double inverse0;
  private double inverse1;
  private double inverse2;
  private double inverse3;
  private double inverse4;
  private double inverse5;

  /** Pressures per m*T of the volumes, Pa/(kg K). */
  PressureCoupling(double[] paPerKgK) {
    pa = paPerKgK;
  }

  /** Takes over the slopes of the flows and eliminates the matrix. */
  void prepare(EngineFlows flows, double gammaH) {
    gh = gammaH;
    double[] up = flows.up;
    double[] down = flows.down;
    double[] leave = flows.leaveK;
    double[] enter = flows.enterK;
    filterD = down[FILTER] * pa[AF];
    compressorU = up[COMPRESSOR] * pa[AF];
    compressorD = down[COMPRESSOR] * pa[C];
    coolerU = up[INTERCOOLER] * pa[C];
    coolerD = down[INTERCOOLER] * pa[IC];
    throttleU = up[THROTTLE] * pa[IC];
    throttleD = down[THROTTLE] * pa[IM];
    cylinderU = up[CYLINDER_IN] * pa[IM];
    gasU = up[CYLINDER_OUT] * pa[IM];
    turbineU = up[TURBINE] * pa[EM];
    turbineD = down[TURBINE] * pa[TO];
    wastegateU = up[WASTEGATE] * pa[EM];
    wastegateD = down[WASTEGATE] * pa[TO];
    exhaustU = up[EXHAUST] * pa[TO];
    recirculationU = up[RECIRCULATION] * pa[C];
    recirculationD = down[RECIRCULATION] * pa[AF];
    leakU = up[LEAK] * pa[IC];

    double air = -gh * EngineFlows.G_AIR;
    double gas = -gh * EngineFlows.G_EXH;
    double diagonal0 =
        1.0
            + air
                * (enter[FILTER] * filterD
                    - leave[COMPRESSOR] * compressorU
                    + enter[RECIRCULATION] * recirculationD);
    above0 = air * (enter[RECIRCULATION] * recirculationU - leave[COMPRESSOR] * compressorD);
    inverse0 = 1.0 / diagonal0;

    below1 =
        air * (enter[COMPRESSOR] * compressorU - leave[RECIRCULATION] * recirculationD) * inverse0;
    double diagonal1 =
        1.0
            + air
                * (enter[COMPRESSOR] * compressorD
                    - leave[INTERCOOLER] * coolerU
                    - leave[RECIRCULATION] * recirculationU);
    above1 = -air * leave[INTERCOOLER] * coolerD;
    inverse1 = 1.0 / (diagonal1 - below1 * above0);

    below2 = air * enter[INTERCOOLER] * coolerU * inverse1;
    double diagonal2 =
        1.0
            + air
                * (enter[INTERCOOLER] * coolerD
                    - leave[THROTTLE] * throttleU
                    - leave[LEAK] * leakU);
    above2 = -air * leave[THROTTLE] * throttleD;
    inverse2 = 1.0 / (diagonal2 - below2 * above1);

    below3 = air * enter[THROTTLE] * throttleU * inverse2;
    double diagonal3 = 1.0 + air * (enter[THROTTLE] * throttleD - leave[CYLINDER_IN] * cylinderU);
    inverse3 = 1.0 / (diagonal3 - below3 * above2);

    below4 = gas * enter[CYLINDER_OUT] * gasU * inverse3;
    double diagonal4 = 1.0 - gas * (leave[TURBINE] * turbineU + leave[WASTEGATE] * wastegateU);
    above4 = -gas * (leave[TURBINE] * turbineD + leave[WASTEGATE] * wastegateD);
    inverse4 = 1.0 / diagonal4;

    below5 = gas * (enter[TURBINE] * turbineU + enter[WASTEGATE] * wastegateU) * inverse4;
    double diagonal5 =
        1.0
            + gas
                * (enter[TURBINE] * turbineD
                    + enter[WASTEGATE] * wastegateD
                    - leave[EXHAUST] * exhaustU);
    inverse5 = 1.0 / (diagonal5 - below5 * above4);
  }

  /** Solves for the rates in place. */
  void solve(double[] rate) {
    double r0 = rate[AF];
    double r1 = rate[C] - below1 * r0;
    double r2 = rate[IC] - below2 * r1;
    double r3 = rate[IM] - below3 * r2;
    double r4 = rate[EM] - below4 * r3;
    double r5 = rate[TO] - below5 * r4;
    r5 *= inverse5;
    r4 = (r4 - above4 * r5) * inverse4;
    r3 *= inverse3;
    r2 = (r2 - above2 * r3) * inverse2;
    r1 = (r1 - above1 * r2) * inverse1;
    r0 = (r0 - above0 * r1) * inverse0;
    rate[AF] = r0;
    rate[C] = r1;
    rate[IC] = r2;
    rate[IM] = r3;
    rate[EM] = r4;
    rate[TO] = r5;
  }

  /** What these rates add to each flow within the step, kg/s. */
  void added(double[] rate, double[] flow) {
    double r0 = gh * rate[AF];
    double r1 = gh * rate[C];
    double r2 = gh * rate[IC];
    double r3 = gh * rate[IM];
    double r4 = gh * rate[EM];
    double r5 = gh * rate[TO];
    flow[FILTER] = filterD * r0;
    flow[COMPRESSOR] = compressorU * r0 + compressorD * r1;
    flow[INTERCOOLER] = coolerU * r1 + coolerD * r2;
    flow[THROTTLE] = throttleU * r2 + throttleD * r3;
    flow[CYLINDER_IN] = cylinderU * r3;
    flow[CYLINDER_OUT] = gasU * r3;
    flow[TURBINE] = turbineU * r4 + turbineD * r5;
    flow[WASTEGATE] = wastegateU * r4 + wastegateD * r5;
    flow[EXHAUST] = exhaustU * r5;
    flow[RECIRCULATION] = recirculationU * r1 + recirculationD * r0;
    flow[LEAK] = leakU * r2;
    flow[DRAW] = 0.0;
  }
}
