package org.boostwright.core.bench.model;

import java.util.ArrayList;
import java.util.Arrays;
import java.util.List;

/**
 * What a handful of gauge readings by eye tell about a valve: a cloud of valves weighted by how
 * well each explains the readings.
 *
 * <p>Sequential Monte Carlo with tempering and Metropolis moves (Del Moral, Doucet and Jasra, J. R.
 * Statist. Soc. B 68, 2006, 411-436). A jump at a window edge is a yes or no, which a gradient fit
 * cannot use and this can. A reading's deviation: the gauge's resolution, a share of the ripple
 * that makes the needle shiver, and a share of the supply for what the model leaves out; one
 * reading in fifty may be a slip.
 */
public final class ReadingsPosterior {
  private static final int DEFAULT_SIZE = 1200;
  private static final int MOVES = 3;
  private static final double SHIVER_SHARE = 0.08;
  private static final double MODEL_SHARE = 0.012;
  private static final double LEAST_KPA = 0.3;
  private static final double SLIP_SHARE = 0.02;

  private final double supplyKpaAbs;
  private final double ambientKpaAbs;
  private final int size;
  private final double[][] cloud;
  private final double[] logWeights;
  private final double[] logLikelihoods;
  private final List<GaugeReading> readings = new ArrayList<>();
  private final FixedSequence sequence = new FixedSequence();

  /**
   * @param supplyKpaAbs line pressure at rest, kPa absolute
   * @param ambientKpaAbs ambient, kPa absolute
   */
  public ReadingsPosterior(double supplyKpaAbs, double ambientKpaAbs) {
    this(supplyKpaAbs, ambientKpaAbs, DEFAULT_SIZE);
  }

  ReadingsPosterior(double supplyKpaAbs, double ambientKpaAbs, int size) {
    if (!(supplyKpaAbs > ambientKpaAbs)) {
      throw new IllegalArgumentException("supply " + supplyKpaAbs + " kPa is not above ambient");
    }
    this.supplyKpaAbs = supplyKpaAbs;
    this.ambientKpaAbs = ambientKpaAbs;
    this.size = size;
    cloud = new double[size][ValvePrior.SIZE];
    logWeights = new double[size];
    logLikelihoods = new double[size];
    for (double[] x : cloud) {
      ValvePrior.draw(sequence, x);
    }
  }

  /** Readings taken in so far. */
  public int count() {
    return readings.size();
  }

  /** Supply, kPa absolute. */
  public double supplyKpaAbs() {
    return supplyKpaAbs;
  }

  /** Ambient, kPa absolute. */
  public double ambientKpaAbs() {
    return ambientKpaAbs;
  }

  /** Number of valves in the cloud. */
  int size() {
    return size;
  }

  /** Valve i of the cloud. */
  ValveModel valve(int i) {
    return ValvePrior.valve(cloud[i]);
  }

  /** Weights that add up to 1. */
  double[] weights() {
    double highest = Double.NEGATIVE_INFINITY;
    for (double w : logWeights) {
      highest = Math.max(highest, w);
    }
    double[] weights = new double[size];
    double sum = 0.0;
    for (int i = 0; i < size; i++) {
      weights[i] = Math.exp(logWeights[i] - highest);
      sum += weights[i];
    }
    for (int i = 0; i < size; i++) {
      weights[i] /= sum;
    }
    return weights;
  }

  /** Takes in one more reading. */
  public void take(GaugeReading reading) {
    readings.add(reading);
    double[] fresh = new double[size];
    for (int i = 0; i < size; i++) {
      fresh[i] = logLikelihood(ValvePrior.valve(cloud[i]), reading);
    }
    double done = 0.0;
    while (done < 1.0) {
      double step = temper(fresh, 1.0 - done);
      done += step;
      for (int i = 0; i < size; i++) {
        logWeights[i] += step * fresh[i];
        logLikelihoods[i] += step * fresh[i];
      }
      if (effective(logWeights) < 0.55 * size) {
        resample(fresh);
        move(fresh, done);
      }
    }
  }

  /** Largest part of the rest of this reading that leaves half the cloud effective. */
  private double temper(double[] fresh, double rest) {
    double[] trial = new double[size];
    double low = 0.0;
    double high = rest;
    for (int k = 0; k < 20; k++) {
      double part = k == 0 ? rest : 0.5 * (low + high);
      for (int i = 0; i < size; i++) {
        trial[i] = logWeights[i] + part * fresh[i];
      }
      if (effective(trial) >= 0.5 * size) {
        if (part == rest) {
          return rest;
        }
        low = part;
      } else {
        high = part;
      }
    }
    return Math.max(low, 1e-4 * rest);
  }

  private static double effective(double[] logs) {
    double highest = Double.NEGATIVE_INFINITY;
    for (double w : logs) {
      highest = Math.max(highest, w);
    }
    double sum = 0.0;
    double squares = 0.0;
    for (double w : logs) {
      double e = Math.exp(w - highest);
      sum += e;
      squares += e * e;
    }
    return sum * sum / squares;
  }

  /** Systematic resampling; {@code fresh} moves with its valves. */
  private void resample(double[] fresh) {
    double[] weights = weights();
    double[][] old = new double[size][];
    double[] oldLogs = logLikelihoods.clone();
    double[] oldFresh = fresh.clone();
    for (int i = 0; i < size; i++) {
      old[i] = cloud[i].clone();
    }
    double start = sequence.uniform();
    int from = 0;
    double sum = weights[0];
    for (int i = 0; i < size; i++) {
      double place = (i + start) / size;
      while (sum < place && from < size - 1) {
        sum += weights[++from];
      }
      System.arraycopy(old[from], 0, cloud[i], 0, ValvePrior.SIZE);
      logLikelihoods[i] = oldLogs[from];
      fresh[i] = oldFresh[from];
    }
    Arrays.fill(logWeights, 0.0);
  }

