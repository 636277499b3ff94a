package org.boostwright.rig.logs.gains;

import java.util.Arrays;
import java.util.function.DoubleConsumer;
import org.boostwright.core.settings.Settings;
import org.boostwright.rig.logs.pulls.DriveLog;
import org.boostwright.rig.logs.pulls.Swing;
import org.boostwright.rig.plant.PlantParams;
import org.boostwright.rig.scenario.PullMeasures;
import org.boostwright.rig.scenario.PullPlan;
import org.boostwright.rig.scenario.PullRun;
import org.boostwright.rig.scenario.VirtualPull;

/**
 * Pulls of many cars within tolerances under the same settings.
 *
 * @param cars cars driven
 * @param overshootKpa95 overshoot that 95 % of them stay within, kPa of true pressure
 * @param mostOvershootKpa largest overshoot, kPa
 * @param settledKpa95 distance from the target once settled that 95 % stay within, kPa
 * @param hunting cars whose pressure swung on and on
 * @param faults cars in which a fault put the valve at rest
 */
public record GainProof(
    int cars,
    double overshootKpa95,
    double mostOvershootKpa,
    double settledKpa95,
    int hunting,
    int faults) {
  private static final double SHARE = 0.95;
  private static final double SETTLING_SECONDS = 0.7;
  private static final int TICKS_PER_SECOND = 200;

  /**
   * Drives the cars.
   *
   * @param base car whose parts are spread
   * @param spread 1 for the full tolerances of a series
   */
  public static GainProof of(
      Settings settings,
      PlantParams base,
      double spread,
      int cars,
      long seed,
      DoubleConsumer progress) {
    double[] overshoot = new double[cars];
    double[] settled = new double[cars];
    int hunting = 0;
    int faults = 0;
    for (int i = 0; i < cars; i++) {
      PlantParams car = base.spread(seed + i, spread);
      PullRun run =
          VirtualPull.run(settings, car, PullPlan.STANDARD.withSeed(seed + i), share -> {});
      PullMeasures pull = PullMeasures.of(run);
      overshoot[i] = Double.isNaN(pull.overshootKpa()) ? 0.0 : pull.overshootKpa();
      settled[i] = Double.isNaN(pull.settledErrorKpa()) ? 0.0 : Math.abs(pull.settledErrorKpa());
      hunting += hunts(run, pull) ? 1 : 0;
      faults += pull.faults() != 0L ? 1 : 0;
      progress.accept((i + 1.0) / cars);
    }
    Arrays.sort(overshoot);
    Arrays.sort(settled);
    int at = (int) Math.ceil(SHARE * cars) - 1;
    return new GainProof(cars, overshoot[at], overshoot[cars - 1], settled[at], hunting, faults);
  }

  private static boolean hunts(PullRun run, PullMeasures pull) {
    if (Double.isNaN(pull.reachSeconds())) {
      return false;
    }
    int from =
        run.openedAt()
            + (int) Math.round((pull.reachSeconds() + SETTLING_SECONDS) * TICKS_PER_SECOND);
    if (from >= run.shutAt()) {
      return false;
    }
    DriveLog log = DriveLog.ofRecord("proof", run.log().recordRows());
    int to = run.shutAt() - TICKS_PER_SECOND / 10;
    return Swing.ofPressure(log, from, to).hunting() || Swing.ofTrim(log, from, to).hunting();
  }
}
