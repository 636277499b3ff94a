package org.boostwright.rig.scenario.fault;

import java.util.List;

/**
 * What the driver does: key on, start, idle, up to a speed and throttle, then steps in time.
 *
 * <p>Time counts from where the car has settled at {@code startRpm}; what comes before lies at
 * negative times. In gear the driver changes up at {@link Driver#CHANGE_UP_RPM}.
 *
 * @param startRpm engine speed to begin at, 1/min
 * @param startThrottlePct throttle to begin at, percent
 * @param gear gear, 1 = first; 0 = the engine is held at its speed as on a dynamometer
 * @param seconds how long, s
 * @param steps what happens when, in order of time
 */
public record Drive(
    double startRpm, double startThrottlePct, int gear, double seconds, List<Step> steps) {

  /** Copies the steps. */
  public Drive {
    steps = List.copyOf(steps);
  }

  /** What one step changes. */
  public enum Act {
    /** Throttle and pedal to a percentage. */
    THROTTLE_PCT("throttle_pct", 0.0, 100.0),
    /** Change gear: clutch, lift, clutch. */
    SHIFT_TO_GEAR("shift_to_gear", 1.0, 5.0),
    /** Held at an engine speed as on a dynamometer. */
    HOLD_RPM("hold_rpm", 0.0, 8000.0),
    /** Air of another altitude, at once. */
    ALTITUDE_M("altitude_m", -300.0, 4000.0),
    /** Key on (1) or off (0). */
    KEY("key", 0.0, 1.0),
    /** Engine off: it runs down (1). */
    STOP_ENGINE("stop_engine", 1.0, 1.0),
    /** Out of gear (1). */
    NEUTRAL("neutral", 1.0, 1.0);

    private final String key;
    private final double low;
    private final double high;

    Act(String key, double low, double high) {
      this.key = key;
      this.low = low;
      this.high = high;
    }

    /** Name in scenario files. */
    public String key() {
      return key;
    }

    /** Lowest value. */
    public double low() {
      return low;
    }

    /** Highest value. */
    public double high() {
      return high;
    }
  }

  /**
   * One thing the driver does.
   *
   * @param atSeconds when, s
   * @param act what
   * @param value how far
   */
  public record Step(double atSeconds, Act act, double value) {}
}
