package org.boostwright.core.bench.model;

import java.util.Arrays;
import java.util.List;

/**
 * Fits the valve model to settled means inside the window and to the edges of the window.
 *
 * <p>Inside the window the means depend only on {@code d*T + t_off - t_on}; the edges, searched for
 * at two frequencies, tell t_on and t_off apart. Rest pressure and leak-down enter as two more
 * observations, the critical ratio as a wide one (0.35 +- 0.1, the range of ISO 6358 valves). The
 * means' deviations carry a floor for what the model leaves out; when they still scatter more, all
 * intervals widen with the scatter.
 */
public final class ValveFit {
  /** Model error of a mean in the fit's weights, share of supply gauge pressure. */
  private static final double MODEL_SHARE = 0.006;

  private static final double TWO_SIDED_95 = 1.96;
  private static final double CRITICAL_RATIO = 0.35;
  private static final double CRITICAL_RATIO_SIGMA = 0.1;
  private static final int PARAMETERS = 7;

  private final List<EdgeBracket> edges;
  private final List<MeanPoint> points;
  private final double ambient;
  private final double restKpaAbs;
  private final double restSigma;
  private final double leak;
  private final double leakSigma;
  private final double floorKpa;

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
   * @param ratesGuess chamber rates to start from, 1/s
   */
  public ValveFitResult fit(double ratesGuess) {
    double[] start = {
      Math.log(mean(true)),
      Math.log(mean(false)),
      Math.log(ratesGuess),
      Math.log(ratesGuess),
      leak,
      CRITICAL_RATIO,
      restKpaAbs
    };
    double[] scale = {0.1, 0.1, 0.3, 0.3, 0.1 + leak, 0.1, 1.0};
    int count = edges.size() + points.size() + 3;
    FitResult fit = new LeastSquares(this::residuals, count).fit(start, scale);
    double[] residuals = new double[count];
    residuals(fit.parameters(), residuals);
    return result(fit, residuals);
  }

  private ValveFitResult result(FitResult fit, double[] residuals) {
    double[] x = fit.parameters();
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
    double leakHalf = half * fit.sigma(4);
    return new ValveFitResult(
        valve(x),
        x[6],
        ambient,
        logEstimate(x[0], half * fit.sigma(0)),
        logEstimate(x[1], half * fit.sigma(1)),
        logEstimate(x[3] - x[2], half * ratioSigma),
        logEstimate(-x[2], half * fit.sigma(2)),
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
        Math.max(0.1, Math.min(0.7, x[5])));
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
    r[i] = (x[5] - CRITICAL_RATIO) / CRITICAL_RATIO_SIGMA;
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
