package org.boostwright.rig.logs.whatif;

import org.boostwright.core.Controller;
import org.boostwright.core.record.LogFormat;
import org.boostwright.core.settings.Settings;
import org.boostwright.rig.logs.identify.RecordedDrive;
import org.boostwright.rig.logs.pulls.DriveLog;
import org.boostwright.rig.logs.pulls.Pull;
import org.boostwright.rig.plant.PlantParams;
import org.boostwright.rig.plant.VirtualCar;
import org.boostwright.rig.scenario.CarRun;

/**
 * A recorded pull driven again by a virtual car under the controller: same air, start, gear and
 * throttle over time; engine speed, pressure and duty are the car's and the controller's own.
 */
final class PullScript {
  private static final double CRUISE_SECONDS = 4.0;
  private static final double TICK_SECONDS = Controller.TICK_NANOS * 1e-9;
  private static final int RPM = LogFormat.column("engine_rpm");

  /**
   * What came of it, at the points of {@link RecordedDrive}.
   *
   * @param kpaAbs pressure with the disturbance, mean of 100 ms, kPa absolute
   * @param duty duty, fraction
   * @param faults confirmed faults, as bits
   * @param endRpm engine speed at the end, 1/min
   */
  @SuppressWarnings("ArrayRecordComponent") // stays inside the package
  record Driven(double[] kpaAbs, double[] duty, long faults, double endRpm) {}

  private PullScript() {}

  static Driven drive(
      PlantParams params, Settings settings, Pull pull, Disturbance disturbance, long seed) {
    DriveLog log = pull.log();
    VirtualCar car =
        new VirtualCar(
            params.withPwmHz(settings.valve().frequencyHz()), RecordedDrive.air(pull), seed);
    CarRun run = new CarRun(settings, car);
    CarWires wires = new CarWires(settings, car, pull.gear());
    boolean[] pulling = {false};
    run.disturb(
        inputs ->
            wires.translate(inputs, pulling[0] ? disturbance.kpaAt(car.engineRpm()) : 0.0));
    run.startEngine();
    run.settleHeld(pull.fromRpm(), RecordedDrive.throttleBefore(pull), CRUISE_SECONDS);
    boolean road = pull.gear() >= 1 && pull.gear() <= params.car().gears().length;
    if (road) {
      car.driveInGearAtRpm(pull.gear(), pull.fromRpm());
    }
    pulling[0] = true;
    int points = RecordedDrive.points(pull);
    double[] kpa = new double[points];
    double[] duty = new double[points];
    int ticks = RecordedDrive.row(pull, 0) - pull.from();
    long faults = 0L;
    for (int row = pull.from(); row < pull.to(); row++) {
      car.setThrottlePct(Math.max(0.0, Math.min(100.0, log.demandPct(row))));
      if (!road) {
        car.holdRpm(log.rpm(row));
      }
      run.tick();
      faults |= (long) run.log().get(run.log().rows() - 1, LogFormat.FAULTS);
      int point = (row - pull.from() + ticks / 2) / ticks - 1;
      if (point >= 0 && point < points) {
        kpa[point] += (car.mapKpaAbs() + disturbance.kpaAt(car.engineRpm())) / ticks;
        duty[point] += run.outputs().dutyFraction / ticks;
      }
    }
    return new Driven(kpa, duty, faults, run.log().get(run.log().rows() - 1, RPM));
  }

  /** The car's mass, corrected so that it gains engine speed as the recorded one did. */
  static PlantParams asHeavy(PlantParams params, Settings driven, Pull pull, Disturbance d) {
    double end = drive(params, driven, pull, d, 1L).endRpm();
    double share = (end - pull.fromRpm()) / (pull.toRpm() - pull.fromRpm());
    boolean sensible = share > 0.3 && share < 3.0 && pull.seconds() > TICK_SECONDS;
    return sensible
        ? params.withCar(params.car().withMass(params.car().massKg() * share))
        : params;
  }
}
