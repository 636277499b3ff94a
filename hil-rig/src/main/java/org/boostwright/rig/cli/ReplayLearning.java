package org.boostwright.rig.cli;

import java.io.IOException;
import java.util.ArrayList;
import java.util.List;
import java.util.Locale;
import org.boostwright.core.AnalogChannel;
import org.boostwright.core.settings.Settings;
import org.boostwright.rig.logs.diagnosis.Cause;
import org.boostwright.rig.logs.diagnosis.DiagnosisResult;
import org.boostwright.rig.logs.identify.CarTwin;
import org.boostwright.rig.logs.identify.TwinFit;
import org.boostwright.rig.logs.pulls.DriveLog;
import org.boostwright.rig.logs.pulls.Pull;
import org.boostwright.rig.logs.pulls.PullFinder;
import org.boostwright.rig.logs.pulls.PullRules;
import org.boostwright.rig.logs.pulls.PullsResult;
import org.boostwright.rig.logs.whatif.Prediction;
import org.boostwright.rig.logs.whatif.WhatIf;
import org.boostwright.rig.logs.whatif.WhatIfResult;
import org.boostwright.rig.plant.PlantParams;
import org.boostwright.rig.replay.csv.LogRefusedException;
import org.boostwright.rig.replay.csv.LogSignal;
import org.boostwright.rig.replay.csv.RecordedLog;
import org.boostwright.rig.result.ResultBuilder;
import org.boostwright.rig.result.Verdict;

/** What a replayed log teaches: its pulls, their diagnosis, and what they would have been. */
final class ReplayLearning {
  private ReplayLearning() {}

  /** A log of another recorder; the pedal's pulls are tip-ins. */
  static void add(ResultBuilder result, RecordedLog log, AnalogChannel demand, double ambientKpaAbs)
      throws LogRefusedException {
    boolean pedal = demand == AnalogChannel.PEDAL;
    LogSignal signal = pedal ? LogSignal.PEDAL : LogSignal.THROTTLE;
    DriveLog drive = DriveLog.ofImport(log, signal, ambientKpaAbs);
    PullRules rules = pedal ? PullRules.TIP_IN : PullRules.FULL_THROTTLE;
    List<Pull> pulls = PullFinder.find(drive, rules);
    PullsResult.add(result, pulls, rules);
    DiagnosisResult.cannot(result, drive, pulls);
  }

  /** A run recorded by Boostwright. */
  static List<Cause> add(
      ResultBuilder result,
      DriveLog drive,
      Settings settings,
      SoundOption sound,
      double trueAmbientKpaAbs,
      Progress progress)
      throws IOException, WrongUseException {
    List<Pull> pulls = PullFinder.find(drive, PullRules.FULL_THROTTLE);
    PullsResult.add(result, pulls, PullRules.FULL_THROTTLE);
    if (pulls.isEmpty()) {
      return List.of();
    }
    PlantParams car = sound.car(PlantParams.PROJECT_CAR, settings, result, progress);
    progress.begin("diagnosis", 1);
    return DiagnosisResult.add(result, drive, pulls, settings, car, trueAmbientKpaAbs);
  }

  /** Every usable pull of a recorded run under other settings. */
  static void whatIf(
      ResultBuilder result,
      DriveLog drive,
      Settings driven,
      Settings other,
      PlantParams start,
      Progress progress) {
    List<Pull> pulls =
        PullFinder.find(drive, PullRules.FULL_THROTTLE).stream().filter(Pull::usable).toList();
    if (!drive.controlled() || pulls.isEmpty()) {
      result.refuse(
          "whatif_no_pull",
          "The log holds no usable full-throttle pull with recorded duty.",
          "record one with Boostwright: one gear, throttle fully open to the end");
      return;
    }
    progress.begin("fitting the virtual car", 1);
    CarTwin twin = TwinFit.fit(start.withPwmHz(driven.valve().frequencyHz()), pulls);
    progress.begin("computing the other settings", pulls.size());
    List<Prediction> predictions = new ArrayList<>();
    double highest = 0.0;
    for (int i = 0; i < pulls.size(); i++) {
      predictions.add(WhatIf.of(pulls.get(i), driven, other, twin, i + 1L));
      highest = Math.max(highest, predictions.get(i).peakKpaAbs());
      progress.at(i + 1L);
    }
    WhatIfResult.add(result, predictions, other, twin);
    if (result.verdict() == Verdict.REFUSED) {
      return;
    }
    result.headline(
        String.format(
            Locale.ROOT,
            "What if, computed: %d %s, highest boost %.0f kPa absolute.",
            pulls.size(),
            pulls.size() == 1 ? "pull" : "pulls",
            highest));
  }
}
