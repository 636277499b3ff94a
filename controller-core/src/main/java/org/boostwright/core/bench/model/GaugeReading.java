package org.boostwright.core.bench.model;

/**
 * One gauge reading by eye: while the valve works at a duty, or of a shut-off line after one pulse.
 *
 * @param frequencyHz PWM frequency, Hz; NaN after a pulse
 * @param dutyFraction duty, 0 to 1; NaN after a pulse
 * @param pulseSeconds the supply was shut at rest pressure, then the coil energised once for so
 *     long, s; NaN while the valve works
 * @param shutKpaGauge what the needle showed as long after shutting the supply without a pulse, so
 *     that a leak does not count as venting, kPa gauge; NaN while the valve works
 * @param kpaGauge what the needle showed, kPa gauge
 * @param resolutionKpa smallest step the person can read, kPa
 */
public record GaugeReading(
    double frequencyHz,
    double dutyFraction,
    double pulseSeconds,
    double shutKpaGauge,
    double kpaGauge,
    double resolutionKpa) {

  /** While the valve works at a duty. */
  public static GaugeReading working(
      double frequencyHz, double dutyFraction, double kpaGauge, double resolutionKpa) {
    return new GaugeReading(
        frequencyHz, dutyFraction, Double.NaN, Double.NaN, kpaGauge, resolutionKpa);
  }

  /** Of the shut-off line after one pulse. */
  public static GaugeReading afterPulse(
      double pulseSeconds, double shutKpaGauge, double kpaGauge, double resolutionKpa) {
    return new GaugeReading(
        Double.NaN, Double.NaN, pulseSeconds, shutKpaGauge, kpaGauge, resolutionKpa);
  }

  /** What a valve would make of this setting. */
  SteadyLine expected(ValveModel valve, double supplyKpaAbs, double ambientKpaAbs) {
    if (Double.isNaN(pulseSeconds)) {
      return valve.steady(frequencyHz, dutyFraction, supplyKpaAbs, ambientKpaAbs);
    }
    double left = valve.afterPulseKpaAbs(pulseSeconds, ambientKpaAbs + shutKpaGauge, ambientKpaAbs);
    return new SteadyLine(left, left, left);
  }
}
