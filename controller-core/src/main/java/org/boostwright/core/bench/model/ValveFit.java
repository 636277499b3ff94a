package org.boostwright.core.bench.model;

import java.util.Arrays;
import java.util.List;

/**
 * Fits the valve model to settled means inside the window and to the edges of the window.
 *
 * <p>Inside the window the means depend only on {@code d*T + t_off - t_on}; the edges, searched for
 * at two frequencies, tell t_on and t_off apart. Rest pressure and leak-down enter as two more
 * observations, the critical ratio as a wide one (0.35 +- 0.1, the range of ISO 6358 valves; for
 * filling 0.3 +- 0.2, because a sagging supply changes its shape). The means' deviations carry a
 * floor for what the model leaves out; when they still scatter more, all intervals widen with the
 * scatter.
 */
public final class ValveFit {
  /** Model error of a mean in the fit's weights, share of supply gauge pressure. */
  private static final double MODEL_SHARE = 0.006;

  private static final double TWO_SIDED_95 = 1.96;
  private static final double CRITICAL_RATIO = 0.35;
  private static final double CRITICAL_RATIO_SIGMA = 0.1;
  private static final double FILL_CRITICAL_RATIO = 0.3;
  private static final double FILL_CRITICAL_RATIO_SIGMA = 0.2;
  // A sample of the sensor and its lag; curvature the isothermal model leaves out.
  private static final double TIME_SIGMA_SECONDS = 0.0025;
  private static final double TIME_SIGMA_SHARE = 0.03;
  private static final double RESPONSE_SHARE = 0.9;
  // Rate times the time for 90 % of the way, from 80 to 100 kPa gauge, b 0.2 to 0.5.
  private static final double FILL_RATE_TIMES_SECONDS = 0.65;
  private static final double VENT_RATE_TIMES_SECONDS = 0.75;
  private static final double SHORTEST_SECONDS = 0.002;
  private static final double UNKNOWN_SAG_SHARE = 0.05;
  private static final int PARAMETERS = 8;
  private static final double BEND = 0.02;
  private static final double BENT_AWAY = 30.0;

  private final List<EdgeBracket> edges;
  private final List<MeanPoint> points;
  private final double ambient;
  private final double restKpaAbs;
  private final double restSigma;
  private final double leak;
  private final double leakSigma;
  private final double floorKpa;
  private double ventTime = Double.NaN;
  private double fillTime = Double.NaN;
  private double sagHz;
  private double sagDuty;
  private double sagKpa = Double.NaN;
  private double sagSigmaKpa;

  /**
   * @param edges brackets of both edges, at least one each
   * @param points settled means inside the window
   * @param ambientKpaAbs ambient pressure, kPa absolute
   * @param restKpaAbs line pressure at rest, kPa absolute
   * @param restSigmaKpa its standard deviation, kPa
   * @param leakRatePerSecond leak from the leak-down, 1/s
   * @param leakSigmaPerSecond its standard deviation, 1/s
   */
  public ValveFit(
      List<EdgeBracket> edges,
      List<MeanPoint> points,
      double ambientKpaAbs,
      double restKpaAbs,
      double restSigmaKpa,
      double leakRatePerSecond,
      double leakSigmaPerSecond) {
    this.edges = List.copyOf(edges);
    this.points = List.copyOf(points);
    this.ambient = ambientKpaAbs;
    this.restKpaAbs = restKpaAbs;
    this.restSigma = Math.max(restSigmaKpa, 0.05);
    this.leak = leakRatePerSecond;
    this.leakSigma = Math.max(leakSigmaPerSecond, 0.1 * leakRatePerSecond + 1e-3);
    this.floorKpa = MODEL_SHARE * (restKpaAbs - ambientKpaAbs);
    if (mean(true) == 0.0 || mean(false) == 0.0) {
      throw new IllegalArgumentException("the fit needs both edges of the window");
    }
  }

