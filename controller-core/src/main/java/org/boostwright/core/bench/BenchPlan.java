package org.boostwright.core.bench;

import java.util.EnumSet;
import java.util.Set;
import org.boostwright.core.bench.model.Coil;

/**
 * What a bench session is to do and the limits it keeps.
 *
 * @param steps routines to run
 * @param frequencyHz PWM frequency the car's settings ask for, Hz; NaN when none is chosen yet
 * @param coil coil as measured or declared
 * @param airC air around the coil on the bench, degC
 * @param rippleLimitKpa largest peak-to-peak ripple the recommended frequency may have, kPa
 * @param pressureLimitKpaGauge the session goes to rest above this line pressure, kPa gauge
 * @param settingsLowDuty lower edge of the window the car's settings use; NaN when there is none
 * @param settingsHighDuty upper edge; NaN when there is none
 * @param hasCoilSwitch a high-side switch in the coil's supply is under control
 */
public record BenchPlan(
    Set<BenchStep> steps,
    double frequencyHz,
    Coil coil,
    double airC,
    double rippleLimitKpa,
    double pressureLimitKpaGauge,
    double settingsLowDuty,
    double settingsHighDuty,
    boolean hasCoilSwitch) {

  /** Lowest PWM frequency a session uses, Hz. */
  public static final double LOWEST_HZ = 15.0;

  /** Highest PWM frequency a session uses, Hz. */
  public static final double HIGHEST_HZ = 60.0;

  /** Bench air passes its relief valve here, kPa gauge (common practice, no source). */
  public static final double RELIEF_KPA_GAUGE = 150.0;

  /** Ripple that a factory actuator of about 40 ms lag does not follow; project assumption. */
  public static final double DEFAULT_RIPPLE_LIMIT_KPA = 30.0;

  /** Hottest air around a valve under a bonnet, degC (common practice, no source). */
  public static final double UNDER_BONNET_C = 60.0;

  /** Refuses limits that protect nothing, NaN included. */
  public BenchPlan {
    steps = Set.copyOf(steps);
    if (!(pressureLimitKpaGauge > 0.0 && pressureLimitKpaGauge <= RELIEF_KPA_GAUGE)) {
      throw new IllegalArgumentException(
          "bench pressure limit "
              + pressureLimitKpaGauge
              + " kPa gauge is outside 0 to "
              + RELIEF_KPA_GAUGE
              + " (the relief valve)");
    }
    if (!(rippleLimitKpa > 0.0)) {
      throw new IllegalArgumentException("ripple limit " + rippleLimitKpa + " kPa is not above 0");
    }
    if (!Double.isNaN(frequencyHz) && !(frequencyHz >= 10.0 && frequencyHz <= 100.0)) {
      throw new IllegalArgumentException(
          "PWM frequency " + frequencyHz + " Hz is outside 10 to 100 Hz");
    }
  }

  /** Every step that needs no tools, a 30 ohm coil at 14 V, no frequency chosen yet. */
  public static BenchPlan standard() {
    EnumSet<BenchStep> steps = EnumSet.allOf(BenchStep.class);
    steps.remove(BenchStep.ACTUATOR);
    return new BenchPlan(
        steps,
        Double.NaN,
        new Coil(30.0, 0.1, 14.0),
        20.0,
        DEFAULT_RIPPLE_LIMIT_KPA,
        RELIEF_KPA_GAUGE,
        Double.NaN,
        Double.NaN,
        true);
  }

  /** The same plan with other steps. */
  public BenchPlan withSteps(Set<BenchStep> other) {
    return with(other, frequencyHz, coil, rippleLimitKpa, settingsLowDuty, settingsHighDuty);
  }

  /** The same plan for a frequency. */
  public BenchPlan withFrequencyHz(double hz) {
    return with(steps, hz, coil, rippleLimitKpa, settingsLowDuty, settingsHighDuty);
  }

  /** The same plan for another coil. */
  public BenchPlan withCoil(Coil other) {
    return with(steps, frequencyHz, other, rippleLimitKpa, settingsLowDuty, settingsHighDuty);
  }

  /** The same plan with another ripple limit. */
  public BenchPlan withRippleLimitKpa(double kpa) {
    return with(steps, frequencyHz, coil, kpa, settingsLowDuty, settingsHighDuty);
  }

  /** The same plan for a car whose settings use this duty window. */
  public BenchPlan withSettingsWindow(double lowDuty, double highDuty) {
    return with(steps, frequencyHz, coil, rippleLimitKpa, lowDuty, highDuty);
  }

  private BenchPlan with(
      Set<BenchStep> newSteps,
      double hz,
      Coil newCoil,
      double rippleKpa,
      double lowDuty,
      double highDuty) {
    return new BenchPlan(
        newSteps,
        hz,
        newCoil,
        airC,
        rippleKpa,
        pressureLimitKpaGauge,
        lowDuty,
        highDuty,
        hasCoilSwitch);
  }
}
