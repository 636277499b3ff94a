package org.boostwright.rig.plan;

import java.util.Arrays;
import java.util.function.DoubleConsumer;
import org.boostwright.core.Controller;
import org.boostwright.core.record.LogFormat;
import org.boostwright.core.settings.Settings;
import org.boostwright.core.settings.UnitSettings;
import org.boostwright.core.state.Permission;
import org.boostwright.core.table.Axis;
import org.boostwright.core.table.Table2d;
import org.boostwright.rig.plant.Atmosphere;
import org.boostwright.rig.plant.PlantParams;
import org.boostwright.rig.plant.VirtualCar;
import org.boostwright.rig.scenario.PullPlan;
import org.boostwright.rig.scenario.PullRun;
import org.boostwright.rig.scenario.RunLog;
import org.boostwright.rig.scenario.SettledPoint;
import org.boostwright.rig.scenario.VirtualPull;

/**
 * The first base-duty table.
 *
 * <p>In balance the actuator's pressure carries its spring less what the exhaust pushes: {@code
 * p_actuator = (F_0 + k*x - (p_exhaust - p_out)*A_v*r)/A_d}; its share of the boost before the
 * throttle is what the valve has to let through, and the bench tells the duty for that share. The
 * virtual car, with the measured spring and the measured valve, solves the balance in every cell:
 * the duty is sought that holds the target less a margin; where the spring alone gives more it is
 * zero. In a spool cell, which a third-gear pull passes before the target can be reached even with
 * the gate held shut, there is nothing to err low from: the duty is the one that would hold the
 * target itself, so that the gate stays shut on the way and holds the target in a higher gear.
 *
 * <p>The margin makes it err low: it grows until, in full-throttle pulls of a set of cars with every
 * part somewhere within its tolerance, none but one in twenty passes the target by 3 kPa.
 */
public final class FirstTable {
  /** Highest over target that is allowed to one car in twenty, kPa. */
  public static final double OVER_KPA = 3.0;

  private static final double FIRST_MARGIN_KPA = 6.0;
  private static final double MARGIN_STEP_KPA = 1.0;
  private static final double LARGEST_MARGIN_KPA = 25.0;
  private static final int CARS = 40;
  private static final int MAY_PASS = 1;
  private static final long FIRST_CAR = 90_001L;
  private static final int SPREAD_CARS = 12;
  private static final double SHUT = 1.0;
  private static final int GEAR = 3;
  private static final double LONGEST_SECONDS = 20.0;

  /** Below this throttle a gate held shut only winds the turbo up against the throttle. */
  private static final double PART_THROTTLE_PCT = 60.0;


  private static final int TARGET = LogFormat.column("target_kpa_abs");

  private static final double[] THROTTLE_PCT = {30, 50, 70, 85, 100};
  private static final double[] SHARE_OF_BOOST = {0.25, 0.5, 0.8, 0.95, 1.0};
  private static final double[] RPM = {2000, 2500, 3000, 3500, 4500, 5500, 6500};

  private final Settings settings;
  private final PlantParams car;
  private final SettledPoint settled;
  private final DoubleConsumer progress;

  private FirstTable(Settings settings, PlantParams car, DoubleConsumer progress) {
    this.settings = settings;
    this.car = car;
    this.progress = progress;
    settled = new SettledPoint(car, Atmosphere.at(0.0, 20.0));
  }

  /**
   * A table and what is expected of it.
   *
   * @param duty base duty, 0 to 1
   * @param marginKpa how far below the target it aims, kPa
   * @param predictedKpaAbs settled pressure of the nominal car in each cell, kPa absolute
   * @param uncertaintyKpa by engine speed: two standard deviations over the tolerances, kPa
   * @param shutKpaAbs settled pressure with the gate held shut in each cell, kPa absolute
   * @param springKpaAbs settled pressure on the spring in each cell, kPa absolute
   * @param passingKpaAbs pressure with which a third-gear pull with the gate held shut passes each
   *     cell, row by row, kPa absolute; infinite where it does not come
   * @param carsOver cars of {@link #cars} whose pull passed the target by more than 3 kPa
   * @param peakKpaAbs highest pressure in any of those pulls, kPa absolute
   */
  @SuppressWarnings("ArrayRecordComponent") // handed on once
  public record Built(
      Table2d duty,
      double marginKpa,
      Table2d predictedKpaAbs,
      double[] uncertaintyKpa,
      Table2d shutKpaAbs,
      Table2d springKpaAbs,
      double[] passingKpaAbs,
      int carsOver,
      double peakKpaAbs) {}

