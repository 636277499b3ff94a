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
 * @param criticalRatio b of both paths, 0.1 to 0.6
 */
public record ValveModel(
    double onDelaySeconds,
    double offDelaySeconds,
    double fillRatePerSecond,
    double ventRatePerSecond,
    double leakRatePerSecond,
    double criticalRatio) {

  /** Refuses what is no valve, NaN included. */
  public ValveModel {
    positive("on delay", onDelaySeconds);
    positive("off delay", offDelaySeconds);
    positive("fill rate", fillRatePerSecond);
    positive("vent rate", ventRatePerSecond);
    if (!(leakRatePerSecond >= 0.0 && leakRatePerSecond < 1e6)) {
      throw new IllegalArgumentException("leak rate " + leakRatePerSecond + " 1/s is below 0");
    }
    if (!(criticalRatio >= 0.05 && criticalRatio <= 0.8)) {
      throw new IllegalArgumentException(
          "critical pressure ratio " + criticalRatio + " is outside 0.05 to 0.8");
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

  /** Pressure at rest: the supply less what a leak takes, kPa absolute. */
  public double restKpaAbs(double supplyKpaAbs, double ambientKpaAbs) {
    double low = ambientKpaAbs;
    double high = supplyKpaAbs;
    if (leakRatePerSecond == 0.0 || !(high > low)) {
      return supplyKpaAbs;
    }
    for (int i = 0; i < 50; i++) {
      double p = 0.5 * (low + high);
      double in = fillRatePerSecond * supplyKpaAbs * flowFunction(p / supplyKpaAbs, criticalRatio);
      double out = leakRatePerSecond * p * flowFunction(ambientKpaAbs / p, criticalRatio);
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
