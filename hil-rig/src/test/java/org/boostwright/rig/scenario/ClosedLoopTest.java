package org.boostwright.rig.scenario;

import static org.assertj.core.api.Assertions.assertThat;

import java.util.ArrayList;
import java.util.List;
import java.util.Map;
import java.util.TreeMap;
import java.util.concurrent.ConcurrentHashMap;
import org.boostwright.core.monitor.FaultCode;
import org.boostwright.core.record.LogFormat;
import org.boostwright.core.settings.LimitSettings;
import org.boostwright.core.settings.SensorSettings;
import org.boostwright.core.settings.Settings;
import org.boostwright.core.state.SafetyState;
import org.boostwright.core.table.Axis;
import org.boostwright.core.table.Curve;
import org.boostwright.core.table.Table2d;
import org.boostwright.rig.plant.Atmosphere;
import org.boostwright.rig.plant.PlantParams;
import org.boostwright.rig.plant.VirtualCar;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;

/**
 * Closed loop on the project car: third gear, full-throttle step out of settled 15 % at 2500 rpm,
 * to 6000 rpm. Requirement: true pressure arrives within 0.5 s of the gate-shut run, overshoots at
 * most 5 kPa, and from one second after arrival its 100 ms mean stays within 2 kPa of the target;
 * base duty wrong by 15 % either way; sea level at 0 and 40 degC, 2000 m at 0 degC. Gains, spool
 * and trim cap are those of the shipped project car; duty ceiling and per-gear limits are out of
 * the way. The car's home is at the altitude it is driven at: without a barometer one from sea
 * level gets a lower target up there (AmbientWatchTest).
 */
class ClosedLoopTest {
  private static final double[] RPM = {2000, 2500, 3000, 3500, 4000, 4500, 5000, 5500, 6000, 6500};
  private static final double TARGET_KPA = 180.0;
  private static final double BELOW_GATE_SHUT_KPA = 8.0;
  private static final Atmosphere TABLED_AT = Atmosphere.at(0.0, 20.0);
  private static final Map<String, double[]> TARGETS = new ConcurrentHashMap<>();
  private static final Map<String, double[]> BASES = new ConcurrentHashMap<>();

  /** The target, or the gate-shut pressure less 8 kPa where that is lower. */
  private static double[] target(Atmosphere atmosphere) {
    return TARGETS.computeIfAbsent(
        atmosphere.toString(),
        key -> {
          SettledPoint point = new SettledPoint(PlantParams.PROJECT_CAR, atmosphere);
          double[] kpa = new double[RPM.length];
          for (int i = 0; i < kpa.length; i++) {
            double shut = point.mapKpaAbs(RPM[i], 100.0, 1.0);
            kpa[i] = Math.min(TARGET_KPA, shut - BELOW_GATE_SHUT_KPA);
          }
          return kpa;
        });
  }

  /** Base duty that holds the target at sea level and 20 degC, where the table is made. */
  private static double[] base(double[] targetKpaAbs) {
    return BASES.computeIfAbsent(
        java.util.Arrays.toString(targetKpaAbs),
        key -> {
          SettledPoint point = new SettledPoint(PlantParams.PROJECT_CAR, TABLED_AT);
          double[] duty = new double[RPM.length];
          for (int i = 0; i < duty.length; i++) {
            duty[i] = point.dutyFor(RPM[i], 100.0, targetKpaAbs[i], 0.1, 0.78);
          }
          return duty;
        });
  }

  private static Settings settings(
      double[] targetKpaAbs, double[] duty, double factor, Atmosphere home) {
    Axis row = new Axis(0.0);
    double[] scaled = duty.clone();
    for (int i = 0; i < scaled.length; i++) {
      scaled[i] *= factor;
    }
    Settings car = ProjectCarSettings.load();
    LimitSettings limits = car.limits();
    SensorSettings sensors = car.sensors();
    return car.withSensors(
            new SensorSettings(
                sensors.channels(),
                sensors.mapLocation(),
                sensors.lifeChangeKpa(),
                sensors.mapNoiseKpa(),
                home.kpaAbs()))
        .withTarget(new Table2d(row, new Axis(RPM), targetKpaAbs))
        .withBaseDuty(new Table2d(row, new Axis(RPM), scaled))
        .withLimits(
            new LimitSettings(
                205.0,
                limits.pressureRatioMax(),
                Curve.constant(1.0),
                limits.trimCapDuty(),
                Curve.constant(1.0),
                limits.springOnlyIntakeC(),
                new double[0],
                TARGET_KPA,
                limits.minControlRpm(),
                limits.minThrottlePct(),
                false));
  }

