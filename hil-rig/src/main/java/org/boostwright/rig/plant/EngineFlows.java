package org.boostwright.rig.plant;

/**
 * All flows of the mean-value engine at one instant, with their slopes over the pressures on both
 * sides and the temperatures they carry.
 *
 * <p>Structure and constants: the engine case study of the public MIT-licensed repository
 * faultdiagnosistoolbox/pyfaultdiagnosistoolbox, src/Engine, commit 661b993; background Eriksson
 * and Nielsen, <i>Modeling and Control of Engines and Drivelines</i>, Wiley 2014. Added by the
 * project: recirculation valve, charge-air leak, air drawn by the boost valve, fuel cut.
 */
final class EngineFlows {
  static final int AF = 0;
  static final int C = 1;
  static final int IC = 2;
  static final int IM = 3;
  static final int EM = 4;
  static final int TO = 5;
  static final int NODES = 6;

  static final int FILTER = 0;
  static final int COMPRESSOR = 1;
  static final int INTERCOOLER = 2;
  static final int THROTTLE = 3;
  static final int CYLINDER_IN = 4;
  static final int CYLINDER_OUT = 5;
  static final int TURBINE = 6;
  static final int WASTEGATE = 7;
  static final int EXHAUST = 8;
  static final int RECIRCULATION = 9;
  static final int LEAK = 10;
  static final int DRAW = 11;
  static final int FLOWS = 12;

  static final double R_AIR = 287.2;
  static final double CP_AIR = 1005.2;
  static final double R_EXH = 290.0;
  static final double CP_EXH = 1256.67;
  static final double G_AIR = 1.4;
  static final double G_EXH = 1.3;

  private static final double FILTER_H = 1.59598e8;
  private static final double FILTER_LINEAR_PA = 1600.0;
  private static final double INTERCOOLER_H = 3.4678e8;
  private static final double INTERCOOLER_LINEAR_PA = 800.0;
  private static final double EXHAUST_H = 2.1027e8;
  private static final double EXHAUST_LINEAR_PA = 100.0;
  private static final double COMPRESSOR_M = 0.0394;
  private static final double TURBINE_M = 0.0383;
  private static final double BEST_BLADE_SPEED_RATIO = 0.41274;
  private static final double WASTEGATE_M2 = 4.9087e-4;
  private static final double EXPANSION_AIR = (G_AIR - 1.0) / G_AIR;
  private static final double EXPANSION_EXH = (G_EXH - 1.0) / G_EXH;
  private static final double COMPRESSION_RATIO = 10.8;
  private static final double PIPE_COOLING = 36.46 * Math.PI * 0.04 * 0.17;
  // Own assumption: air pumped without burning leaves a little warmer than it came.
  private static final double CUT_HEATING_K = 150.0;

  private static final GasFlow AIR = new GasFlow(G_AIR);
  private static final GasFlow EXH = new GasFlow(G_EXH);

  final double[] flow = new double[FLOWS];
  final double[] up = new double[FLOWS];
  final double[] down = new double[FLOWS];
  final double[] leaveK = new double[FLOWS];
  final double[] enterK = new double[FLOWS];

  double torqueTurbine;
  double torqueCompressor;
  double compressorEfficiency;
  double turbineEfficiency;

  // Boundary conditions of this instant.
  double ambientPa = 101.3e3;
  double ambientK = 293.0;
  double engineRadPerSecond;
  double throttleM2;
  double lift;
  double recirculationM2;
  double leakM2;
  boolean fuelCut;

  private final TurboParams turbo;
  private final double displacementM3;

  EngineFlows(EngineParams params) {
    turbo = params.turbo();
    displacementM3 = params.displacementM3();
  }

  /** Throttle area, m2, for 0 to 100 percent. */
  static double throttleArea(double pct) {
    double x = Math.toRadians(pct * 0.86 + 4.0);
    return 5.18849e-6 - 6.38593e-5 * x + 1.23068e-3 * x * x;
  }

