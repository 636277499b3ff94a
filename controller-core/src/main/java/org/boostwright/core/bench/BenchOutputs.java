package org.boostwright.core.bench;

import org.boostwright.core.Inputs;
import org.jspecify.annotations.Nullable;

/** What a bench session wants from the hardware and from the person. A new holder is at rest. */
public final class BenchOutputs {
  /** Share of each PWM period the coil is energised, 0 to 1. */
  public double dutyFraction;

  /** PWM frequency, Hz; above 0 also at rest. */
  public double frequencyHz = BenchPlan.LOWEST_HZ;

  /** PWM channel enabled; false at rest. Enabling starts a new period at once. */
  public boolean pwmEnabled;

  /** High-side coil supply switch commanded closed; false at rest. */
  public boolean coilSupplyClosed;

  /** What the person has to do or tell; null when nothing. */
  public @Nullable Question question;

  /** Coil off by every means at hand. */
  public void rest() {
    dutyFraction = 0.0;
    pwmEnabled = false;
    coilSupplyClosed = false;
  }

  /** Asks the controller for what the session wants; it refuses while the engine may be running. */
  public void into(Inputs inputs) {
    inputs.benchRequest = coilSupplyClosed;
    inputs.benchDutyFraction = coilSupplyClosed && pwmEnabled ? dutyFraction : 0.0;
  }

  /** True when nothing energises the coil. */
  public boolean atRest() {
    return !pwmEnabled && !coilSupplyClosed && dutyFraction == 0.0;
  }
}
