package org.boostwright.rig.plant;

/**
 * The PWM channel that drives the coil: duty and frequency are taken over at the start of each
 * period, as the hardware does it.
 *
 * <p>Off until enabled. Disabling drops the output at once and forgets the running period; enabling
 * starts a new one as soon as time passes. An inverted output is a wiring fault: it is high
 * whenever it should be low, also while disabled.
 */
public final class PwmGenerator {
  private static final double DUE = 1e-12;

  private double dutyFraction;
  private double frequencyHz = 30.0;
  private boolean enabled;
  private boolean inverted;
  private boolean high;
  private double untilChangeSeconds = Double.POSITIVE_INFINITY;
  private double lowAfterSeconds;

  /** Duty for the periods to come, 0 to 1; anything outside or NaN counts as 0 or 1. */
  public void setDuty(double fraction) {
    dutyFraction = fraction > 0.0 ? Math.min(fraction, 1.0) : 0.0;
  }

  /**
   * Frequency for the periods to come.
   *
   * @throws IllegalArgumentException unless above 0 and finite
   */
  public void setFrequencyHz(double hz) {
    if (!(hz > 0.0 && hz < 1e6)) {
      throw new IllegalArgumentException("PWM frequency " + hz + " Hz must lie above 0 Hz");
    }
    frequencyHz = hz;
  }

  /** Starts or stops the channel. */
  public void setEnabled(boolean on) {
    if (on == enabled) {
      return;
    }
    enabled = on;
    high = false;
    lowAfterSeconds = 0.0;
    untilChangeSeconds = on ? 0.0 : Double.POSITIVE_INFINITY;
  }

  /** Exchanges high and low at the output. */
  public void setInverted(boolean on) {
    inverted = on;
  }

  /** Output level now. */
  public boolean output() {
    return high != inverted;
  }

  /** Duty last asked for, 0 to 1. */
  public double dutyFraction() {
    return dutyFraction;
  }

  /** Frequency last asked for, Hz. */
  public double frequencyHz() {
    return frequencyHz;
  }

  /** Time to the next edge or period start, s; infinite while disabled. */
  double untilChangeSeconds() {
    return untilChangeSeconds;
  }

  /** Lets time pass, at most {@link #untilChangeSeconds()}. */
  void elapse(double seconds) {
    untilChangeSeconds -= seconds;
    if (untilChangeSeconds > DUE) {
      return;
    }
    if (high && lowAfterSeconds > 0.0) {
      high = false;
      untilChangeSeconds += lowAfterSeconds;
      lowAfterSeconds = 0.0;
      return;
    }
    double period = 1.0 / frequencyHz;
    double onSeconds = dutyFraction * period;
    high = dutyFraction > 0.0;
    if (high && dutyFraction < 1.0) {
      untilChangeSeconds += onSeconds;
      lowAfterSeconds = period - onSeconds;
    } else {
      untilChangeSeconds += period;
      lowAfterSeconds = 0.0;
    }
  }
}
