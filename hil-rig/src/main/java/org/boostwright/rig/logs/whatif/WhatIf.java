package org.boostwright.rig.logs.whatif;

import java.util.ArrayList;
import java.util.List;
import java.util.Locale;
import org.boostwright.core.settings.Settings;
import org.boostwright.rig.logs.identify.CarTwin;
import org.boostwright.rig.logs.identify.RecordedDrive;
import org.boostwright.rig.logs.pulls.Pull;
import org.boostwright.rig.plant.PlantParams;
import org.jspecify.annotations.Nullable;

/**
 * Predicts a recorded pull under other settings: the fitted car driven again by the controller, with
 * what the recording implies beyond the model added to its pressure.
 *
 * <p>The band is that of 90 %: cars which the logs leave possible, each with its own disturbance,
 * and what repeats of one pull differ by anyway.
 */
public final class WhatIf {
  private static final int DRAWS = 6;
  private static final double NORMAL_90 = 1.645;

  /** What repeats and the model's own form add, kPa, standard deviation. */
  private static final double REPEAT_KPA = 0.45;

  /** Of a change of pressure against the recording, so much more is in doubt. */
  private static final double CHANGE_DOUBT = 0.06;

  private static final double BEYOND_KPA = 10.0;
  private static final double FAR_BEYOND_KPA = 25.0;
  private static final double BEYOND_DUTY = 0.15;

  private WhatIf() {}

  /**
   * Predicts.
   *
   * @param recorded a usable pull
   * @param driven settings it was recorded with
   * @param other settings to try
   * @param twin fitted car
   */
  public static Prediction of(
      Pull recorded, Settings driven, Settings other, CarTwin twin, long seed) {
    PlantParams best = twin.car();
    Disturbance disturbance = Disturbance.of(best, recorded);
    best = PullScript.asHeavy(best, driven, recorded, disturbance);
    PullScript.Driven middle = PullScript.drive(best, other, recorded, disturbance, seed);
    List<double[]> others = new ArrayList<>();
    for (PlantParams drawn : twin.draws(DRAWS, seed)) {
      PlantParams car = drawn.withCar(best.car());
      others.add(
          PullScript.drive(car, other, recorded, Disturbance.of(car, recorded), seed).kpaAbs());
    }
    int n = middle.kpaAbs().length;
    double[] seconds = new double[n];
    double[] low = new double[n];
    double[] high = new double[n];
    for (int i = 0; i < n; i++) {
      int row = RecordedDrive.row(recorded, i);
      seconds[i] = recorded.since(row);
      double square = REPEAT_KPA * REPEAT_KPA;
      for (double[] drawn : others) {
        double off = drawn[i] - middle.kpaAbs()[i];
        square += off * off / others.size();
      }
      double change = CHANGE_DOUBT * (middle.kpaAbs()[i] - recorded.log().meanKpaAbs(row));
      double half = NORMAL_90 * Math.sqrt(square + change * change);
      low[i] = middle.kpaAbs()[i] - half;
      high[i] = middle.kpaAbs()[i] + half;
    }
    return new Prediction(
        recorded,
        seconds,
        middle.kpaAbs(),
        low,
        high,
        middle.duty(),
        middle.faults(),
        extrapolates(recorded, middle),
        refusal(recorded, middle, twin));
  }

  private static @Nullable String extrapolates(Pull pull, PullScript.Driven driven) {
    double peak = peak(driven);
    if (peak > pull.peakKpaAbs() + BEYOND_KPA) {
      return String.format(
          Locale.ROOT,
          "boost goes to %.0f kPa absolute, the recording only to %.0f",
          peak,
          pull.peakKpaAbs());
    }
    double most = 0.0;
    for (double duty : driven.duty()) {
      most = Math.max(most, duty);
    }
    return most > pull.highestDuty() + BEYOND_DUTY
        ? String.format(
            Locale.ROOT,
            "duty goes to %.0f %%, the recording only to %.0f %%",
            100.0 * most,
            100.0 * pull.highestDuty())
        : null;
  }

  private static @Nullable String refusal(Pull pull, PullScript.Driven driven, CarTwin twin) {
    if (!twin.resembles()) {
      return String.format(
          Locale.ROOT, "no virtual car resembles this one (%.1f kPa off)", twin.rmsKpa());
    }
    double peak = peak(driven);
    return peak > pull.peakKpaAbs() + FAR_BEYOND_KPA
        ? String.format(
            Locale.ROOT,
            "boost would go to about %.0f kPa absolute, far beyond the %.0f that was recorded",
            peak,
            pull.peakKpaAbs())
        : null;
  }

  private static double peak(PullScript.Driven driven) {
    double peak = 0.0;
    for (double kpa : driven.kpaAbs()) {
      peak = Math.max(peak, kpa);
    }
    return peak;
  }
}
