package org.boostwright.rig.scenario;

import java.util.ArrayList;
import java.util.List;
import java.util.function.DoubleConsumer;
import org.boostwright.core.Controller;
import org.boostwright.core.Inputs;
import org.boostwright.core.Outputs;
import org.boostwright.core.record.LogFormat;
import org.boostwright.core.settings.Settings;
import org.boostwright.rig.plant.Atmosphere;
import org.boostwright.rig.plant.PlantParams;
import org.boostwright.rig.plant.VirtualCar;

/**
 * Drives one pull in stepped time: key on with the engine stopped, start, idle, part throttle in
 * gear, full throttle from low to high engine speed, throttle shut.
 *
 * <p>The same settings, car and plan give the same bits.
 */
public final class VirtualPull {
  private static final double KEY_ON_SECONDS = 3.0;
  private static final double CRANK_RPM = 200.0;
  private static final double CRANK_RPM_PER_SECOND = 800.0;
  private static final double IDLE_SECONDS = 1.5;
  private static final double RISE_RPM_PER_SECOND = 1500.0;
  private static final double CRUISE_BELOW_RPM = 150.0;
  private static final double LONGEST_CRUISE_SECONDS = 20.0;
  private static final double CRUISE_THROTTLE_PCT = 15.0;
  private static final double LONGEST_PULL_SECONDS = 60.0;
  private static final double SHUT_SECONDS = 1.0;

  private final Settings settings;
  private final PullPlan plan;
  private final VirtualCar car;
  private final Controller controller;
  private final Inputs inputs = new Inputs();
  private final Outputs outputs = new Outputs();
  private final List<double[]> rows = new ArrayList<>();
  private final List<PullRun.Truth> truths = new ArrayList<>();
  private final List<Integer> eventRows = new ArrayList<>();
  private long nowNanos;

  private VirtualPull(Settings settings, PlantParams params, PullPlan plan) {
    this.settings = settings;
    this.plan = plan;
    car =
        new VirtualCar(
            params.withPwmHz(settings.valve().frequencyHz()),
            Atmosphere.at(plan.altitudeM(), plan.airC()),
            plan.seed());
    controller = new Controller(settings);
  }

  /**
   * Drives a pull.
   *
   * @param settings settings of the controller; its PWM frequency drives the valve
   * @param params the car
   * @param progress told the share done, 0 to 1, now and then
   */
  public static PullRun run(
      Settings settings, PlantParams params, PullPlan plan, DoubleConsumer progress) {
    return new VirtualPull(settings, params, plan).run(progress);
  }

  private PullRun run(DoubleConsumer progress) {
    start();
    car.setThrottlePct(CRUISE_THROTTLE_PCT);
    double idleRpm = car.params().car().idleRpm();
    double cruiseRpm = plan.fromRpm() - CRUISE_BELOW_RPM;
    car.holdRpm(idleRpm, RISE_RPM_PER_SECOND);
    pass((cruiseRpm - idleRpm) / RISE_RPM_PER_SECOND);
    car.driveInGearAtRpm(plan.gear(), cruiseRpm);
    long latest = nowNanos + Math.round(LONGEST_CRUISE_SECONDS * 1e9);
    while (car.engineRpm() < plan.fromRpm() && nowNanos < latest) {
      tick();
    }
    int openedAt = rows.size();
    pull(progress);
    int shutAt = rows.size();
    car.setThrottlePct(0.0);
    pass(SHUT_SECONDS);
    progress.accept(1.0);
    return new PullRun(settings, plan, rows, truths, openedAt, shutAt, eventRows);
  }

  private void start() {
    car.setThrottlePct(0.0);
    pass(KEY_ON_SECONDS);
    double idleRpm = car.params().car().idleRpm();
    car.holdRpm(CRANK_RPM, CRANK_RPM_PER_SECOND);
    pass((idleRpm - CRANK_RPM) / CRANK_RPM_PER_SECOND);
    car.holdRpm(idleRpm);
    pass(IDLE_SECONDS);
  }

  private void pull(DoubleConsumer progress) {
    car.setThrottlePct(100.0);
    long startNanos = nowNanos;
    int next = 0;
    while (true) {
      double seconds = (nowNanos - startNanos) * 1e-9;
      if (!(car.engineRpm() < plan.toRpm() && seconds < LONGEST_PULL_SECONDS)) {
        return;
      }
      while (next < plan.events().size() && seconds >= plan.events().get(next).secondsIntoPull()) {
        plan.events().get(next++).change().accept(car.faults());
        eventRows.add(rows.size());
      }
      tick();
      progress.accept((car.engineRpm() - plan.fromRpm()) / (plan.toRpm() - plan.fromRpm()));
    }
  }

  private void pass(double seconds) {
    long end = nowNanos + Math.round(seconds * 1e9);
    while (nowNanos < end) {
      tick();
    }
  }

  private void tick() {
    car.advance(Controller.TICK_NANOS);
    nowNanos += Controller.TICK_NANOS;
    car.read(inputs, nowNanos);
    controller.step(nowNanos, inputs, outputs);
    car.apply(outputs);
    double[] row = new double[LogFormat.COLUMN_COUNT];
    LogFormat.fill(row, nowNanos, inputs, outputs);
    rows.add(row);
    truths.add(
        new PullRun.Truth(
            car.mapKpaAbs(),
            car.actuatorKpaGauge(),
            car.wastegateLift(),
            car.turboKrpm(),
            car.engineRpm()));
  }
}