  /** Flows at pressures p (Pa) and temperatures t (K) of the six volumes, rotor at w (rad/s). */
  void evaluate(double[] p, double[] t, double w) {
    restriction(FILTER, ambientPa, p[AF], ambientK, t[AF], FILTER_H, FILTER_LINEAR_PA);
    compressor(p[AF], p[C], t[AF], w);
    restriction(INTERCOOLER, p[C], p[IC], t[C], t[IC], INTERCOOLER_H, INTERCOOLER_LINEAR_PA);
    if (flow[INTERCOOLER] > 0.0) {
      enterK[INTERCOOLER] = cooled(t[C], flow[INTERCOOLER]);
    }
    nozzle(THROTTLE, throttleM2, p[IC], p[IM], t[IC], t[IM]);
    cylinders(p[IM], p[EM], t[IM]);
    exhaustSide(p[EM], p[TO], t[EM], t[TO], w);
    restriction(EXHAUST, p[TO], ambientPa, t[TO], ambientK, EXHAUST_H, EXHAUST_LINEAR_PA);
    if (recirculationM2 > 0.0) {
      nozzle(RECIRCULATION, recirculationM2, p[C], p[AF], t[C], t[AF]);
    } else {
      none(RECIRCULATION);
    }
    if (leakM2 > 0.0) {
      nozzle(LEAK, leakM2, p[IC], ambientPa, t[IC], ambientK);
    } else {
      none(LEAK);
    }
    leaveK[DRAW] = t[C];
  }

  private void none(int i) {
    flow[i] = 0.0;
    up[i] = 0.0;
    down[i] = 0.0;
  }

  private void restriction(
      int i, double p1, double p2, double t1, double t2, double h, double linearPa) {
    boolean forward = p1 >= p2;
    double pUp = forward ? p1 : p2;
    double tUp = forward ? t1 : t2;
    double dp = forward ? p1 - p2 : p2 - p1;
    double s = Math.sqrt(pUp / (h * tUp));
    double w;
    double slope;
    if (dp < linearPa) {
      slope = s / Math.sqrt(linearPa);
      w = slope * dp;
    } else {
      double root = Math.sqrt(dp);
      w = s * root;
      slope = 0.5 * s / root;
    }
    set(i, forward, w, slope + 0.5 * w / pUp, -slope, tUp);
  }

  private void nozzle(int i, double area, double p1, double p2, double t1, double t2) {
    boolean forward = p1 >= p2;
    double pUp = forward ? p1 : p2;
    double tUp = forward ? t1 : t2;
    double ratio = forward ? p2 / p1 : p1 / p2;
    double u = AIR.needsPower(ratio) ? Math.pow(ratio, AIR.inverseGamma()) : 1.0;
    nozzle(i, forward, area / Math.sqrt(R_AIR * tUp), pUp, tUp, ratio, u, AIR);
  }

  private void nozzle(
      int i,
      boolean forward,
      double scale,
      double pUp,
      double tUp,
      double ratio,
      double u,
      GasFlow gas) {
    double psi = gas.psi(ratio, u);
    double slope = gas.slope(ratio, u, psi);
    set(i, forward, scale * pUp * psi, scale * (psi - ratio * slope), scale * slope, tUp);
  }

  /** Writes a flow given in its own direction, with slopes over its own up- and downstream. */
  private void set(int i, boolean forward, double w, double slopeUp, double slopeDown, double k) {
    flow[i] = forward ? w : -w;
    up[i] = forward ? slopeUp : -slopeDown;
    down[i] = forward ? slopeDown : -slopeUp;
    leaveK[i] = k;
    enterK[i] = k;
  }

  private void compressor(double pIn, double pOut, double tIn, double w) {
    double u = 0.5 * COMPRESSOR_M * w;
    double ratio = pOut / pIn;
    // A compressor that is sucked through neither heats the air nor takes or gives work.
    double power = ratio > 1.0 ? Math.pow(ratio, EXPANSION_AIR) : 1.0;
    double psiPerRise = 2.0 * CP_AIR * tIn / (u * u);
    double psi = psiPerRise * (power - 1.0);
    double inner = (1.0 - 0.31972 * psi * psi) / 18.1518;
    double scale = u * Math.PI * COMPRESSOR_M * COMPRESSOR_M / (2.0 * R_AIR * tIn);
    double mass = 0.0;
    double overRatio = 0.0;
    if (inner > 0.0) {
      double phi = Math.sqrt(inner);
      mass = pIn * scale * phi;
      double psiOverRatio = psiPerRise * EXPANSION_AIR * power / ratio;
      overRatio = -pIn * scale * 0.31972 * psi / 18.1518 / Math.max(phi, 0.02) * psiOverRatio;
    }
    if (ratio < 1.0) {
      double k = 2.0 - 2.0 * ratio;
      overRatio = overRatio * (1.0 - k) + 2.0 * mass - 0.4;
      mass = mass * (1.0 - k) + 0.2 * k;
    }
    double corrected = mass * Math.sqrt(tIn / 293.15) / (pIn / 101.3e3);
    double a = corrected - 0.13473;
    double b = (ratio > 1.0 ? Math.sqrt(ratio - 1.0) : 0.0) + 1.0 - 2.09997;
    double efficiency =
        turbo.compressorPeakEfficiency()
            - (35.0283 * a * a - 2.0 * 3.31011 * a * b + 0.730446 * b * b);
    compressorEfficiency = efficiency > 0.3 ? efficiency : 0.3;
    double tOut = tIn * (1.0 + (power - 1.0) / compressorEfficiency);
    flow[COMPRESSOR] = mass;
    down[COMPRESSOR] = overRatio / pIn;
    up[COMPRESSOR] = mass / pIn - ratio * overRatio / pIn;
    leaveK[COMPRESSOR] = tIn;
    enterK[COMPRESSOR] = tOut;
    torqueCompressor = CP_AIR * mass * (tOut - tIn) / w;
  }