  private double mean(boolean onEdge) {
    double sum = 0.0;
    double weights = 0.0;
    for (EdgeBracket edge : edges) {
      if (edge.onEdge() == onEdge) {
        double w = 1.0 / (edge.sigmaSeconds() * edge.sigmaSeconds());
        sum += w * edge.middleSeconds();
        weights += w;
      }
    }
    return weights == 0.0 ? 0.0 : sum / weights;
  }

  /**
   * Runs the fit.
   *
   * @param ratesGuess chamber rates to start from where no response was measured, 1/s
   */
  public ValveFitResult fit(double ratesGuess) {
    double[] start = {
      Math.log(mean(true)),
      Math.log(mean(false)),
      Math.log(rate(FILL_RATE_TIMES_SECONDS, fillTime - mean(false), ratesGuess)),
      Math.log(rate(VENT_RATE_TIMES_SECONDS, ventTime - mean(true), ratesGuess)),
      leak,
      CRITICAL_RATIO,
      restKpaAbs,
      FILL_CRITICAL_RATIO
    };
    double[] scale = {0.1, 0.1, 0.3, 0.3, 0.1 + leak, 0.1, 1.0, 0.1};
    int count = edges.size() + points.size() + 6;
    FitResult fit = new LeastSquares(this::residuals, count).fit(start, scale);
    double[] residuals = new double[count];
    residuals(fit.parameters(), residuals);
    return result(fit, residuals);
  }

  private static double rate(double product, double seconds, double otherwise) {
    return seconds > SHORTEST_SECONDS ? product / seconds : otherwise;
  }

  /**
   * Tells the fit how far the supply sagged while the valve worked, so that a weak supply is not
   * taken for a narrow valve: {@code p1 = ps - k*m} lowers the choked filling flow to {@code 1/(1 +
   * k*rate)} of what the valve alone would pass.
   *
   * @param frequencyHz at which PWM frequency, Hz
   * @param dutyFraction at which duty
   * @param kpa mean sag, kPa
   * @param sigmaKpa its standard deviation, kPa
   */
  public ValveFit withSag(double frequencyHz, double dutyFraction, double kpa, double sigmaKpa) {
    sagHz = frequencyHz;
    sagDuty = dutyFraction;
    sagKpa = kpa;
    sagSigmaKpa = sigmaKpa;
    return this;
  }

  /**
   * Tells the fit how long the line took for 90 % of the way; without it a slow line's speed does
   * not show in its means.
   *
   * @param ventSeconds from energising, s
   * @param fillSeconds from switching off, s
   */
  public ValveFit withResponse(double ventSeconds, double fillSeconds) {
    ventTime = ventSeconds;
    fillTime = fillSeconds;
    return this;
  }

  private static double timeSigma(double seconds) {
    return Math.hypot(TIME_SIGMA_SECONDS, TIME_SIGMA_SHARE * seconds);
  }

  /** Filling rate of the valve alone over the fitted one, and its relative deviation. */
  private double[] sagFactor(ValveModel valve, double supply) {
    if (Double.isNaN(sagKpa)) {
      return new double[] {1.0, UNKNOWN_SAG_SHARE};
    }
    double flow = valve.steadyInside(sagHz, sagDuty, supply, ambient).rippleKpa() * sagHz;
    double perKpa = valve.fillRatePerSecond() / Math.max(flow, 1.0);
    double factor = 1.0 + perKpa * Math.max(0.0, sagKpa);
    return new double[] {factor, perKpa * sagSigmaKpa / factor};
  }

