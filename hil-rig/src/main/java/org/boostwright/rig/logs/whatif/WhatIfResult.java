package org.boostwright.rig.logs.whatif;

import java.util.List;
import java.util.Locale;
import org.boostwright.core.record.LogFormat;
import org.boostwright.core.settings.Settings;
import org.boostwright.rig.logs.identify.CarTwin;
import org.boostwright.rig.logs.identify.RecordedDrive;
import org.boostwright.rig.logs.pulls.Pull;
import org.boostwright.rig.result.Plot;
import org.boostwright.rig.result.Plot.Stroke;
import org.boostwright.rig.result.ResultBuilder;
import org.boostwright.rig.result.Severity;
import org.boostwright.rig.result.Units;

/** A what-if prediction as a result; every word says that it was computed. */
public final class WhatIfResult {
  /** What must not be forgotten of a prediction. */
  public static final String CAUTION =
      "A what-if is a computation on a virtual car that resembles yours, not a recording of what"
          + " happened and not a replay. Prove it with a short pull, ready to lift.";

  private WhatIfResult() {}

  /**
   * Adds the predictions of a drive's pulls.
   *
   * @param predictions one for each usable pull, at least one
   */
  public static void add(
      ResultBuilder result, List<Prediction> predictions, Settings other, CarTwin twin) {
    result.measure(
        "whatif.fit_rms_kpa", "fitted virtual car against the pulls", twin.rmsKpa(), Units.KPA);
    double recorded = 0.0;
    double peak = 0.0;
    double high = 0.0;
    long faults = 0L;
    int number = 0;
    for (Prediction prediction : predictions) {
      number++;
      String refusal = prediction.refusal();
      if (refusal != null) {
        result.refuse("whatif_too_far", "No prediction: " + refusal + ".", "take a smaller step");
        return;
      }
      recorded = Math.max(recorded, prediction.pull().peakKpaAbs());
      peak = Math.max(peak, prediction.peakKpaAbs());
      high = Math.max(high, prediction.highestKpaAbs());
      faults |= prediction.faults();
      beyond(result, prediction, number);
      result.add(plot(prediction, other, number));
    }
    result.measure(
        "whatif.recorded_peak_kpa", "highest recorded pressure", recorded, Units.KPA_ABS);
    result.measure("whatif.peak_kpa", "highest computed pressure", peak, Units.KPA_ABS);
    result.measure(
        "whatif.band_high_kpa",
        "highest edge of the 90 % band",
        high,
        Units.KPA_ABS,
        Double.NaN,
        other.limits().cutoffKpaAbs());
    if (faults != 0L) {
      StringBuilder words = new StringBuilder();
      LogFormat.appendFaults(words, faults);
      result.find(
          "whatif_faults",
          Severity.PROBLEM,
          "The controller would have confirmed: " + words + ".",
          "look where in the plot, and ask for less");
    }
    result.caution(CAUTION);
  }

  private static void beyond(ResultBuilder result, Prediction prediction, int number) {
    String where = prediction.extrapolates();
    if (where != null) {
      result.find(
          "whatif_extrapolates",
          Severity.CAUTION,
          "The computation of pull " + number + " goes beyond what was recorded: " + where + ".",
          "go there in smaller steps, with a recorded pull after each");
    }
  }

  private static Plot plot(Prediction prediction, Settings other, int number) {
    Pull pull = prediction.pull();
    int n = prediction.seconds().length;
    double[] recorded = new double[n];
    double[] recordedDuty = new double[n];
    double[] duty = new double[n];
    for (int i = 0; i < n; i++) {
      int row = RecordedDrive.row(pull, i);
      recorded[i] = pull.log().meanKpaAbs(row);
      recordedDuty[i] = 100.0 * pull.log().dutyFraction(row);
      duty[i] = 100.0 * prediction.duty()[i];
    }
    return new Plot(
        "what_if_" + number,
        String.format(Locale.ROOT, "What if (computed): pull %d with the other settings", number),
        "time since the throttle opened",
        Units.SECONDS,
        prediction.seconds(),
        List.of(
            new Plot.Line("recorded", "recorded", Units.KPA_ABS, Stroke.SOLID, recorded),
            new Plot.Line(
                "computed", "what if, computed", Units.KPA_ABS, Stroke.DASHED, prediction.kpaAbs()),
            new Plot.Line("low", "90 % band, low", Units.KPA_ABS, Stroke.DOTTED, prediction.low()),
            new Plot.Line(
                "high", "90 % band, high", Units.KPA_ABS, Stroke.DOTTED, prediction.high()),
            new Plot.Line(
                "recorded_duty", "duty recorded", Units.PERCENT, Stroke.SOLID, recordedDuty),
            new Plot.Line("computed_duty", "duty computed", Units.PERCENT, Stroke.DASHED, duty)),
        List.of(new Plot.Limit("overboost limit", Units.KPA_ABS, other.limits().cutoffKpaAbs())),
        List.of());
  }
}
