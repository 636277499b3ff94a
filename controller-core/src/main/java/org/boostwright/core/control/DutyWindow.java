package org.boostwright.core.control;

import org.boostwright.core.settings.ValveSettings;
import org.boostwright.core.table.Curve;

/**
 * Between the 0..1 valve command and duty.
 *
 * <p>Inside the proven window a command maps onto duty by the bench's curve. Below the window the
 * valve never vents: a duty in that gap cannot be made, and the mean pressure jumps at its edge, so
 * the gap is left as a whole, upwards from two thirds of the edge and downwards from one third.
 * Above the window the valve never supplies: the same as energised throughout.
 */
public final class DutyWindow {
  private static final double LEAVE_GAP_UP = 2.0 / 3.0;
  private static final double LEAVE_GAP_DOWN = 1.0 / 3.0;

  private final Curve commandToDuty;
  private final double low;
  private final double high;
  private boolean inWindow;

  /** A window at rest. */
  public DutyWindow(ValveSettings valve) {
    commandToDuty = valve.commandToDuty();
    low = valve.windowLowDuty();
    high = valve.windowHighDuty();
  }

  /** Duty for a command, 0 to 1 inside the window. NaN gives NaN. */
  public double dutyOf(double command) {
    if (Double.isNaN(command)) {
      return Double.NaN;
    }
    return commandToDuty.at(command);
  }

  /** Command for a duty, the inverse of {@link #dutyOf}; below the window 0, above it 1. */
  public double commandOf(double dutyFraction) {
    if (!(dutyFraction > low)) {
      return Double.isNaN(dutyFraction) ? Double.NaN : 0.0;
    }
    if (dutyFraction >= high) {
      return 1.0;
    }
    int last = commandToDuty.axis().size() - 1;
    int i = 0;
    while (i < last - 1 && dutyFraction > commandToDuty.value(i + 1)) {
      i++;
    }
    double d0 = commandToDuty.value(i);
    double d1 = commandToDuty.value(i + 1);
    double c0 = commandToDuty.axis().point(i);
    double c1 = commandToDuty.axis().point(i + 1);
    return c0 + (c1 - c0) * (dutyFraction - d0) / (d1 - d0);
  }

  /** Makes a duty that the valve can make, leaving the lower gap with hysteresis. */
  public double realisable(double dutyFraction) {
    if (dutyFraction >= low) {
      inWindow = true;
      return dutyFraction;
    }
    if (Double.isNaN(dutyFraction)) {
      return dutyFraction;
    }
    if (inWindow) {
      inWindow = dutyFraction > LEAVE_GAP_DOWN * low;
    } else {
      inWindow = dutyFraction >= LEAVE_GAP_UP * low;
    }
    return inWindow ? low : 0.0;
  }

  /** Width of the window, as duty. */
  public double width() {
    return high - low;
  }

  /** Back to rest. */
  public void reset() {
    inWindow = false;
  }
}
