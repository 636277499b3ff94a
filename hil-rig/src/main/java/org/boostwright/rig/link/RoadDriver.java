package org.boostwright.rig.link;

import java.util.function.BooleanSupplier;
import org.boostwright.core.state.SafetyState;
import org.boostwright.rig.plant.VirtualCar;

/** Drives the virtual car behind the wires, in real time. */
public final class RoadDriver {
  private static final double KEY_ON_SECONDS = 3.5;
  private static final double CRANK_RPM = 200.0;
  private static final double CRANK_RPM_PER_SECOND = 800.0;
  private static final double IDLE_SECONDS = 1.0;
  private static final double RAMP_RPM_PER_SECOND = 4000.0;
  private static final double HELD_RPM = 4000.0;
  private static final double RELEASED_SECONDS = 2.3;
  private static final double BOOST_SECONDS = 12.0;
  private static final double SETTLED_SECONDS = 0.4;
  private static final double BOOSTED_KPA = 150.0;
  private static final double CRUISE_PCT = 12.0;

  private final RigLoop loop;
  private final VirtualCar car;

  /** A driver in a car that stands. */
  public RoadDriver(RigLoop loop, VirtualCar car) {
    this.loop = loop;
    this.car = car;
  }

  private SafetyState state() {
    return loop.observer().last().state;
  }

  /** Key on with the engine stopped until ambient is known, cranking, idle. */
  public void startEngine() {
    car.sensors().keyOn = true;
    car.setThrottlePct(0.0);
    loop.run(KEY_ON_SECONDS);
    double idle = car.params().car().idleRpm();
    car.holdRpm(CRANK_RPM, CRANK_RPM_PER_SECOND);
    loop.run((idle - CRANK_RPM) / CRANK_RPM_PER_SECOND);
    car.holdRpm(idle);
    loop.run(IDLE_SECONDS);
  }

  /** Holds an engine speed as a dynamometer does, reached at a pace a signal can have. */
  private void rampTo(double rpm) {
    double from = car.engineRpm();
    double seconds = Math.abs(rpm - from) / RAMP_RPM_PER_SECOND;
    if (seconds > 0.01) {
      car.holdRpm(from, Math.signum(rpm - from) * RAMP_RPM_PER_SECOND);
      loop.run(seconds);
    }
    car.holdRpm(rpm);
  }

  /**
   * Full throttle at a held speed until the controller has held boost for a moment.
   *
   * @return false when it does not get there
   */
  public boolean toBoost() {
    rampTo(HELD_RPM);
    car.setThrottlePct(100.0);
    BooleanSupplier boosted =
        () ->
            state() == SafetyState.CONTROLLING
                && loop.observer().last().dutyFraction > 0.0
                && car.mapKpaAbs() > BOOSTED_KPA;
    long settled = Math.round(SETTLED_SECONDS / 0.005);
    long[] since = {0L};
    return loop.runUntil(
        () -> {
          since[0] = boosted.getAsBoolean() ? since[0] + 1L : 0L;
          return since[0] >= settled;
        },
        BOOST_SECONDS);
  }

  /** Full throttle at a held speed for a time, s, whatever the controller does. */
  public void fullThrottle(double seconds) {
    rampTo(HELD_RPM);
    car.setThrottlePct(100.0);
    loop.run(seconds);
  }

  /** Throttle released until every clear rule that asks for it is met. */
  public void release() {
    car.setThrottlePct(CRUISE_PCT);
    loop.run(RELEASED_SECONDS);
    if (state() == SafetyState.LOCKED_UNTIL_RESTART) {
      car.sensors().keyOn = false;
      loop.run(0.2);
      car.sensors().keyOn = true;
      loop.run(0.2);
    }
  }

  /** Engine off and known to be stopped. */
  public void stopEngine() {
    car.setThrottlePct(0.0);
    rampTo(300.0);
    car.stopEngine();
    loop.run(3.5);
  }

  /**
   * Ordinary driving for a time: cruise, pull through the gears, lift, roll, again.
   *
   * @param seconds how long
   * @param alive asked in between; false ends the drive
   */
  public void drive(double seconds, BooleanSupplier alive) {
    long end = loop.ticks() + Math.round(seconds / 0.005);
    while (loop.ticks() < end && alive.getAsBoolean() && loop.more()) {
      // The brakes, or the clutch: to 2500 1/min in third at a pace an engine can have.
      rampTo(2500.0);
      car.driveInGearAtRpm(3, 2500.0);
      car.setThrottlePct(CRUISE_PCT);
      runNotBeyond(2.0, end);
      car.setThrottlePct(100.0);
      until(() -> car.engineRpm() >= 6000.0, 10.0, end);
      car.shiftTo(4);
      runNotBeyond(2.0, end);
      car.setThrottlePct(60.0);
      runNotBeyond(1.5, end);
      car.setThrottlePct(0.0);
      runNotBeyond(1.5, end);
    }
  }

  private void runNotBeyond(double seconds, long endTick) {
    loop.run(Math.min(seconds, (endTick - loop.ticks()) * 0.005));
  }

  private void until(BooleanSupplier so, double longest, long endTick) {
    loop.runUntil(so, Math.min(longest, (endTick - loop.ticks()) * 0.005));
  }
}
