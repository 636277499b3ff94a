package org.boostwright.rig.scenario;

import java.util.List;
import java.util.function.Consumer;
import org.boostwright.rig.plant.Atmosphere;
import org.boostwright.rig.plant.CarFaults;

/**
 * What a virtual full-throttle pull is to be: in gear, out of settled {@link #CRUISE_THROTTLE_PCT}
 * throttle, to the floor at one engine speed and shut at another.
 *
 * @param gear gear, 1 = first
 * @param fromRpm engine speed at which the throttle opens, 1/min
 * @param toRpm engine speed at which it shuts, 1/min
 * @param altitudeM altitude, m geopotential
 * @param airC outside air, degC
 * @param seed seed of every noise
 * @param events what happens to the car on the way, in order of time
 */
public record PullPlan(
    int gear,
    double fromRpm,
    double toRpm,
    double altitudeM,
    double airC,
    long seed,
    List<Event> events) {

  /** Throttle before the pull, percent. */
  public static final double CRUISE_THROTTLE_PCT = 15.0;

  /** Third gear from 2500 to 6200 1/min at sea level and 20 degC, nothing happens. */
  public static final PullPlan STANDARD = new PullPlan(3, 2500, 6200, 0, 20, 1, List.of());

  /** Copies the events. */
  public PullPlan {
    events = List.copyOf(events);
  }

  /** The same pull in other air. */
  public PullPlan inAir(double otherAltitudeM, double otherAirC) {
    return new PullPlan(gear, fromRpm, toRpm, otherAltitudeM, otherAirC, seed, events);
  }

  /** The same pull ending at another engine speed. */
  public PullPlan to(double otherRpm) {
    return new PullPlan(gear, fromRpm, otherRpm, altitudeM, airC, seed, events);
  }

  /** The same pull with another seed. */
  public PullPlan withSeed(long other) {
    return new PullPlan(gear, fromRpm, toRpm, altitudeM, airC, other, events);
  }

  /** The air the plan drives in. */
  public Atmosphere air() {
    return Atmosphere.at(altitudeM, airC);
  }

  /** The same pull with this happening on the way. */
  public PullPlan withEvents(Event... more) {
    return new PullPlan(gear, fromRpm, toRpm, altitudeM, airC, seed, List.of(more));
  }

  /**
   * Something done to the car, once.
   *
   * @param secondsIntoPull time since the throttle opened, s
   * @param change what is done
   */
  public record Event(double secondsIntoPull, Consumer<CarFaults> change) {}
}
