package org.boostwright.core.gate;

import org.boostwright.core.Outputs;
import org.boostwright.core.state.SafetyState;
import org.boostwright.core.table.Curve;

/**
 * The last statement before the output. It only takes away: in any rest state duty is 0, the
 * channel disabled and the coil supply open; a duty that is not a number is rest; a duty above a
 * ceiling is the ceiling.
 */
public final class OutputGate {
  private final Curve dutyCeiling;
  private final double permittedDuty;

  /**
   * @param dutyCeiling highest duty over engine speed, 0 to 1
   * @param permittedDuty highest duty the proofs allow, 0 to 1
   */
  public OutputGate(Curve dutyCeiling, double permittedDuty) {
    this.dutyCeiling = dutyCeiling;
    this.permittedDuty = permittedDuty;
  }

  /** Highest duty at an engine speed, 0 to 1. NaN gives 0. */
  public double ceiling(double engineRpm) {
    if (!(engineRpm >= 0.0)) {
      return 0.0;
    }
    // The minimum of anything and NaN is NaN, which the guard below turns into 0.
    double lower = Math.min(dutyCeiling.at(engineRpm), permittedDuty);
    if (!(lower > 0.0)) {
      return 0.0;
    }
    return Math.min(lower, 1.0);
  }

  /**
   * Writes the hardware commands.
   *
   * @param wantedDuty duty the control law or the bench wants
   * @return false when the wanted duty was not a number while the valve may be driven: the outputs
   *     are at rest and the caller reports it
   */
  public boolean apply(SafetyState state, double wantedDuty, double engineRpm, Outputs outputs) {
    outputs.rest();
    if (state.isRest()) {
      return true;
    }
    if (!Double.isFinite(wantedDuty)) {
      return false;
    }
    double ceiling = state == SafetyState.BENCH ? 1.0 : ceiling(engineRpm);
    double duty = Math.min(wantedDuty, ceiling);
    if (state == SafetyState.READY || !(duty > 0.0)) {
      duty = 0.0;
    }
    outputs.dutyFraction = duty;
    outputs.pwmEnabled = true;
    outputs.coilSupplyClosed = true;
    return true;
  }
}
