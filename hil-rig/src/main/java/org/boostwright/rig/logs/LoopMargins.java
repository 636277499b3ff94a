package org.boostwright.rig.logs;

/**
 * Robustness of a loop of a PID law, series or parallel, with a process of two lags and a dead time.
 *
 * <p>{@code L(jw) = C(jw)*k*exp(-jw theta)/((1+jw tau1)(1+jw tau2))}. Ms is the
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

  /** The law's answer at a frequency. */
  private interface Law {
    double gain(double w);

    double phase(double w);
  }

  /** Margins for a law and a process; times in s, gains with matching units. */
  public static LoopMargins of(
      Simc law, double processGain, double tau1Seconds, double tau2Seconds, double deadSeconds) {
    return of(series(law), processGain, tau1Seconds, tau2Seconds, deadSeconds);
  }

  /** Margins for a parallel law with the same process. */
  public static LoopMargins of(
      ParallelPid law,
      double processGain,
      double tau1Seconds,
      double tau2Seconds,
      double deadSeconds) {
    return of(parallel(law), processGain, tau1Seconds, tau2Seconds, deadSeconds);
  }

  private static Law series(Simc law) {
    return new Law() {
      @Override
      public double gain(double w) {
        return Math.abs(law.gain())
            * Math.hypot(1.0, 1.0 / (w * law.integralSeconds()))
            * Math.hypot(1.0, w * law.derivativeSeconds());
      }

      @Override
      public double phase(double w) {
        return -Math.atan(1.0 / (w * law.integralSeconds()))
            + Math.atan(w * law.derivativeSeconds());
      }
    };
  }

  private static Law parallel(ParallelPid law) {
    return new Law() {
      private double real(double w) {
        double filter = w * law.filterSeconds();
        return law.kp() + law.kd() * w * filter / (1.0 + filter * filter);
      }

      private double imaginary(double w) {
        double filter = w * law.filterSeconds();
        return law.kd() * w / (1.0 + filter * filter) - law.ki() / w;
      }

      @Override
      public double gain(double w) {
        return Math.hypot(real(w), imaginary(w));
      }

      @Override
      public double phase(double w) {
        return Math.atan2(imaginary(w), real(w));
      }
    };
  }

  private static LoopMargins of(
      Law law, double processGain, double tau1Seconds, double tau2Seconds, double deadSeconds) {
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
          law.gain(w)
              * Math.abs(processGain)
              / (Math.hypot(1.0, w * tau1Seconds) * Math.hypot(1.0, w * tau2Seconds));
      double phase =
          law.phase(w)
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
