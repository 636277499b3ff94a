package org.boostwright.rig.logs.diagnosis;

import java.util.Random;
import org.boostwright.core.settings.FeedbackSettings;
import org.boostwright.core.settings.LimitSettings;
import org.boostwright.core.settings.Settings;
import org.boostwright.core.settings.SpoolSettings;
import org.boostwright.core.table.Curve;
import org.boostwright.core.table.Table2d;
import org.boostwright.rig.logs.LearningCar;
import org.boostwright.rig.logs.pulls.DriveLog;
import org.boostwright.rig.plant.ActuatorParams;
import org.boostwright.rig.plant.CarFaults;
import org.boostwright.rig.plant.PlantParams;
import org.boostwright.rig.plant.SensorParams;
import org.boostwright.rig.plant.ValveFaults;
import org.boostwright.rig.scenario.PullPlan;
import org.boostwright.rig.scenario.PullRun;
import org.boostwright.rig.scenario.VirtualPull;
import org.jspecify.annotations.Nullable;

/** A virtual car with one cause seeded at a random strength, and a pull with it. */
final class SeededCar {
  final Settings settings;
  final DriveLog log;

  private SeededCar(Settings settings, DriveLog log) {
    this.settings = settings;
    this.log = log;
  }

  /** A car somewhere within half the tolerances of a series; null seeds nothing. */
  static SeededCar with(@Nullable Cause cause, long seed) {
    Random random = new Random(seed * 31 + (cause == null ? 99 : cause.ordinal()));
    Settings settings = LearningCar.settings();
    PlantParams car = PlantParams.PROJECT_CAR.spread(seed * 977 + 7000, 0.5);
    double u = random.nextDouble();
    boolean other = random.nextBoolean();
    java.util.function.Consumer<CarFaults> fault = faults -> {};
    if (cause != null) {
      switch (cause) {
        case SENSOR_OFFSET -> {
          SensorParams s = car.sensors();
          car = car.withSensors(s.withMapError(other ? -4.0 - 5.0 * u : 4.0, s.mapScale()));
        }
        case HOSE_OFF ->
            fault = other ? f -> f.valve.actuatorHoseOff = true : f -> f.valve.supplyHoseOff = true;
        case NO_AUTHORITY ->
            fault =
                other
                    ? f -> f.valve.stuck = ValveFaults.Stuck.AT_REST
                    : f -> f.valve.ventOpen = 0.02 * u;
        case CREEP -> car = car.withActuator(gate(car.actuator(), 0.0075 + 0.0020 * u));
        case OVERBOOST_CUT -> settings = cutoff(settings, 181.5 + 1.0 * u);
        case HUNTING -> settings = gains(settings, 2.2 + 1.5 * u);
        case SPIKE -> {
          settings = lead(settings, 0.02 * u);
          car = car.withActuator(car.actuator().withLag(0.10 + 0.05 * u));
        }
        case LEAK -> {
          double leak = 5e-5 + 8e-5 * u;
          fault = f -> f.chargeLeakM2 = leak;
        }
        case SLOW_SPOOL ->
            car =
                car.withEngine(
                    car.engine()
                        .withTurbo(car.engine().turbo().withInertia(6e-5 * (2.0 + 1.0 * u))));
        case SAG -> car = car.withActuator(car.actuator().withLeverRatio(1.0 + 0.3 * u));
        case DUTY_WINDOW -> {
          double shift = 3.5e-3 + 1.5e-3 * u;
          car =
              car.withValve(
                  car.valve()
                      .withDelays(3.5e-3 + (other ? shift : 0), 7.5e-3 + (other ? 0 : shift)));
        }
        case TABLE_HOLE ->
            settings = hole(settings, 4 + random.nextInt(2), (other ? -1 : 1) * (0.12 + 0.06 * u));
      }
    }
    java.util.function.Consumer<CarFaults> seeded = fault;
    PullPlan plan = PullPlan.STANDARD.withSeed(seed).withEvents(new PullPlan.Event(0.0, seeded));
    PullRun run = VirtualPull.run(settings, car, plan, share -> {});
    return new SeededCar(settings, LearningCar.log(run));
  }

  private static ActuatorParams gate(ActuatorParams a, double metres) {
    return new ActuatorParams(
        a.diaphragmM(),
        a.crackKpaGauge(),
        a.spanKpa(),
        metres,
        a.leverRatio(),
        a.lagSeconds(),
        a.frictionN(),
        a.strokeM());
  }

  private static Settings cutoff(Settings s, double kpaAbs) {
    LimitSettings l = s.limits();
    return s.withLimits(
        new LimitSettings(
            kpaAbs,
            l.pressureRatioMax(),
            l.dutyCeiling(),
            l.trimCapDuty(),
            l.targetFactorOverIntakeC(),
            l.springOnlyIntakeC(),
            l.gearTargetKpaAbs(),
            l.lowBoostKpaAbs(),
            l.minControlRpm(),
            l.minThrottlePct(),
            l.engineCut()));
  }

  private static Settings gains(Settings s, double factor) {
    FeedbackSettings f = s.feedback();
    return s.withFeedback(
        new FeedbackSettings(
            true,
            times(f.kpDutyPerKpa(), factor),
            times(f.kiDutyPerKpaSecond(), factor),
            times(f.kdDutySecondPerKpa(), factor),
            f.trackingSeconds(),
            f.derivativeFilterSeconds(),
            f.activeWithinKpa()));
  }

  private static Curve times(Curve c, double factor) {
    double[] v = c.values();
    for (int i = 0; i < v.length; i++) {
      v[i] *= factor;
    }
    return new Curve(c.axis(), v);
  }

  private static Settings lead(Settings s, double seconds) {
    SpoolSettings p = s.spool();
    return s.withSpool(
        new SpoolSettings(true, seconds, p.timeLimitSeconds(), p.minRiseKpaPerSecond()));
  }

  private static Settings hole(Settings s, int column, double duty) {
    Table2d base = s.baseDuty();
    double[] v = base.values();
    int columns = base.columns().size();
    v[(base.rows().size() - 1) * columns + column] += duty;
    return s.withBaseDuty(new Table2d(base.rows(), base.columns(), v));
  }
}
