package org.boostwright.rig.replay;

import org.boostwright.core.Outputs;

/**
 * A replay thinned out for plots: each point stands for many ticks. Pressure and duty are the
 * highest in them, so that no peak is lost; the rest is the last.
 */
public final class TraceSeries {
  private final long ticksPerPoint;
  private final double[] seconds;
  private final double[] mapKpaAbs;
  private final double[] targetKpaAbs;
  private final double[] dutyFraction;
  private final double[] engineRpm;
  private final double[] throttlePct;
  private final int[] state;
  private long ticks;
  private int points;

  TraceSeries(long expectedTicks, int mostPoints) {
    ticksPerPoint = Math.max(1, (expectedTicks + mostPoints - 1) / mostPoints);
    int size = (int) (expectedTicks / ticksPerPoint) + 2;
    seconds = new double[size];
    mapKpaAbs = new double[size];
    targetKpaAbs = new double[size];
    dutyFraction = new double[size];
    engineRpm = new double[size];
    throttlePct = new double[size];
    state = new int[size];
  }

  void add(double now, Outputs out) {
    boolean begins = ticks % ticksPerPoint == 0;
    if (begins && points < seconds.length) {
      points++;
    }
    ticks++;
    int i = points - 1;
    seconds[i] = now;
    mapKpaAbs[i] = begins ? out.mapKpaAbs : Math.max(mapKpaAbs[i], out.mapKpaAbs);
    dutyFraction[i] = begins ? out.dutyFraction : Math.max(dutyFraction[i], out.dutyFraction);
    targetKpaAbs[i] = out.targetKpaAbs;
    engineRpm[i] = out.engineRpm;
    throttlePct[i] = out.throttlePct;
    state[i] = out.state.ordinal();
  }

  /** Number of points. */
  public int size() {
    return points;
  }

  /** Time of a point since the first row of the log, s. */
  public double seconds(int i) {
    return seconds[i];
  }

  /** Highest manifold pressure, kPa absolute; NaN while unknown. */
  public double mapKpaAbs(int i) {
    return mapKpaAbs[i];
  }

  /** Boost target, kPa absolute; NaN while unknown. */
  public double targetKpaAbs(int i) {
    return targetKpaAbs[i];
  }

  /** Highest duty, 0 to 1. */
  public double dutyFraction(int i) {
    return dutyFraction[i];
  }

  /** Engine speed, 1/min. */
  public double engineRpm(int i) {
    return engineRpm[i];
  }

  /** Throttle or what stands for it, percent; NaN while unknown. */
  public double throttlePct(int i) {
    return throttlePct[i];
  }

  /** Safety state, as {@link org.boostwright.core.state.SafetyState} ordinal. */
  public int state(int i) {
    return state[i];
  }
}