  /** Random-walk Metropolis with the difference of two other valves as the step. */
  private void move(double[] fresh, double temper) {
    double[] trial = new double[ValvePrior.SIZE];
    GaugeReading last = readings.get(readings.size() - 1);
    for (int turn = 0; turn < MOVES; turn++) {
      double scale = turn % 2 == 0 ? 0.7 : 0.3;
      for (int i = 0; i < size; i++) {
        double[] a = cloud[(int) (size * sequence.uniform())];
        double[] b = cloud[(int) (size * sequence.uniform())];
        for (int k = 0; k < ValvePrior.SIZE; k++) {
          trial[k] = cloud[i][k] + scale * (a[k] - b[k]) + 1e-4 * sequence.normal();
        }
        double prior = ValvePrior.logDensity(trial);
        if (prior == Double.NEGATIVE_INFINITY) {
          continue;
        }
        ValveModel valve = ValvePrior.valve(trial);
        double newest = logLikelihood(valve, last);
        double all = temper * newest;
        for (int r = 0; r < readings.size() - 1; r++) {
          all += logLikelihood(valve, readings.get(r));
        }
        double gain = all + prior - logLikelihoods[i] - ValvePrior.logDensity(cloud[i]);
        if (Math.log(sequence.uniform()) < gain) {
          System.arraycopy(trial, 0, cloud[i], 0, ValvePrior.SIZE);
          logLikelihoods[i] = all;
          fresh[i] = newest;
        }
      }
    }
  }

  /** Standard deviation of a reading of a line, kPa. */
  double sigmaKpa(SteadyLine line, double resolutionKpa) {
    double gauge = supplyKpaAbs - ambientKpaAbs;
    double rounding = resolutionKpa / Math.sqrt(12.0);
    double shiver = SHIVER_SHARE * line.rippleKpa();
    double model = MODEL_SHARE * gauge;
    return Math.sqrt(rounding * rounding + shiver * shiver + model * model + LEAST_KPA * LEAST_KPA);
  }

  private double logLikelihood(ValveModel valve, GaugeReading reading) {
    SteadyLine line = reading.expected(valve, supplyKpaAbs, ambientKpaAbs);
    double sigma = sigmaKpa(line, reading.resolutionKpa());
    double z = (reading.kpaGauge() - (line.meanKpaAbs() - ambientKpaAbs)) / sigma;
    double slip = SLIP_SHARE / (supplyKpaAbs - ambientKpaAbs);
    double right = (1.0 - SLIP_SHARE) * Math.exp(-0.5 * z * z) / (sigma * 2.5066282746310002);
    return Math.log(right + slip);
  }

  /**
   * Share of the cloud that finds a reading believable, within four deviations; near 0 means a slip
   * of eye or finger.
   */
  public double belief(GaugeReading reading) {
    double[] weights = weights();
    double sum = 0.0;
    for (int i = 0; i < size; i++) {
      SteadyLine line = reading.expected(valve(i), supplyKpaAbs, ambientKpaAbs);
      double error = reading.kpaGauge() - (line.meanKpaAbs() - ambientKpaAbs);
      if (Math.abs(error) <= 4.0 * sigmaKpa(line, reading.resolutionKpa())) {
        sum += weights[i];
      }
    }
    return sum;
  }

  /** Best valve with 95 % intervals. */
  public ValveFitResult result() {
    double[] weights = weights();
    double[] best = new double[ValvePrior.SIZE];
    for (int i = 0; i < size; i++) {
      for (int k = 0; k < ValvePrior.SIZE; k++) {
        best[k] += weights[i] * cloud[i][k];
      }
    }
    ValveModel valve = ValvePrior.valve(best);
    double squares = 0.0;
    for (GaugeReading r : readings) {
      double mean = r.expected(valve, supplyKpaAbs, ambientKpaAbs).meanKpaAbs();
      double error = mean - ambientKpaAbs - r.kpaGauge();
      squares += error * error;
    }
    return new ValveFitResult(
        valve,
        supplyKpaAbs,
        ambientKpaAbs,
        interval(weights, 0, best).times(1e-3),
        interval(weights, 1, best).times(1e-3),
        exponential(interval(weights, 3, best)),
        reciprocal(exponential(interval(weights, 2, best))),
        new Estimate(0.0, 0.0, Double.NaN),
        readings.isEmpty() ? Double.NaN : Math.sqrt(squares / readings.size()),
        readings.size());
  }

  private Estimate interval(double[] weights, int parameter, double[] best) {
    Integer[] order = new Integer[size];
    for (int i = 0; i < size; i++) {
      order[i] = i;
    }
    Arrays.sort(order, (a, b) -> Double.compare(cloud[a][parameter], cloud[b][parameter]));
    double sum = 0.0;
    double low = Double.NaN;
    double high = Double.NaN;
    for (int i : order) {
      sum += weights[i];
      if (Double.isNaN(low) && sum >= 0.025) {
        low = cloud[i][parameter];
      }
      if (Double.isNaN(high) && sum >= 0.975) {
        high = cloud[i][parameter];
      }
    }
    return new Estimate(best[parameter], low, high);
  }

  private static Estimate exponential(Estimate log) {
    return new Estimate(Math.exp(log.value()), Math.exp(log.low()), Math.exp(log.high()));
  }

  private static Estimate reciprocal(Estimate e) {
    return new Estimate(1.0 / e.value(), 1.0 / e.high(), 1.0 / e.low());
  }
}
