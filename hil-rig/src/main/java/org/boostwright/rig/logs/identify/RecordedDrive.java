package org.boostwright.rig.logs.identify;

import java.util.function.IntToDoubleFunction;
import org.boostwright.core.Controller;
import org.boostwright.rig.logs.pulls.DriveLog;
import org.boostwright.rig.logs.pulls.Pull;
import org.boostwright.rig.plant.Atmosphere;
import org.boostwright.rig.plant.PlantParams;
import org.boostwright.rig.plant.VirtualCar;

/**
 * A virtual car led through a recorded pull: engine speed, throttle and duty are the recorded ones,
 * the pressure is the car's own answer.
 */
public final class RecordedDrive {
  /** Ticks from one compared pressure to the next: 100 ms. */
  static final int EVERY_TICKS = 20;

  private static final double DEFAULT_AIR_C = 20.0;
  private static final double HIGHEST_AIR_C = 60.0;
  private static final double MOVING_KPA_PER_SECOND = 20.0;
  private static final double STEADY_SECONDS = 5.0;

  private RecordedDrive() {}

  /** Row of a point. */
  public static int row(Pull pull, int point) {
    return pull.from() + (point + 1) * EVERY_TICKS;
  }

  /** Number of rows at which pressures are compared. */
  public static int points(Pull pull) {
    return Math.max(0, (pull.to() - pull.from() - EVERY_TICKS / 2) / EVERY_TICKS);
  }

  /** Recorded pressures at the points, kPa absolute. */
  public static double[] recorded(Pull pull) {
    double[] kpa = new double[points(pull)];
    for (int i = 0; i < kpa.length; i++) {
      kpa[i] = pull.log().meanKpaAbs(row(pull, i));
    }
    return kpa;
  }

  /** The car's pressures at the points, mean of the same 100 ms, kPa absolute. */
  public static double[] driven(PlantParams params, Pull pull) {
    return driven(params, pull, row -> pull.log().dutyFraction(row));
  }

  /** The same with a duty of its own in place of the recorded one: 0 the spring, 1 gate shut. */
  public static double[] driven(PlantParams params, Pull pull, double dutyFraction) {
    return driven(params, pull, row -> dutyFraction);
  }

  private static double[] driven(PlantParams params, Pull pull, IntToDoubleFunction duties) {
    DriveLog log = pull.log();
    VirtualCar car = new VirtualCar(params, air(pull), 1L);
    car.settleAt(log.rpm(pull.from()), throttleBefore(pull));
    int n = points(pull);
    double[] sums = new double[n];
    int half = EVERY_TICKS / 2;
    for (int row = pull.from(); row < pull.to(); row++) {
      car.setThrottlePct(Math.max(0.0, Math.min(100.0, log.demandPct(row))));
      car.holdRpm(log.rpm(row));
      double duty = row > pull.from() ? duties.applyAsDouble(row - 1) : 0.0;
      car.coil(duty, duty > 0.0, duty > 0.0);
      car.advance(Controller.TICK_NANOS);
      int point = (row - pull.from() + half) / EVERY_TICKS - 1;
      if (point >= 0 && point < n) {
        sums[point] += car.mapKpaAbs();
      }
    }
    for (int i = 0; i < n; i++) {
      sums[i] /= EVERY_TICKS;
    }
    return sums;
  }

  /**
   * Air around the pull: the coldest intake air so far is nearest to it.
   *
   * <p>Only readings count whose pressure had been steady for a while before. Air that expands when
   * an engine starts or a throttle shuts cools far below the air around, and the sensor follows
   * slowly.
   */
  public static Atmosphere air(Pull pull) {
    DriveLog log = pull.log();
    double coldest = Double.NaN;
    double steadySince = Double.NEGATIVE_INFINITY;
    for (int row = 0; row <= pull.from(); row += EVERY_TICKS) {
      if (Math.abs(log.rateKpaPerSecond(row)) > MOVING_KPA_PER_SECOND) {
        steadySince = log.seconds(row);
      }
      double airC = log.intakeAirC(row);
      boolean steady = log.seconds(row) - steadySince >= STEADY_SECONDS;
      if (steady && (Double.isNaN(coldest) || airC < coldest)) {
        coldest = airC;
      }
    }
    double known = Double.isNaN(coldest) ? DEFAULT_AIR_C : Math.min(coldest, HIGHEST_AIR_C);
    return new Atmosphere(pull.ambientKpaAbs(), known + 273.15);
  }

  /** Throttle 0.3 s before the pull, percent. */
  public static double throttleBefore(Pull pull) {
    int row = pull.from();
    while (row > 0
        && !pull.log().startsAgain(row)
        && pull.log().seconds(pull.from()) - pull.log().seconds(row) < 0.3) {
      row--;
    }
    return Math.max(0.0, Math.min(100.0, pull.log().demandPct(row)));
  }
}