  @ParameterizedTest
  @CsvSource({
    "0, 0, 0.85", "0, 0, 1.00", "0, 0, 1.15",
    "0, 40, 0.85", "0, 40, 1.00", "0, 40, 1.15",
    "2000, 0, 0.85", "2000, 0, 1.00", "2000, 0, 1.15"
  })
  void reachesHoldsAndDoesNotOvershootTheTarget(double altitudeM, double airC, double factor) {
    Atmosphere air = Atmosphere.at(altitudeM, airC);
    double[] target = target(air);
    Settings settings = settings(target, base(target), factor, air);
    PullPlan plan = PullPlan.STANDARD.inAir(altitudeM, airC).to(6000.0);
    double shut = VirtualPull.gateShutSeconds(PlantParams.PROJECT_CAR, plan, TARGET_KPA - 2.0);
    for (long seed = 1; seed <= 3; seed++) {
      PullRun run =
          VirtualPull.run(settings, PlantParams.PROJECT_CAR, plan.withSeed(seed), share -> {});
      PullMeasures pull = PullMeasures.of(run);
      System.out.printf(
          "closed loop %4.0f m %2.0f degC base x%.2f seed %d: gate shut %.3f s, arrived +%.3f s,"
              + " overshoot %.2f kPa, settled error %.2f kPa at %.0f rpm%n",
          altitudeM,
          airC,
          factor,
          seed,
          shut,
          pull.reachSeconds() - shut,
          pull.overshootKpa(),
          pull.settledErrorKpa(),
          pull.settledErrorRpm());
      assertThat(pull.reachSeconds()).isLessThanOrEqualTo(shut + 0.5);
      assertThat(pull.overshootKpa()).isLessThanOrEqualTo(5.0);
      assertThat(Math.abs(pull.settledErrorKpa())).isLessThanOrEqualTo(2.0);
      assertThat(pull.faults()).isZero();
    }
  }

  @Test
  void targetIsOutOfReachOnlyWhereTheGateShutRunSaysSo() {
    Map<Double, Double> lowered = new TreeMap<>();
    double[] target = target(Atmosphere.at(2000.0, 0.0));
    for (int i = 0; i < RPM.length; i++) {
      if (target[i] < TARGET_KPA) {
        lowered.put(RPM[i], target[i]);
      }
    }
    System.out.println("2000 m, 0 degC: target lowered to gate-shut less 8 kPa at " + lowered);
    assertThat(lowered.keySet()).containsExactly(2000.0, 6000.0, 6500.0);
  }

  @Test
  void outOfReachIsSaidDoesNotWindUpAndComesBackCleanly() {
    Atmosphere high = Atmosphere.at(2000.0, 40.0);
    double[] target = new double[RPM.length];
    java.util.Arrays.fill(target, 190.0);
    Settings settings = settings(target, base(target(TABLED_AT)), 1.0, high);
    VirtualCar car = new VirtualCar(PlantParams.PROJECT_CAR, high, 1L);
    CarRun run = new CarRun(settings, car);
    run.startEngine();
    run.settleHeld(2500.0, 15.0, 1.0);
    car.setThrottlePct(100.0);
    // Held where the gate-shut pressure is 161 kPa: 190 is out of reach, for ten seconds.
    car.holdRpm(2500.0, 1500.0);
    run.run(7.0 / 3.0);
    car.holdRpm(6000.0);
    run.run(10.0);
    assertThat(run.outputs().state).isEqualTo(SafetyState.CONTROLLING);
    assertThat(run.outputs().findings & FaultCode.TARGET_OUT_OF_REACH.bit()).isNotZero();
    assertThat(run.outputs().trimDutyFraction).isLessThanOrEqualTo(0.10 + 1e-9);
    // Down to 3000 rpm, where 209 kPa can be had: it comes back in reach and must not overshoot.
    int from = run.log().rows();
    car.holdRpm(6000.0, -1500.0);
    run.run(2.0);
    car.holdRpm(3000.0);
    run.run(4.0);
    double peak = 0.0;
    double last = 0.0;
    for (int r = from; r < run.log().rows(); r++) {
      peak = Math.max(peak, run.log().get(r, RunLog.TRUE_MAP));
      last = run.log().get(r, RunLog.TRUE_MAP);
    }
    System.out.printf("back in reach at 2000 m, 40 degC: peak %.2f, last %.2f kPa%n", peak, last);
    assertThat(peak).isLessThanOrEqualTo(195.0);
    assertThat(last).isBetween(187.0, 193.0);
    assertThat(run.outputs().findings & FaultCode.TARGET_OUT_OF_REACH.bit()).isZero();
  }

  @Test
  void aGearChangeAt6000RpmOnTargetTripsNothing() {
    double[] target = target(Atmosphere.at(0.0, 20.0));
    List<Double> peaks = new ArrayList<>();
    for (long seed = 1; seed <= 3; seed++) {
      VirtualCar car = new VirtualCar(PlantParams.PROJECT_CAR, Atmosphere.at(0.0, 20.0), seed);
      CarRun run = new CarRun(settings(target, base(target), 1.0, TABLED_AT), car);
      run.startEngine();
      run.settleHeld(3000.0, 15.0, 1.0);
      car.driveInGearAtRpm(3, 3000.0);
      car.setThrottlePct(100.0);
      while (car.engineRpm() < 6000.0) {
        run.tick();
      }
      assertThat(car.mapKpaAbs()).isBetween(177.0, 183.0);
      int from = run.log().rows();
      car.shiftTo(4);
      run.run(3.0);
      double peak = 0.0;
      long faults = 0L;
      for (int r = from; r < run.log().rows(); r++) {
        peak = Math.max(peak, run.log().get(r, RunLog.TRUE_MAP));
        faults |= (long) run.log().get(r, LogFormat.FAULTS);
      }
      peaks.add(peak);
      assertThat(faults).isZero();
      assertThat(run.outputs().state).isEqualTo(SafetyState.CONTROLLING);
    }
    System.out.println("gear change at 6000 rpm: peaks after it, kPa " + peaks);
    assertThat(peaks).allMatch(peak -> peak < 205.0);
  }
}
