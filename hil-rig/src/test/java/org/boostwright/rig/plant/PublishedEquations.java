package org.boostwright.rig.plant;

import org.hipparchus.ode.OrdinaryDifferentialEquation;

/**
 * The published engine's equations written down a second time for an adaptive integrator: masses
 * and temperatures of six volumes and rotor speed, straight from the formulas, sharing no code with
 * the engine under test.
 *
 * <p>State: m and T of filter, compressor, intercooler, intake, exhaust and turbine outlet volume
 * in turn, then rotor speed.
 */
final class PublishedEquations implements OrdinaryDifferentialEquation {
  static final double[] VOLUME = {0.015085, 0.006, 0.0047, 0.0018, 0.00159, 0.02};
  static final double[] GAS = {287.2, 287.2, 287.2, 287.2, 290.0, 290.0};

  private static final double PA = 101300.0;
  private static final double TA = 293.0;

  final double rpm;
  final double lift;
  final double k1;
  final double k2;
  final double peak;
  final double inertia;
  double throttlePct;

  PublishedEquations(double rpm, double lift, double k1, double k2, double peak, double inertia) {
    this.rpm = rpm;
    this.lift = lift;
    this.k1 = k1;
    this.k2 = k2;
    this.peak = peak;
    this.inertia = inertia;
  }

  @Override
  public int getDimension() {
    return 13;
  }

  static double pressure(double[] y, int i) {
    return y[2 * i] * GAS[i] * y[2 * i + 1] / VOLUME[i];
  }