  private double cooled(double t, double w) {
    double effect = -0.564164 + 0.00465003 * 0.5 * (ambientK + t) - 2.99972 * w;
    return Math.max(ambientK, t - Math.max(0.0, (t - ambientK) * effect));
  }

  private void cylinders(double pIm, double pEm, double tIm) {
    double p = Math.max(pIm, 25e3) * 1e-3;
    double c = (((1.7338e-9 * p - 8.3904e-7) * p + 1.3625e-4) * p - 7.4009e-3) * p + 0.93581;
    double volumetric =
        c
            * Math.max(0.0, COMPRESSION_RATIO - Math.pow(pEm / pIm, 1.0 / 1.3))
            / (COMPRESSION_RATIO - 1.0);
    double perPa = volumetric * displacementM3 * engineRadPerSecond / (4.0 * Math.PI * R_AIR * tIm);
    double air = perPa * pIm;
    double gas = fuelCut ? air : air * (15.0 / 14.0);
    flow[CYLINDER_IN] = air;
    up[CYLINDER_IN] = perPa;
    down[CYLINDER_IN] = 0.0;
    leaveK[CYLINDER_IN] = tIm;
    flow[CYLINDER_OUT] = gas;
    up[CYLINDER_OUT] = fuelCut ? perPa : perPa * (15.0 / 14.0);
    down[CYLINDER_OUT] = 0.0;
    double hot = fuelCut ? tIm + CUT_HEATING_K : 1146.83 + 843.36 * gas;
    enterK[CYLINDER_OUT] =
        gas > 0.0
            ? ambientK + (hot - ambientK) * Math.exp(-PIPE_COOLING / (0.25 * gas * CP_EXH))
            : ambientK;
  }

  private void exhaustSide(double pEm, double pTo, double tEm, double tTo, double w) {
    boolean forward = pEm >= pTo;
    double ratio = Math.min(pTo / pEm, 1.0 - 1e-9);
    double log = Math.log(ratio);
    double k2 = turbo.turbineK2();
    double power = Math.exp(k2 * log);
    double root = Math.sqrt(Math.max(1e-9, 1.0 - power));
    double scale = 1e-3 * turbo.turbineK1() / Math.sqrt(tEm);
    double mass = pEm * scale * root;
    double expansion = Math.exp(EXPANSION_EXH * log);
    double fall = 1.0 - expansion;
    double bladeSpeed = 0.5 * TURBINE_M * w / Math.sqrt(2.0 * CP_EXH * tEm * fall);
    double off = (bladeSpeed - BEST_BLADE_SPEED_RATIO) / BEST_BLADE_SPEED_RATIO;
    double efficiency = turbo.turbinePeakEfficiency() * (1.0 - off * off);
    turbineEfficiency = efficiency > 0.3 ? efficiency : 0.3;
    double drop = tEm * turbineEfficiency * fall;
    double bend = pEm * scale * 0.5 * k2 * power / root;
    flow[TURBINE] = mass;
    up[TURBINE] = scale * root + bend / pEm;
    down[TURBINE] = -bend / pTo;
    leaveK[TURBINE] = tEm;
    enterK[TURBINE] = tEm - drop;
    torqueTurbine = mass * CP_EXH * drop / w;
    if (lift > 0.0) {
      double tUp = forward ? tEm : tTo;
      double flowRatio = forward ? ratio : pEm / pTo;
      // ratio^(1/gamma) = ratio/ratio^((gamma - 1)/gamma), and the turbine has that already.
      double u = forward ? ratio / expansion : Math.pow(flowRatio, EXH.inverseGamma());
      nozzle(
          WASTEGATE,
          forward,
          WASTEGATE_M2 * lift / Math.sqrt(R_EXH * tUp),
          forward ? pEm : pTo,
          tUp,
          flowRatio,
          u,
          EXH);
    } else {
      none(WASTEGATE);
    }
  }
}
