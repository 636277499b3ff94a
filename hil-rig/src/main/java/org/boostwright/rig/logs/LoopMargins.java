package org.boostwright.rig.logs;

/**
 * Robustness of a loop of a PI or series PID law with a process of two lags and a dead time.
 *
 * <p>{@code L(jw) = Kc(1+1/(jw Ti))(1+jw Td)*k*exp(-jw theta)/((1+jw tau1)(1+jw tau2))}. Ms is the
 * largest {@code 1/|1+L|}; gain margin at the first phase crossover, phase margin at the gain
 * crossover. Definitions: Astrom and Hagglund, <i>Advanced PID Control</i>, ISA 2006, section 4.6.
 *
 * @param maxSensitivity Ms
 * @param gainMargin factor, infinite when the phase never reaches -180 degrees
 * @param phaseMarginDegrees degrees
 * @param delayMarginSeconds extra dead time that the loop bears, s
 */
public record LoopMargins(
    double maxSensitivity,
    double gainMargin,
    double phaseMarginDegrees,
    double delayMarginSeconds) {

  private static final int POINTS = 40_000;
  private static final double DECADES = 7.0;

  /** Margins for a law and a process; times in s, gains with matching units. */
  public static LoopMargins of(
      Simc law, double processGain, double tau1Seconds, double tau2Seconds, double deadSeconds) {
    double start = 1e-4 / Math.max(tau1Seconds, deadSeconds);
    double ms = 0.0;
    double gainMargin = Double.POSITIVE_INFINITY;
    double phaseMargin = Double.POSITIVE_INFINITY;
    double delayMargin = Double.POSITIVE_INFINITY;
    double lastPhase = 0.0;
    double lastGain = 0.0;
    double lastW = 0.0;
    for (int i = 0; i <= POINTS; i++) {
      double w = start * Math.pow(10.0, DECADES * i / POINTS);
      double gain =
          Math.abs(law.gain() * processGain)
              * Math.hypot(1.0, 1.0 / (w * law.integralSeconds()))
              * Math.hypot(1.0, w * law.derivativeSeconds())
              / (Math.hypot(1.0, w * tau1Seconds) * Math.hypot(1.0, w * tau2Seconds));
      double phase =
          -Math.atan(1.0 / (w * law.integralSeconds()))
              + Math.atan(w * law.derivativeSeconds())
              - Math.atan(w * tau1Seconds)
              - Math.atan(w * tau2Seconds)
              - w * deadSeconds;
      ms = Math.max(ms, 1.0 / Math.hypot(1.0 + gain * Math.cos(phase), gain * Math.sin(phase)));
      if (i > 0 && lastPhase > -Math.PI && phase <= -Math.PI && Double.isInfinite(gainMargin)) {
        double f = (-Math.PI - lastPhase) / (phase - lastPhase);
        gainMargin = 1.0 / (lastGain + f * (gain - lastGain));
      }
      if (i > 0 && lastGain > 1.0 && gain <= 1.0 && Double.isInfinite(phaseMargin)) {
        double f = (1.0 - lastGain) / (gain - lastGain);
        double margin = Math.PI + lastPhase + f * (phase - lastPhase);
        phaseMargin = Math.toDegrees(margin);
        delayMargin = margin / (lastW + f * (w - lastW));
      }
      lastPhase = phase;
      lastGain = gain;
      lastW = w;
    }
    return new LoopMargins(ms, gainMargin, phaseMargin, delayMargin);
  }
}