  @Override
  public double[] computeDerivatives(double time, double[] y) {
    double[] p = new double[6];
    double[] t = new double[6];
    for (int i = 0; i < 6; i++) {
      p[i] = pressure(y, i);
      t[i] = y[2 * i + 1];
    }
    double w = y[12];
    double filter = pipe(PA, p[0], TA, 1.59598e8, 1600.0);
    double cooler = pipe(p[1], p[2], t[1], 3.4678e8, 800.0);
    double tail = pipe(p[5], PA, t[5], 2.1027e8, 100.0);
    double angle = (throttlePct * 0.86 + 4.0) / 180.0 * Math.PI;
    double area = 5.18849e-6 - 6.38593e-5 * angle + 1.23068e-3 * Math.pow(angle, 2);
    double throttle = nozzle(area, p[2], p[3], t[2], 287.2, 1.4);

    double pi = p[1] / p[0];
    double clamped = Math.max(pi, 1.0);
    double u = w * 0.0394 / 2.0;
    double rise = Math.pow(clamped, 0.4 / 1.4) - 1.0;
    double psi = 2.0 * 1005.2 * t[0] * rise / Math.pow(u, 2);
    double phi = Math.sqrt(Math.max(0.0, (1.0 - 0.31972 * Math.pow(psi, 2)) / 18.1518));
    double comp = p[0] * u * Math.PI * Math.pow(0.0394, 2) / (2.0 * 287.2 * t[0]) * phi;
    if (pi < 1.0) {
      comp = comp * (1.0 - (2.0 - 2.0 * pi)) + 0.2 * (2.0 - 2.0 * pi);
    }
    double corrected = comp * Math.sqrt(t[0] / 293.15) / (p[0] / 101300.0);
    double a = corrected - 0.13473;
    double b = Math.sqrt(clamped - 1.0) + 1.0 - 2.09997;
    double etaC =
        Math.max(0.3, 0.736335 - (35.0283 * a * a + 2.0 * -3.31011 * a * b + 0.730446 * b * b));
    double tComp = t[0] * (1.0 + rise / etaC);
    double torqueC = 1005.2 * comp * (tComp - t[0]) / w;

    double effect = -0.564164 + 0.00465003 * (TA + t[1]) / 2.0 - 2.99972 * cooler;
    double tCool = Math.max(TA, t[1] - Math.max(0.0, (t[1] - TA) * effect));

    double kpa = Math.max(p[3], 25000.0) / 1000.0;
    double c =
        1.7338e-9 * Math.pow(kpa, 4)
            - 8.3904e-7 * Math.pow(kpa, 3)
            + 1.3625e-4 * Math.pow(kpa, 2)
            - 7.4009e-3 * kpa
            + 0.93581;
    double eta = c * (10.8 - Math.pow(p[4] / p[3], 1.0 / 1.3)) / 9.8;
    double rad = rpm * 2.0 * Math.PI / 60.0;
    double air = eta * 1.953e-3 * rad * p[3] / (2.0 * Math.PI * 2.0 * 287.2 * t[3]);
    double gas = air + air / 14.0;
    double tOut = 1146.83 + 843.36 * gas;
    double pipeArea = Math.PI * 0.04 * 0.17;
    double tPort = TA + (tOut - TA) * Math.exp(-36.46 * pipeArea / (gas / 4.0 * 1256.67));

    double expansion = Math.min(p[5] / p[4], 1.0 - 1e-9);
    double turbine =
        p[4]
            / 1000.0
            * k1
            * Math.sqrt(Math.max(1e-9, 1.0 - Math.pow(expansion, k2)))
            / Math.sqrt(t[4]);
    double fall = 1.0 - Math.pow(expansion, 0.3 / 1.3);
    double ratio = w * 0.0383 / 2.0 / Math.sqrt(2.0 * 1256.67 * t[4] * fall);
    double etaT = Math.max(0.3, peak * (1.0 - Math.pow((ratio - 0.41274) / 0.41274, 2)));
    double tTurb = t[4] * (1.0 - etaT * fall);
    double torqueT = 1256.67 * turbine * (t[4] - tTurb) / w;
    double gate = nozzle(4.9087e-4 * lift, p[4], p[5], t[4], 290.0, 1.3);
    double mixed = (turbine * tTurb + gate * t[4]) / (turbine + gate);

    double[] dy = new double[13];
    volume(dy, y, 0, filter, TA, comp);
    volume(dy, y, 1, comp, tComp, cooler);
    volume(dy, y, 2, cooler, tCool, throttle);
    volume(dy, y, 3, throttle, t[2], air);
    volume(dy, y, 4, gas, tPort, turbine + gate);
    volume(dy, y, 5, turbine + gate, mixed, tail);
    dy[12] = (torqueT - torqueC - 9.7187e-7 * w) / inertia;
    return dy;
  }

  private static void volume(double[] dy, double[] y, int i, double in, double tIn, double out) {
    double r = GAS[i];
    double cv = r / (i < 4 ? 0.4 : 0.3);
    double m = y[2 * i];
    double t = y[2 * i + 1];
    dy[2 * i] = in - out;
    dy[2 * i + 1] = (in * cv * (tIn - t) + r * (tIn * in - t * out)) / (m * cv);
  }

  private static double pipe(double up, double down, double t, double h, double linear) {
    double dp = Math.max(0.0, up - down);
    double root = dp < linear ? dp / Math.sqrt(linear) : Math.sqrt(dp);
    return Math.sqrt(up / (h * t)) * root;
  }

  private static double nozzle(double area, double up, double down, double t, double r, double g) {
    double ratio = Math.min(1.0, down / up);
    double critical = Math.pow(2.0 / (g + 1.0), g / (g - 1.0));
    double psi;
    if (ratio > 0.99) {
      psi = isentropic(0.99, g) * (1.0 - ratio) / 0.01;
    } else {
      psi = isentropic(Math.max(ratio, critical), g);
    }
    return area * up / Math.sqrt(r * t) * psi;
  }

  private static double isentropic(double x, double g) {
    return Math.sqrt(2.0 * g / (g - 1.0) * (Math.pow(x, 2.0 / g) - Math.pow(x, (g + 1.0) / g)));
  }
}
