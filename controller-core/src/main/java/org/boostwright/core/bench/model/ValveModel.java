package org.boostwright.core.bench.model;

/**
 * The three-port valve with hose and actuator chamber, as the bench fits it.
 *
 * <p>Flow after ISO 6358, {@code m = C*p1*rho0*flowFunction(p2/p1)}, psi = 1 up to the critical
 * ratio b and {@code sqrt(1 - ((r - b)/(1 - b))^2)} above. Only C over chamber volume shows in a
 * pressure, so conductances stand as rates {@code n*C*rho0*R*T0/V}, 1/s. The spool has two
 * positions; it leaves the supply {@code onDelay} after the coil is energised and comes back {@code
 * offDelay} after it is switched off. A pulse shorter than its delay moves nothing.
 *
 * @param onDelaySeconds t_on, s
 * @param offDelaySeconds t_off, s
 * @param fillRatePerSecond rate of the path from supply to chamber, 1/s
 * @param ventRatePerSecond rate of the path from chamber to vent, 1/s
 * @param leakRatePerSecond rate of a leak from chamber to ambient, 1/s
 * @param fillCriticalRatio b of the path from supply to chamber; a supply that sags with flow makes
 *     it look smaller than the valve's own, even below 0
 * @param ventCriticalRatio b of the path from chamber to vent, also used for the leak
 */