  /** Cars the margin is tried on. */
  public static int cars() {
    return CARS;
  }

  /**
   * A target table for a highest boost, where the file has none.
   *
   * @param boostKpaAbs highest boost wanted, kPa absolute
   * @param redlineRpm highest engine speed used, 1/min
   */
  public static Table2d target(double boostKpaAbs, double redlineRpm) {
    double[] rpm = Arrays.stream(RPM).filter(r -> r <= redlineRpm).toArray();
    double[] cells = new double[THROTTLE_PCT.length * rpm.length];
    double atmosphere = UnitSettings.STANDARD_ATMOSPHERE_KPA;
    for (int i = 0; i < cells.length; i++) {
      double share = SHARE_OF_BOOST[i / rpm.length];
      cells[i] = Math.rint(atmosphere + share * (boostKpaAbs - atmosphere));
    }
    return new Table2d(new Axis(THROTTLE_PCT), new Axis(rpm), cells);
  }

  /**
   * Builds the table for the settings' target.
   *
   * @param car the planned car with the measured valve
   * @param progress told the share done, 0 to 1
   */
  public static Built build(Settings settings, PlantParams car, DoubleConsumer progress) {
    return new FirstTable(settings, car, progress).build();
  }

  private Built build() {
    Table2d target = settings.target();
    int columns = target.columns().size();
    int cells = target.rows().size() * columns;
    double[] shut = new double[cells];
    double[] spring = new double[cells];
    for (int i = 0; i < cells; i++) {
      double rpm = target.columns().point(i % columns);
      double throttle = target.rows().point(i / columns);
      shut[i] = settled.mapKpaAbs(rpm, throttle, SHUT);
      spring[i] = settled.mapKpaAbs(rpm, throttle, 0.0);
      progress.accept(0.2 * i / cells);
    }
    double[] passing = passing();
    double margin = FIRST_MARGIN_KPA;
    while (true) {
      Table2d duty = duty(margin, shut, spring, passing);
      Trial trial = trial(settings.withBaseDuty(duty));
      if (trial.over() <= MAY_PASS || margin >= LARGEST_MARGIN_KPA) {
        return finish(duty, margin, shut, spring, passing, trial);
      }
      margin += MARGIN_STEP_KPA;
    }
  }

  /**
   * Pressure with which a third-gear pull passes each cell with the gate held shut, kPa absolute;
   * infinite for cells it does not pass.
   */
  private double[] passing() {
    Table2d target = settings.target();
    int columns = target.columns().size();
    double[] passing = new double[target.rows().size() * columns];
    Arrays.fill(passing, Double.POSITIVE_INFINITY);
    double from = target.columns().point(0);
    for (int row = 0; row < target.rows().size(); row++) {
      VirtualCar one = new VirtualCar(car, Atmosphere.at(0.0, 20.0), 1L);
      one.settleAt(from, PullPlan.CRUISE_THROTTLE_PCT);
      one.driveInGearAtRpm(GEAR, from);
      one.setThrottlePct(target.rows().point(row));
      one.coil(SHUT, true, true);
      int column = 0;
      for (long nanos = 0;
          column < columns && nanos * 1e-9 < LONGEST_SECONDS;
          nanos += Controller.TICK_NANOS) {
        if (one.engineRpm() >= target.columns().point(column)) {
          passing[row * columns + column++] = one.mapKpaAbs();
        }
        one.advance(Controller.TICK_NANOS);
      }
    }
    return passing;
  }

  private Table2d duty(double margin, double[] shut, double[] spring, double[] passing) {
    Table2d target = settings.target();
    int columns = target.columns().size();
    double[] duty = new double[shut.length];
    double low = settings.valve().windowLowDuty();
    double high = settings.valve().windowHighDuty();
    for (int i = 0; i < duty.length; i++) {
      double rpm = target.columns().point(i % columns);
      double throttle = target.rows().point(i / columns);
      double goal = target.cell(i / columns, i % columns);
      double aim = passing[i] < goal - margin ? goal : goal - margin;
      if (spring[i] >= aim || (throttle < PART_THROTTLE_PCT && shut[i] < goal)) {
        duty[i] = 0.0;
      } else if (shut[i] < goal) {
        duty[i] = high; // nothing is left to hold back
      } else {
        duty[i] = settled.dutyFor(rpm, throttle, aim, low, high);
      }
      double ceiling = settings.limits().dutyCeiling().at(rpm);
      duty[i] = Math.floor(1000.0 * Math.min(duty[i], Math.min(high, ceiling))) * 1e-3;
    }
    return new Table2d(target.rows(), target.columns(), duty);
  }

