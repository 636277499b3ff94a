package org.boostwright.rig.scenario.fault;

import org.boostwright.core.settings.Settings;
import org.boostwright.core.state.Permission;
import org.boostwright.rig.plant.Atmosphere;
import org.boostwright.rig.plant.PlantParams;

/**
 * Car, settings and drive of one run.
 *
 * @param settings settings of the controller
 * @param permission how far the proofs let it go
 * @param car the car
 * @param altitudeM altitude, m
 * @param airC outside air, degC
 * @param seed seed of every noise
 * @param drive what the driver does
 * @param recirculationStuck recirculation valve stuck at 0 (shut) to 1 (open) all along, in the twin
 *     too; NaN = sound
 * @param overLink the inputs come over the serial link
 * @param gateHoldSeconds how long the heartbeat circuit holds after the last edge, s
 * @param clockAtStartNanos the monotonic clock at key on, ns; the twin's begins at 0
 */
public record Setup(
    Settings settings,
    Permission permission,
    PlantParams car,
    double altitudeM,
    double airC,
    long seed,
    Drive drive,
    double recirculationStuck,
    boolean overLink,
    double gateHoldSeconds,
    long clockAtStartNanos) {

  /** Hold time of the heartbeat circuit, longest over tolerances (simulated circuit, HW-02), s. */
  public static final double LONGEST_HOLD_SECONDS = 0.0906;

  /** A run with everything proven, over wires, with the slowest heartbeat circuit. */
  public static Setup of(
      Settings settings, PlantParams car, double altitudeM, double airC, long seed, Drive drive) {
    return new Setup(
        settings,
        Permission.FULL,
        car,
        altitudeM,
        airC,
        seed,
        drive,
        Double.NaN,
        false,
        LONGEST_HOLD_SECONDS,
        0L);
  }

  /** The air around the car. */
  public Atmosphere air() {
    return Atmosphere.at(altitudeM, airC);
  }

  /** The same over the serial link. */
  public Setup acrossLink(boolean link) {
    return new Setup(
        settings,
        permission,
        car,
        altitudeM,
        airC,
        seed,
        drive,
        recirculationStuck,
        link,
        gateHoldSeconds,
        clockAtStartNanos);
  }

  /** The same with a recirculation valve stuck at 0 (shut) to 1 (open) all along. */
  public Setup withRecirculationStuck(double open) {
    return new Setup(
        settings,
        permission,
        car,
        altitudeM,
        airC,
        seed,
        drive,
        open,
        overLink,
        gateHoldSeconds,
        clockAtStartNanos);
  }

  /** The same with other proofs. */
  public Setup withPermission(Permission other) {
    return new Setup(
        settings,
        other,
        car,
        altitudeM,
        airC,
        seed,
        drive,
        recirculationStuck,
        overLink,
        gateHoldSeconds,
        clockAtStartNanos);
  }

  /** The same with a clock that begins elsewhere. */
  public Setup withClockAt(long nanos) {
    return new Setup(
        settings,
        permission,
        car,
        altitudeM,
        airC,
        seed,
        drive,
        recirculationStuck,
        overLink,
        gateHoldSeconds,
        nanos);
  }
}