public record ValveModel(
    double onDelaySeconds,
    double offDelaySeconds,
    double fillRatePerSecond,
    double ventRatePerSecond,
    double leakRatePerSecond,
    double fillCriticalRatio,
    double ventCriticalRatio) {

  private static final double LONGEST_RATES = 5.0;
  private static final int TIME_HALVINGS = 30;

  /** A valve with the same critical ratio both ways. */
  public ValveModel(
      double onDelaySeconds,
      double offDelaySeconds,
      double fillRatePerSecond,
      double ventRatePerSecond,
      double leakRatePerSecond,
      double criticalRatio) {
    this(
        onDelaySeconds,
        offDelaySeconds,
        fillRatePerSecond,
        ventRatePerSecond,
        leakRatePerSecond,
        criticalRatio,
        criticalRatio);
  }

  /** Refuses what is no valve, NaN included. */
  public ValveModel {
    positive("on delay", onDelaySeconds);
    positive("off delay", offDelaySeconds);
    positive("fill rate", fillRatePerSecond);
    positive("vent rate", ventRatePerSecond);
    if (!(leakRatePerSecond >= 0.0 && leakRatePerSecond < 1e6)) {
      throw new IllegalArgumentException("leak rate " + leakRatePerSecond + " 1/s is below 0");
    }
    if (!(fillCriticalRatio >= -1.0
        && fillCriticalRatio <= 0.8
        && ventCriticalRatio >= 0.05
        && ventCriticalRatio <= 0.8)) {
      throw new IllegalArgumentException(
          "critical pressure ratios "
              + fillCriticalRatio
              + " (filling, -1 to 0.8) and "
              + ventCriticalRatio
              + " (venting, 0.05 to 0.8)");
    }
  }

  private static void positive(String what, double value) {
    if (!(value > 0.0 && value < 1e6)) {
      throw new IllegalArgumentException(what + " " + value + " is not above 0");
    }
  }

  /** Lower edge of the duty window at a frequency: below it the valve never vents. */
  public double windowLowDuty(double frequencyHz) {
    return onDelaySeconds * frequencyHz;
  }

  /** Upper edge of the duty window at a frequency: above it the valve never supplies. */
  public double windowHighDuty(double frequencyHz) {
    return 1.0 - offDelaySeconds * frequencyHz;
  }

  /** Above this frequency there is no window at all, Hz. */
  public double highestUsableHz() {
    return 1.0 / (onDelaySeconds + offDelaySeconds);
  }

  /** Seconds of each period the chamber is vented, coming from rest. */
  double ventSeconds(double frequencyHz, double dutyFraction) {
    double period = 1.0 / frequencyHz;
    if (!(dutyFraction * period > onDelaySeconds)) {
      return 0.0;
    }
    if (!((1.0 - dutyFraction) * period > offDelaySeconds)) {
      return period;
    }
    return dutyFraction * period + offDelaySeconds - onDelaySeconds;
  }

  /**
   * Periodic steady state at a duty, coming from rest, so that the jumps at both window edges show.
   *
   * @param frequencyHz PWM frequency, Hz
   * @param dutyFraction share of the period the coil is energised, 0 to 1
   * @param supplyKpaAbs supply pressure at the valve, kPa absolute
   * @param ambientKpaAbs ambient pressure, kPa absolute
   */
  public SteadyLine steady(
      double frequencyHz, double dutyFraction, double supplyKpaAbs, double ambientKpaAbs) {
    return steadyWithVent(
        frequencyHz, ventSeconds(frequencyHz, dutyFraction), supplyKpaAbs, ambientKpaAbs);
  }

  /**
   * Periodic steady state for a duty inside the window, without looking at the edges: smooth in
   * every parameter, which a fit needs.
   */
  public SteadyLine steadyInside(
      double frequencyHz, double dutyFraction, double supplyKpaAbs, double ambientKpaAbs) {
    double period = 1.0 / frequencyHz;
    double vent = dutyFraction * period + offDelaySeconds - onDelaySeconds;
    return steadyWithVent(
        frequencyHz, Math.max(0.0, Math.min(period, vent)), supplyKpaAbs, ambientKpaAbs);
  }

  /**
   * What is left in a line whose supply has been shut at rest pressure after one pulse on the coil,
   * kPa absolute; it vents from {@code t_on} after the pulse's start to {@code t_off} after its
   * end.
   */
  public double afterPulseKpaAbs(double pulseSeconds, double supplyKpaAbs, double ambientKpaAbs) {
    if (!(pulseSeconds > onDelaySeconds) || !(supplyKpaAbs > ambientKpaAbs)) {
      return supplyKpaAbs;
    }
    return new PeriodicLine(this, supplyKpaAbs, ambientKpaAbs)
        .vented(supplyKpaAbs, pulseSeconds + offDelaySeconds - onDelaySeconds);
  }

  /**
   * Time from energising for good until a share of the way from rest to ambient is done, s.
   *
   * @param share 0 to below 1
   */
  public double secondsToVent(double share, double supplyKpaAbs, double ambientKpaAbs) {
    double rest = restKpaAbs(supplyKpaAbs, ambientKpaAbs);
    PeriodicLine line = new PeriodicLine(this, supplyKpaAbs, ambientKpaAbs);
    double goal = rest + share * (ambientKpaAbs - rest);
    double low = 0.0;
    double high = LONGEST_RATES / ventRatePerSecond;
    for (int i = 0; i < TIME_HALVINGS; i++) {
      double middle = 0.5 * (low + high);
      if (line.vented(rest, middle) > goal) {
        low = middle;
      } else {
        high = middle;
      }
    }
    return onDelaySeconds + high;
  }

  /** Time from switching off for good until a share of the way from ambient to rest is done, s. */
  public double secondsToFill(double share, double supplyKpaAbs, double ambientKpaAbs) {
    double rest = restKpaAbs(supplyKpaAbs, ambientKpaAbs);
    PeriodicLine line = new PeriodicLine(this, supplyKpaAbs, ambientKpaAbs);
    double goal = ambientKpaAbs + share * (rest - ambientKpaAbs);
    double low = 0.0;
    double high = LONGEST_RATES / fillRatePerSecond;
    for (int i = 0; i < TIME_HALVINGS; i++) {
      double middle = 0.5 * (low + high);
      if (line.filled(ambientKpaAbs, middle) < goal) {
        low = middle;
      } else {
        high = middle;
      }
    }
    return offDelaySeconds + high;
  }

  /** Pressure at rest: the supply less what a leak takes, kPa absolute. */
  public double restKpaAbs(double supplyKpaAbs, double ambientKpaAbs) {
    double low = ambientKpaAbs;
    double high = supplyKpaAbs;
    if (leakRatePerSecond == 0.0 || !(high > low)) {
      return supplyKpaAbs;
    }
    for (int i = 0; i < 50; i++) {
      double p = 0.5 * (low + high);
      double in =
          fillRatePerSecond * supplyKpaAbs * flowFunction(p / supplyKpaAbs, fillCriticalRatio);
      double out = leakRatePerSecond * p * flowFunction(ambientKpaAbs / p, ventCriticalRatio);
      if (in > out) {
        low = p;
      } else {
        high = p;
      }
    }
    return 0.5 * (low + high);
  }

  /** ISO 6358 flow function of the pressure ratio: 1 choked, 0 at ratio 1 and above. */
  public static double flowFunction(double ratio, double b) {
    if (ratio <= b) {
      return 1.0;
    }
    if (ratio >= 1.0) {
      return 0.0;
    }
    double z = (ratio - b) / (1.0 - b);
    return Math.sqrt(1.0 - z * z);
  }

  private SteadyLine steadyWithVent(
      double frequencyHz, double ventSeconds, double supplyKpaAbs, double ambientKpaAbs) {
    if (!(supplyKpaAbs > ambientKpaAbs)) {
      return new SteadyLine(ambientKpaAbs, ambientKpaAbs, ambientKpaAbs);
    }
    double period = 1.0 / frequencyHz;
    if (ventSeconds <= 0.0) {
      double rest = restKpaAbs(supplyKpaAbs, ambientKpaAbs);
      return new SteadyLine(rest, rest, rest);
    }
    if (ventSeconds >= period) {
      return new SteadyLine(ambientKpaAbs, ambientKpaAbs, ambientKpaAbs);
    }
    return new PeriodicLine(this, supplyKpaAbs, ambientKpaAbs)
        .solve(ventSeconds, period - ventSeconds);
  }
}
