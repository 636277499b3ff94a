package org.boostwright.rig.scenario;

import org.boostwright.core.monitor.FaultCode;
import org.boostwright.core.record.LogFormat;

/**
 * What a pull measured, from true pressure and the target the controller followed.
 *
 * <p>The pressure has arrived when it first comes within 2 kPa of the target. It counts as settled
 * from one second later; there its error is averaged over 100 ms, so that pulsation and PWM ripple
 * do not count as error.
 */
public final class PullResult {
  /** Within this of the target the pressure has arrived, kPa. */
  public static final double ARRIVED_KPA = 2.0;

  private static final double SETTLED_AFTER_SECONDS = 1.0;
  private static final int MEAN_ROWS = 20;
  private static final int TARGET = LogFormat.column("target_kpa_abs");

  private final CarRun run;
  private final int firstRow;
  private final int lastRow;
  private double arrivedSeconds = Double.NaN;
  private double peakKpaAbs;
  private double peakRpm;
  private double overshootKpa = Double.NEGATIVE_INFINITY;
  private double settledErrorKpa = Double.NaN;
  private double settledErrorRpm = Double.NaN;
  private double highestRateKpaPerSecond;
  private long faults;
  private long findings;

  /**
   * @param run the run
   * @param firstRow first row at full throttle
   * @param lastRow last row at full throttle
   */
  public PullResult(CarRun run, int firstRow, int lastRow) {
    this.run = run;
    this.firstRow = firstRow;
    this.lastRow = lastRow;
    measure();
  }

  private void measure() {
    RunLog log = run.log();
    for (int r = firstRow; r <= lastRow; r++) {
      double kpa = log.get(r, RunLog.TRUE_MAP);
      double error = kpa - log.get(r, TARGET);
      if (kpa > peakKpaAbs) {
        peakKpaAbs = kpa;
        peakRpm = log.get(r, RunLog.TRUE_RPM);
      }
      overshootKpa = Math.max(overshootKpa, error);
      if (Double.isNaN(arrivedSeconds) && error >= -ARRIVED_KPA) {
        arrivedSeconds = log.seconds(r) - stepSeconds();
      }
      if (r >= firstRow + MEAN_ROWS) {
        double rise = kpa - log.get(r - MEAN_ROWS, RunLog.TRUE_MAP);
        highestRateKpaPerSecond = Math.max(highestRateKpaPerSecond, rise / (MEAN_ROWS * 0.005));
      }
      faults |= (long) log.get(r, LogFormat.FAULTS);
      findings |= (long) log.get(r, LogFormat.FINDINGS);
      measureSettled(log, r);
    }
  }

  private void measureSettled(RunLog log, int r) {
    double settledFrom = stepSeconds() + arrivedSeconds + SETTLED_AFTER_SECONDS;
    if (!(log.seconds(r - MEAN_ROWS + 1) >= settledFrom)) {
      return;
    }
    double sum = 0.0;
    for (int i = r - MEAN_ROWS + 1; i <= r; i++) {
      sum += log.get(i, RunLog.TRUE_MAP) - log.get(i, TARGET);
    }
    double mean = sum / MEAN_ROWS;
    if (!(Math.abs(mean) <= Math.abs(settledErrorKpa))) {
      settledErrorKpa = mean;
      settledErrorRpm = log.get(r, RunLog.TRUE_RPM);
    }
  }

  private double stepSeconds() {
    return run.log().seconds(firstRow) - 0.005;
  }

  /** The run with its log. */
  public CarRun run() {
    return run;
  }

  /** First row at full throttle. */
  public int firstRow() {
    return firstRow;
  }

  /** Last row at full throttle. */
  public int lastRow() {
    return lastRow;
  }

  /** Time from the throttle step to arrival, s; NaN when it never arrived. */
  public double arrivedSeconds() {
    return arrivedSeconds;
  }

  /** Highest true manifold pressure, kPa absolute. */
  public double peakKpaAbs() {
    return peakKpaAbs;
  }

  /** Engine speed at the peak, 1/min. */
  public double peakRpm() {
    return peakRpm;
  }

  /** Highest true pressure over target, kPa; negative when it stayed below. */
  public double overshootKpa() {
    return overshootKpa;
  }

  /** Largest settled error with its sign, kPa; NaN when the pull ended before it settled. */
  public double settledErrorKpa() {
    return settledErrorKpa;
  }

  /** Engine speed at the largest settled error, 1/min. */
  public double settledErrorRpm() {
    return settledErrorRpm;
  }

  /** Fastest rise over 100 ms, kPa/s. */
  public double highestRateKpaPerSecond() {
    return highestRateKpaPerSecond;
  }

  /** Every fault confirmed during the pull, bits as in {@link FaultCode}. */
  public long faults() {
    return faults;
  }

  /** Every finding during the pull, bits as in {@link FaultCode}. */
  public long findings() {
    return findings;
  }
}
