package org.boostwright.core.settings;

/**
 * The wastegate actuator.
 *
 * @param layout how it is moved
 * @param springCracksKpaGauge pressure at which the gate begins to open, kPa gauge; NaN when not
 *     known
 * @param springFullLiftKpaGauge pressure at which the gate is fully open, kPa gauge; NaN when not
 *     known
 */
public record ActuatorSettings(
    ActuatorLayout layout, double springCracksKpaGauge, double springFullLiftKpaGauge) {
  /** One port, spring not measured yet. */
  public static final ActuatorSettings UNKNOWN_SPRING =
      new ActuatorSettings(ActuatorLayout.SINGLE_PORT, Double.NaN, Double.NaN);
}
