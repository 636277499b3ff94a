package org.boostwright.rig.scenario;

import org.boostwright.core.Controller;
import org.boostwright.core.settings.Settings;
import org.boostwright.core.state.Permission;
import org.boostwright.rig.plant.Atmosphere;
import org.boostwright.rig.plant.PlantParams;
import org.boostwright.rig.plant.VirtualCar;
import org.jspecify.annotations.Nullable;

/**
 * A full-throttle run of the virtual car in one gear: key on, engine started, settled at part
 * throttle, throttle to the floor, until an engine speed or a time, throttle released.
 *
 * @param gear gear, first gear 1
 * @param fromRpm engine speed at the step, 1/min
 * @param toRpm engine speed at which the throttle is released, 1/min
 * @param partThrottlePct settled throttle before the step, percent
 * @param longestSeconds the run ends after this long at the latest
 */
public record Pull(
    int gear, double fromRpm, double toRpm, double partThrottlePct, double longestSeconds) {

  /** Third gear from 2500 to 6000 rpm out of settled 15 % throttle. */
  public static final Pull THIRD_GEAR = new Pull(3, 2500.0, 6000.0, 15.0, 20.0);

  /** Time settled before the step, s. */
  private static final double SETTLE_SECONDS = 8.0;

  /** Time recorded after the release, s. */
  private static final double AFTER_SECONDS = 1.0;

  /** Listens while a long run goes on. */
  @FunctionalInterface
  public interface Listener {
    /**
     * @param run the run so far
     * @param share how far the engine speed has come, 0 to 1
     */
    void ticked(CarRun run, double share);
  }

  /** The same pull in another gear. */
  public Pull inGear(int other) {
    return new Pull(other, fromRpm, toRpm, partThrottlePct, longestSeconds);
  }

  /** Runs it on a fresh car. */
  public PullResult run(
      Settings settings,
      Permission permission,
      PlantParams params,
      Atmosphere atmosphere,
      long seed) {
    return run(new CarRun(settings, permission, new VirtualCar(params, atmosphere, seed)), null);
  }

  /**
   * Runs it on a prepared car whose engine stands still.
   *
   * @param listener told after each tick of the pull, or null
   */
  public PullResult run(CarRun run, @Nullable Listener listener) {
    run.startEngine();
    run.settleHeld(fromRpm, partThrottlePct, SETTLE_SECONDS);
    VirtualCar car = run.car();
    car.driveInGearAtRpm(gear, fromRpm);
    car.setThrottlePct(100.0);
    int firstRow = run.log().rows();
    double end = run.nowNanos() * 1e-9 + longestSeconds;
    while (car.engineRpm() < toRpm && run.nowNanos() * 1e-9 < end) {
      run.tick();
      if (listener != null) {
        listener.ticked(run, (car.engineRpm() - fromRpm) / (toRpm - fromRpm));
      }
    }
    int lastRow = run.log().rows() - 1;
    car.setThrottlePct(0.0);
    run.run(AFTER_SECONDS);
    return new PullResult(run, firstRow, lastRow);
  }

  /**
   * Time from the throttle step until true pressure reaches a level with the gate held shut, s; NaN
   * when it does not within the pull. The fastest the turbo can be: what a spool is measured by.
   */
  public double gateShutSeconds(PlantParams params, Atmosphere atmosphere, double kpaAbs) {
    VirtualCar car = new VirtualCar(params, atmosphere, 1L);
    car.coil(0.0, false, false);
    car.settleAt(fromRpm, partThrottlePct);
    car.driveInGearAtRpm(gear, fromRpm);
    car.setThrottlePct(100.0);
    car.coil(1.0, true, true);
    long ticks = Math.round(longestSeconds * 200.0);
    for (long i = 1; i <= ticks && car.engineRpm() < toRpm; i++) {
      car.advance(Controller.TICK_NANOS);
      if (car.mapKpaAbs() >= kpaAbs) {
        return i * Controller.TICK_NANOS * 1e-9;
      }
    }
    return Double.NaN;
  }
}