  private record Trial(int over, double peakKpaAbs) {}

  /** First full-table pulls of cars with tolerances: no feedback, as the ladder has it. */
  private Trial trial(Settings with) {
    int over = 0;
    double peak = 0.0;
    for (int i = 0; i < CARS; i++) {
      PlantParams one = car.spread(FIRST_CAR + i, 1.0);
      PullPlan plan = PullPlan.STANDARD.withSeed(FIRST_CAR + i);
      PullRun run =
          VirtualPull.run(with, new Permission(true, 1.0, false), one, plan, share -> {});
      over += overKpa(run) > OVER_KPA ? 1 : 0;
      peak = Math.max(peak, peakKpaAbs(run));
      progress.accept(0.2 + 0.6 * i / CARS);
    }
    return new Trial(over, peak);
  }

  /** Highest true pressure over target during full throttle, mean of 100 ms, kPa. */
  public static double overKpa(PullRun run) {
    double most = Double.NEGATIVE_INFINITY;
    double sum = 0.0;
    int rows = 20;
    RunLog log = run.log();
    for (int r = run.openedAt(); r < run.shutAt(); r++) {
      sum += log.get(r, RunLog.TRUE_MAP) - log.get(r, TARGET);
      if (r >= run.openedAt() + rows) {
        sum -= log.get(r - rows, RunLog.TRUE_MAP) - log.get(r - rows, TARGET);
        most = Math.max(most, sum / rows);
      }
    }
    return most;
  }

  private static double peakKpaAbs(PullRun run) {
    double peak = 0.0;
    for (int r = run.openedAt(); r < run.log().rows(); r++) {
      peak = Math.max(peak, run.log().get(r, RunLog.TRUE_MAP));
    }
    return peak;
  }

  private Built finish(
      Table2d duty,
      double margin,
      double[] shut,
      double[] spring,
      double[] passing,
      Trial trial) {
    Table2d target = settings.target();
    int columns = target.columns().size();
    double[] predicted = new double[shut.length];
    for (int i = 0; i < predicted.length; i++) {
      double rpm = target.columns().point(i % columns);
      double throttle = target.rows().point(i / columns);
      predicted[i] = settled.mapKpaAbs(rpm, throttle, duty.cell(i / columns, i % columns));
    }
    progress.accept(0.9);
    return new Built(
        duty,
        margin,
        new Table2d(target.rows(), target.columns(), predicted),
        uncertainty(duty),
        new Table2d(target.rows(), target.columns(), shut),
        new Table2d(target.rows(), target.columns(), spring),
        passing,
        trial.over(),
        trial.peakKpaAbs());
  }

  /** Two standard deviations of the settled pressure over the tolerances, highest throttle. */
  private double[] uncertainty(Table2d duty) {
    int columns = duty.columns().size();
    int last = duty.rows().size() - 1;
    double[] sum = new double[columns];
    double[] squares = new double[columns];
    for (int i = 0; i < SPREAD_CARS; i++) {
      SettledPoint one =
          new SettledPoint(car.spread(FIRST_CAR + i, 1.0), Atmosphere.at(0.0, 20.0));
      for (int c = 0; c < columns; c++) {
        double kpa =
            one.mapKpaAbs(
                duty.columns().point(c), duty.rows().point(last), duty.cell(last, c));
        sum[c] += kpa;
        squares[c] += kpa * kpa;
      }
      progress.accept(0.9 + 0.1 * i / SPREAD_CARS);
    }
    double[] two = new double[columns];
    for (int c = 0; c < columns; c++) {
      double mean = sum[c] / SPREAD_CARS;
      double variance = squares[c] / SPREAD_CARS - mean * mean;
      two[c] = 2.0 * Math.sqrt(Math.max(0.0, variance * SPREAD_CARS / (SPREAD_CARS - 1)));
    }
    return two;
  }
}