  private ValveFitResult result(FitResult fit, double[] residuals) {
    double[] x = fit.parameters();
    double[] sag = sagFactor(valve(x), x[6]);
    double tight = Math.log(sag[0]);
    double sum = 0.0;
    for (int i = 0; i < points.size(); i++) {
      double sigma = sigma(points.get(i));
      sum += square(residuals[edges.size() + i] * sigma);
    }
    double widening = Math.sqrt(Math.max(1.0, fit.reducedChiSquare()));
    double half = TWO_SIDED_95 * widening;
    double ratioSigma =
        Math.sqrt(
            Math.max(
                0.0,
                fit.covariance()[2][2] + fit.covariance()[3][3] - 2.0 * fit.covariance()[2][3]));
    double sagHalf = TWO_SIDED_95 * sag[1];
    double leakHalf = half * fit.sigma(4);
    return new ValveFitResult(
        valve(x),
        x[6],
        ambient,
        logEstimate(x[0], half * fit.sigma(0)),
        logEstimate(x[1], half * fit.sigma(1)),
        logEstimate(x[3] - x[2] - tight, Math.hypot(half * ratioSigma, sagHalf)),
        logEstimate(-x[2] - tight, Math.hypot(half * fit.sigma(2), sagHalf)),
        new Estimate(
            Math.max(0.0, x[4]), Math.max(0.0, x[4] - leakHalf), Math.max(0.0, x[4] + leakHalf)),
        points.isEmpty() ? Double.NaN : Math.sqrt(sum / points.size()),
        points.size());
  }

  private static double square(double v) {
    return v * v;
  }

  private static Estimate logEstimate(double log, double half) {
    return new Estimate(Math.exp(log), Math.exp(log - half), Math.exp(log + half));
  }

  private double sigma(MeanPoint point) {
    return Math.hypot(point.sigmaKpa(), floorKpa);
  }

  private static ValveModel valve(double[] x) {
    return new ValveModel(
        Math.exp(x[0]),
        Math.exp(x[1]),
        Math.exp(x[2]),
        Math.exp(x[3]),
        Math.max(0.0, x[4]),
        within(x[7], -0.9, 0.7),
        within(x[5], 0.1, 0.7));
  }

  /** Bends a number into a range without a corner, on which the fit would hang. */
  private static double within(double x, double low, double high) {
    double above = low + bend(x - low);
    return high - bend(high - above);
  }

  private static double bend(double over) {
    return BEND * Math.log1p(Math.exp(Math.min(over / BEND, BENT_AWAY)))
        + Math.max(0.0, over - BEND * BENT_AWAY);
  }

  private void residuals(double[] x, double[] r) {
    if (x.length != PARAMETERS || !plausible(x)) {
      Arrays.fill(r, Double.NaN);
      return;
    }
    ValveModel valve = valve(x);
    int i = 0;
    for (EdgeBracket edge : edges) {
      double model = edge.onEdge() ? valve.onDelaySeconds() : valve.offDelaySeconds();
      r[i++] = (model - edge.middleSeconds()) / edge.sigmaSeconds();
    }
    for (MeanPoint point : points) {
      double model =
          valve.steadyInside(point.frequencyHz(), point.dutyFraction(), x[6], ambient).meanKpaAbs();
      r[i++] = (model - point.meanKpaAbs()) / sigma(point);
    }
    r[i++] = (valve.restKpaAbs(x[6], ambient) - restKpaAbs) / restSigma;
    r[i++] = (x[4] - leak) / leakSigma;
    r[i++] = (x[5] - CRITICAL_RATIO) / CRITICAL_RATIO_SIGMA;
    r[i++] = (x[7] - FILL_CRITICAL_RATIO) / FILL_CRITICAL_RATIO_SIGMA;
    r[i++] =
        Double.isNaN(ventTime)
            ? 0.0
            : (valve.secondsToVent(RESPONSE_SHARE, x[6], ambient) - ventTime) / timeSigma(ventTime);
    r[i] =
        Double.isNaN(fillTime)
            ? 0.0
            : (valve.secondsToFill(RESPONSE_SHARE, x[6], ambient) - fillTime) / timeSigma(fillTime);
  }

  private boolean plausible(double[] x) {
    return x[0] > -12.0
        && x[0] < 0.0
        && x[1] > -12.0
        && x[1] < 0.0
        && Math.abs(x[2]) < 9.0
        && Math.abs(x[3]) < 9.0
        && x[6] > ambient
        && x[6] < 10.0 * ambient;
  }
}
