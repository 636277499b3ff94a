package org.boostwright.core.bench.model;

/**
 * The fitted valve with 95 % intervals.
 *
 * @param valve best model of valve and this supply together
 * @param supplyKpaAbs supply at the valve, kPa absolute
 * @param ambientKpaAbs ambient, kPa absolute
 * @param onDelaySeconds t_on, s
 * @param offDelaySeconds t_off, s
 * @param ventOverFill rate of venting over rate of filling, of the valve alone
 * @param timeConstantSeconds chamber time constant {@code 1/fill rate} of the valve alone, s
 * @param leakRatePerSecond leak, 1/s
 * @param rmsKpa root mean square of model minus measurement, kPa
 * @param points number of means fitted
 */
public record ValveFitResult(
    ValveModel valve,
    double supplyKpaAbs,
    double ambientKpaAbs,
    Estimate onDelaySeconds,
    Estimate offDelaySeconds,
    Estimate ventOverFill,
    Estimate timeConstantSeconds,
    Estimate leakRatePerSecond,
    double rmsKpa,
    int points) {

  /** Lower edge of the window at a frequency. */
  public Estimate windowLowDuty(double frequencyHz) {
    return onDelaySeconds.times(frequencyHz);
  }

  /** Upper edge of the window at a frequency. */
  public Estimate windowHighDuty(double frequencyHz) {
    return new Estimate(
        1.0 - offDelaySeconds.value() * frequencyHz,
        1.0 - offDelaySeconds.high() * frequencyHz,
        1.0 - offDelaySeconds.low() * frequencyHz);
  }

  /** The line at a duty on this supply. */
  public SteadyLine steady(double frequencyHz, double dutyFraction) {
    return valve.steady(frequencyHz, dutyFraction, supplyKpaAbs, ambientKpaAbs);
  }
}
