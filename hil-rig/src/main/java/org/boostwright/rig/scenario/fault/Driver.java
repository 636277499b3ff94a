package org.boostwright.rig.scenario.fault;

import org.boostwright.rig.plant.Atmosphere;
import org.boostwright.rig.plant.VirtualCar;

/** Does in one car what a {@link Drive} says, from time alone and the car's own engine speed. */
final class Driver {
  /** In gear the driver changes up here, 1/min; in the top gear the throttle closes. */
  static final double CHANGE_UP_RPM = 6400.0;

  private static final double KEY_ON_SECONDS = 3.0;
  private static final double CRANK_RPM = 200.0;
  private static final double CRANK_RPM_PER_SECOND = 800.0;
  private static final double IDLE_SECONDS = 1.5;
  private static final double RAMP_RPM_PER_SECOND = 2500.0;
  private static final double SETTLE_SECONDS = 0.5;

  private enum Phase {
    KEY_ON,
    CRANK,
    IDLE,
    RAMP,
    SETTLE,
    DRIVE
  }

  private final Drive drive;
  private final double airC;
  private final double idleAt;
  private final double rampAt;
  private final double settleAt;
  private final double leadSeconds;
  private Phase phase = Phase.KEY_ON;
  private int nextStep;

  Driver(Drive drive, double idleRpm, double airC) {
    this.drive = drive;
    this.airC = airC;
    idleAt = KEY_ON_SECONDS + (idleRpm - CRANK_RPM) / CRANK_RPM_PER_SECOND;
    rampAt = idleAt + IDLE_SECONDS;
    settleAt = rampAt + Math.max(0.0, drive.startRpm() - idleRpm) / RAMP_RPM_PER_SECOND;
    leadSeconds = settleAt + SETTLE_SECONDS;
  }

  /** From key on to the beginning of the drive's own time, s. */
  double leadSeconds() {
    return leadSeconds;
  }

  /** Before each tick; {@code seconds} since key on. */
  void act(VirtualCar car, double seconds) {
    double idleRpm = car.params().car().idleRpm();
    if (phase == Phase.KEY_ON && seconds >= KEY_ON_SECONDS) {
      phase = Phase.CRANK;
      car.holdRpm(CRANK_RPM, CRANK_RPM_PER_SECOND);
    } else if (phase == Phase.CRANK && seconds >= idleAt) {
      phase = Phase.IDLE;
      car.holdRpm(idleRpm);
    } else if (phase == Phase.IDLE && seconds >= rampAt) {
      phase = Phase.RAMP;
      car.setThrottlePct(drive.startThrottlePct());
      car.holdRpm(idleRpm, RAMP_RPM_PER_SECOND);
    } else if (phase == Phase.RAMP && seconds >= settleAt) {
      phase = Phase.SETTLE;
      car.holdRpm(drive.startRpm());
    } else if (phase == Phase.SETTLE && seconds >= leadSeconds) {
      phase = Phase.DRIVE;
      if (drive.gear() > 0) {
        car.driveInGearAtRpm(drive.gear(), drive.startRpm());
      }
    }
    if (phase == Phase.DRIVE) {
      steps(car, seconds - leadSeconds);
      changeUp(car);
    }
  }

  private void steps(VirtualCar car, double seconds) {
    while (nextStep < drive.steps().size()
        && seconds >= drive.steps().get(nextStep).atSeconds() - 1e-9) {
      Drive.Step step = drive.steps().get(nextStep++);
      double value = step.value();
      switch (step.act()) {
        case THROTTLE_PCT -> car.setThrottlePct(value);
        case SHIFT_TO_GEAR -> car.shiftTo((int) value);
        case HOLD_RPM -> car.holdRpm(value);
        case ALTITUDE_M -> car.setAtmosphere(Atmosphere.at(value, airC));
        case KEY -> car.sensors().keyOn = value > 0.5;
        case STOP_ENGINE -> car.stopEngine();
        case NEUTRAL -> car.neutral();
      }
    }
  }

  private static void changeUp(VirtualCar car) {
    if (car.gear() == 0 || car.shifting() || car.engineRpm() < CHANGE_UP_RPM) {
      return;
    }
    if (car.gear() < car.params().car().gears().length) {
      car.shiftTo(car.gear() + 1);
    } else {
      car.setThrottlePct(0.0);
    }
  }
}
