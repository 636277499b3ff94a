package org.boostwright.rig.scenario;

import java.util.ArrayList;
import java.util.List;
import java.util.function.DoubleConsumer;
import org.boostwright.core.Controller;
import org.boostwright.core.settings.Settings;
import org.boostwright.core.state.Permission;
import org.boostwright.rig.plant.PlantParams;
import org.boostwright.rig.plant.VirtualCar;

/**
 * Drives one pull in stepped time: key on with the engine stopped, start, idle, part throttle until
 * settled, in gear at full throttle from low to high engine speed, throttle shut.
 *
 * <p>The same settings, car and plan give the same bits.
 */
public final class VirtualPull {
  private static final double CRUISE_SECONDS = 8.0;
  private static final double LONGEST_PULL_SECONDS = 60.0;
  private static final double SHUT_SECONDS = 1.0;

  private VirtualPull() {}

  /**
   * Drives a pull.
   *
   * @param settings settings of the controller; its PWM frequency drives the valve
   * @param params the car
   * @param progress told the share done, 0 to 1, now and then
   */
  public static PullRun run(
      Settings settings, PlantParams params, PullPlan plan, DoubleConsumer progress) {
    return run(settings, Permission.FULL, params, plan, progress);
  }

  /**
   * Drives a pull with no more than the proofs allow.
   *
   * @param settings settings of the controller; its PWM frequency drives the valve
   * @param permission how far the controller may go
   * @param params the car
   * @param progress told the share done, 0 to 1, now and then
   */
  public static PullRun run(
      Settings settings,
      Permission permission,
      PlantParams params,
      PullPlan plan,
      DoubleConsumer progress) {
    VirtualCar car =
        new VirtualCar(params.withPwmHz(settings.valve().frequencyHz()), plan.air(), plan.seed());
    CarRun run = new CarRun(settings, permission, car);
    run.startEngine();
    run.settleHeld(plan.fromRpm(), PullPlan.CRUISE_THROTTLE_PCT, CRUISE_SECONDS);
    car.driveInGearAtRpm(plan.gear(), plan.fromRpm());
    int openedAt = run.log().rows();
    List<Integer> eventRows = pull(run, plan, progress);
    int shutAt = run.log().rows();
    car.setThrottlePct(0.0);
    run.run(SHUT_SECONDS);
    progress.accept(1.0);
    return new PullRun(settings, plan, run.log(), openedAt, shutAt, List.copyOf(eventRows));
  }

  private static List<Integer> pull(CarRun run, PullPlan plan, DoubleConsumer progress) {
    VirtualCar car = run.car();
    car.setThrottlePct(100.0);
    long startNanos = run.nowNanos();
    List<Integer> eventRows = new ArrayList<>();
    while (true) {
      double seconds = (run.nowNanos() - startNanos) * 1e-9;
      if (!(car.engineRpm() < plan.toRpm() && seconds < LONGEST_PULL_SECONDS)) {
        return eventRows;
      }
      while (eventRows.size() < plan.events().size()
          && seconds >= plan.events().get(eventRows.size()).secondsIntoPull()) {
        plan.events().get(eventRows.size()).change().accept(car.faults());
        eventRows.add(run.log().rows());
      }
      run.tick();
      progress.accept((car.engineRpm() - plan.fromRpm()) / (plan.toRpm() - plan.fromRpm()));
    }
  }

  /**
   * Time from the throttle opening until true pressure reaches a level with the wastegate held shut
   * throughout, s; NaN when it does not within the pull. The fastest the turbo can be: what a spool
   * is measured by.
   */
  public static double gateShutSeconds(PlantParams params, PullPlan plan, double kpaAbs) {
    VirtualCar car = new VirtualCar(params, plan.air(), plan.seed());
    car.settleAt(plan.fromRpm(), PullPlan.CRUISE_THROTTLE_PCT);
    car.driveInGearAtRpm(plan.gear(), plan.fromRpm());
    car.setThrottlePct(100.0);
    car.coil(1.0, true, true);
    for (long nanos = Controller.TICK_NANOS;
        car.engineRpm() < plan.toRpm() && nanos * 1e-9 < LONGEST_PULL_SECONDS;
        nanos += Controller.TICK_NANOS) {
      car.advance(Controller.TICK_NANOS);
      if (car.mapKpaAbs() >= kpaAbs) {
        return nanos * 1e-9;
      }
    }
    return Double.NaN;
  }
}
