package org.boostwright.rig.logs.correct;

import java.util.ArrayList;
import java.util.HashSet;
import java.util.List;
import java.util.Set;
import org.boostwright.core.settings.Settings;
import org.boostwright.core.table.Table2d;
import org.boostwright.rig.logs.correct.Correction.Refusal;
import org.boostwright.rig.logs.identify.CarTwin;
import org.boostwright.rig.logs.identify.LocalGain;
import org.boostwright.rig.logs.identify.RecordedDrive;
import org.boostwright.rig.logs.identify.TwinFit;
import org.boostwright.rig.logs.pulls.DriveLog;
import org.boostwright.rig.logs.pulls.Pull;
import org.boostwright.rig.logs.pulls.PullFinder;
import org.boostwright.rig.logs.pulls.PullRules;
import org.boostwright.rig.plant.PlantParams;

/** Corrects the base duty table from logs of one session. */
public final class TableCorrection {
  private static final double LEAST_SETTLED_SECONDS = 0.5;
  private static final double MOST_STRANGE = 0.05;

  private final Settings settings;
  private final Caution caution;

  private TableCorrection(Settings settings, Caution caution) {
    this.settings = settings;
    this.caution = caution;
  }

  /**
   * Corrects.
   *
   * @param settings settings all logs were driven with
   * @param start virtual car to begin the fit with
   * @param logs logs of one session
   * @param mayRaise false when something is suspected that more duty would make worse
   */
  public static Correction of(
      Settings settings,
      PlantParams start,
      List<DriveLog> logs,
      Caution caution,
      boolean mayRaise) {
    return new TableCorrection(settings, caution).correct(start, logs, mayRaise);
  }

  private Correction correct(PlantParams start, List<DriveLog> logs, boolean mayRaise) {
    List<Pull> pulls = new ArrayList<>();
    for (DriveLog log : logs) {
      if (!log.controlled()) {
        return refused(
            "no_duty_recorded",
            log.name() + " holds no duty and target, so it says nothing about base duty.",
            "record a drive with Boostwright");
      }
      PullFinder.find(log, PullRules.FULL_THROTTLE).stream()
          .filter(Pull::usable)
          .forEach(pulls::add);
    }
    if (pulls.isEmpty()) {
      return refused(
          "no_usable_pull",
          "No log holds a full-throttle pull that can be learnt from.",
          "drive three pulls in one gear from 2500 rpm, throttle fully open to the end");
    }
    CarTwin twin = TwinFit.fit(start.withPwmHz(settings.valve().frequencyHz()), pulls);
    if (!twin.resembles()) {
      return refused(
          "gain_not_identified",
          String.format(
              java.util.Locale.ROOT,
              "No car like the virtual one explains these pulls (%.1f kPa off), so what a percent of"
                  + " duty is worth is not known.",
              twin.rmsKpa()),
          "look at the diagnosis first; another engine size is set with virtual.displacement_l");
    }
    LocalGain gain = LocalGain.of(twin.car(), RecordedDrive.air(pulls.get(0)), settings);
    return correct(logs, gain, twin, mayRaise);
  }

  private Correction refused(String code, String text, String next) {
    Table2d table = settings.baseDuty();
    Refusal why = new Refusal(code, text, next);
    return new Correction(table, table, List.of(), why, 0.0, 0, null, null);
  }

  private Correction correct(List<DriveLog> logs, LocalGain gain, CarTwin twin, boolean mayRaise) {
    List<Evidence> rows = new ArrayList<>();
    int strange = 0;
    int visit = 0;
    for (DriveLog log : logs) {
      SettledRows found = SettledRows.of(log, settings, gain, visit);
      visit = found.nextVisit();
      rows.addAll(found.evidence());
      strange += found.strangeRows();
    }
    if (strange > MOST_STRANGE * rows.size()) {
      return refused(
          "other_table_recorded",
          "The logs were driven with another base duty table than these settings hold.",
          "give the settings of that drive, or drive again with the present ones");
    }
    List<EvidenceBin> bins = EvidenceBin.of(rows);
    double seconds = bins.stream().mapToDouble(EvidenceBin::seconds).sum();
    if (!(seconds >= LEAST_SETTLED_SECONDS)) {
      return refused(
          "nothing_settled",
          "The pressure never came to rest on base duty, so the logs say nothing about it.",
          "drive longer pulls: higher gear, from 2500 rpm to the red line");
    }
    CellKnowledge known = new CellKnowledge(settings, caution, bins, mayRaise);
    double[] lowest = known.lowest();
    double[] highest = known.highest();
    Table2d before = settings.baseDuty();
    CorrectionProblem problem = new CorrectionProblem(before, lowest, highest);
    problem.fit(bins);
    Headroom headroom = Headroom.of(before, rows);
    headroom.limit(problem);
    double[] changes = problem.solve();
    Table2d after = CellKnowledge.rounded(before, changes);
    Set<Integer> visits = new HashSet<>();
    bins.forEach(bin -> visits.add(bin.visit()));
    List<CellChange> cells = known.explain(after, changes, headroom, gain);
    return new Correction(before, after, cells, null, seconds, visits.size(), gain, twin);
  }
}
