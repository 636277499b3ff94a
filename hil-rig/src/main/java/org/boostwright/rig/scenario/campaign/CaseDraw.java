package org.boostwright.rig.scenario.campaign;

import java.util.ArrayList;
import java.util.List;
import java.util.SplittableRandom;
import org.boostwright.core.settings.LimitSettings;
import org.boostwright.core.settings.Settings;
import org.boostwright.core.table.Table2d;
import org.boostwright.rig.inject.FaultKind;
import org.boostwright.rig.plant.PlantParams;
import org.boostwright.rig.scenario.fault.Injection;
import org.boostwright.rig.scenario.fault.Setup;

/**
 * One run of a campaign as drawn: it depends on the plan and the run's number alone.
 *
 * <p>Drawn are the car within its tolerances, sensor noise up to the rated, altitude to 2500 m, air
 * from -10 to 45 degC, base duty wrong by up to 20 %, limits per gear or none, the drive, now and
 * then a stuck recirculation valve, and for each fault amount, moment and duration.
 *
 * @param index number of the run
 * @param setup car, settings and drive
 * @param injections the faults
 * @param baseDutyFactor factor on the base duty table
 * @param driveWords what is driven, in a word
 */
public record CaseDraw(
    long index, Setup setup, List<Injection> injections, double baseDutyFactor, String driveWords) {

  private static final double HIGHEST_M = 2500.0;
  private static final double TABLE_ERROR = 0.20;
  private static final double STUCK_RECIRCULATION = 0.06;
  private static final double STAYS = 0.6;
  private static final double DURING_START = 0.08;
  private static final double START_SECONDS = 6.0;
  private static final double TAIL_SECONDS = 1.5;

  /** Draws a run. */
  public static CaseDraw of(CampaignPlan plan, long index) {
    return of(plan, plan.kindsOf(index), index);
  }

  /** The same run with other faults. */
  CaseDraw withInjections(List<Injection> others) {
    return new CaseDraw(index, setup, List.copyOf(others), baseDutyFactor, driveWords);
  }

  /** Draws a run with these kinds of fault. */
  static CaseDraw of(CampaignPlan plan, List<FaultKind> kinds, long index) {
    SplittableRandom random = new SplittableRandom(mix(plan.seed()) ^ mix(~index));
    double factor = 1.0 + TABLE_ERROR * either(random);
    Settings settings = plan.settings().withBaseDuty(scaled(plan.settings().baseDuty(), factor));
    if (random.nextBoolean()) {
      // As on a dynamometer, which shows no gear, and for who sets no limits per gear.
      settings = settings.withLimits(withoutGearTargets(settings.limits()));
    }
    PlantParams car = plan.car().spread(random.nextLong(), random.nextDouble());
    double rated = plan.settings().sensors().mapNoiseKpa();
    car =
        car.withSensors(
            car.sensors()
                .withMapNoise(
                    rated * (0.5 + 0.5 * random.nextDouble()), 5.0 * random.nextDouble()));
    double altitudeM = random.nextDouble() < 0.5 ? 0.0 : HIGHEST_M * random.nextDouble();
    double airC = -10.0 + 55.0 * random.nextDouble();
    DriveDraw drive = DriveDraw.of(random);
    boolean link = kinds.stream().anyMatch(kind -> kind.row().equals("L1"));
    double stuck = Double.NaN;
    if (random.nextDouble() < STUCK_RECIRCULATION) {
      stuck = random.nextBoolean() ? 1.0 : 0.0;
    }
    long noiseSeed = random.nextLong();
    Setup setup =
        Setup.of(settings, car, altitudeM, airC, noiseSeed, drive.drive())
            .acrossLink(link)
            .withRecirculationStuck(stuck);
    List<Injection> injections = new ArrayList<>();
    for (FaultKind kind : kinds) {
      injections.add(injection(kind, drive.drive().seconds(), random));
    }
    return new CaseDraw(index, setup, List.copyOf(injections), factor, drive.words());
  }

  private static LimitSettings withoutGearTargets(LimitSettings limits) {
    return new LimitSettings(
        limits.cutoffKpaAbs(),
        limits.pressureRatioMax(),
        limits.dutyCeiling(),
        limits.trimCapDuty(),
        limits.targetFactorOverIntakeC(),
        limits.springOnlyIntakeC(),
        new double[0],
        limits.lowBoostKpaAbs(),
        limits.minControlRpm(),
        limits.minThrottlePct(),
        limits.engineCut(),
        limits.guest());
  }

  private static Injection injection(FaultKind kind, double seconds, SplittableRandom random) {
    double low = kind.amount().low();
    double amount = low + (kind.amount().high() - low) * random.nextDouble();
    double from =
        random.nextDouble() < DURING_START
            ? -START_SECONDS * random.nextDouble()
            : 0.1 + (seconds - TAIL_SECONDS - 0.1) * random.nextDouble();
    double length =
        random.nextDouble() < STAYS ? Double.POSITIVE_INFINITY : 0.05 + 1.95 * random.nextDouble();
    return new Injection(kind, amount, from, from + length);
  }

  private static Table2d scaled(Table2d table, double factor) {
    double[] values = table.values();
    for (int i = 0; i < values.length; i++) {
      values[i] = Math.min(1.0, values[i] * factor);
    }
    return new Table2d(table.rows(), table.columns(), values);
  }

  private static double either(SplittableRandom random) {
    return 2.0 * random.nextDouble() - 1.0;
  }

  /** Scatters near numbers far apart (the finalizer of SplitMix64). */
  private static long mix(long value) {
    long z = value + 0x9E3779B97F4A7C15L;
    z = (z ^ (z >>> 30)) * 0xBF58476D1CE4E5B9L;
    z = (z ^ (z >>> 27)) * 0x94D049BB133111EBL;
    return z ^ (z >>> 31);
  }
}
