package org.boostwright.rig.ladder;

import java.util.ArrayList;
import java.util.List;
import java.util.function.ToDoubleFunction;
import org.boostwright.core.ladder.RungState;
import org.boostwright.core.ladder.Standing;
import org.boostwright.core.ladder.Entry;
import org.boostwright.core.ladder.Rung;
import org.boostwright.core.monitor.FaultCode;
import org.boostwright.core.monitor.Reaction;
import org.boostwright.core.record.LogFormat;
import org.boostwright.core.settings.Settings;
import org.boostwright.rig.logs.pulls.DriveLog;
import org.boostwright.rig.logs.pulls.Pull;
import org.boostwright.rig.logs.pulls.PullFinder;
import org.boostwright.rig.logs.pulls.PullRules;
import org.boostwright.rig.result.Severity;
import org.boostwright.rig.result.Units;

/**
 * The rungs that are driven. All limits are common practice (no source): 10 kPa of air to the
 * overboost limit, repeats within 5 kPa, creep above 8 kPa for each 1000 1/min.
 */
final class DriveChecks {
  /** Least distance from the peak to the overboost limit, kPa. */
  static final double HEADROOM_KPA = 10.0;

  /** The same on the full table and with feedback, whose target is meant to be near. */
  static final double TARGET_HEADROOM_KPA = 6.0;

  static final double REPEAT_KPA = 5.0;
  static final int REPEATS = 3;
  private static final double LEAST_RPM_SPAN = 1500.0;
  private static final double MOST_CREEP_KPA_PER_1000_RPM = 8.0;
  private static final double LEAST_EFFECT_KPA = 3.0;
  private static final double MOST_OVER_TABLE_KPA = 5.0;
  private static final double MOST_OFF_TABLE_KPA = 10.0;
  private static final double SPOOLED_SECONDS = 0.3;
  private static final double MOST_OVERSHOOT_KPA = 6.0;
  private static final double MOST_SETTLED_KPA = 3.0;
  private static final String SPRING_PEAK = "spring.peak_kpa";
  private static final long RESTING = resting();

  private final Settings settings;
  private final Checks checks;
  private final List<Pull> pulls = new ArrayList<>();

  DriveChecks(Settings settings, List<Recording> recordings, Checks checks) {
    this.settings = settings;
    this.checks = checks;
    for (Recording r : recordings) {
      pulls.addAll(
          PullFinder.find(DriveLog.ofRecord(r.name(), r.rows()), PullRules.FULL_THROTTLE));
      faults(r);
    }
    for (Pull pull : pulls) {
      if (!pull.usable()) {
        checks.find(
            "pull_of_no_use",
            Severity.NOTE,
            "A pull in " + pull.log().name() + " does not count: " + flaws(pull) + ".",
            "");
      }
    }
    pulls.removeIf(pull -> !pull.usable());
  }

  private static long resting() {
    long bits = 0L;
    for (FaultCode code : FaultCode.values()) {
      bits |= code.reaction().compareTo(Reaction.REST) >= 0 ? code.bit() : 0L;
    }
    return bits;
  }

  private static String flaws(Pull pull) {
    StringBuilder words = new StringBuilder();
    pull.flaws().forEach(f -> words.append(words.length() == 0 ? "" : ", ").append(f.words()));
    return words.toString();
  }

  private void faults(Recording r) {
    long seen = 0L;
    for (double[] row : r.rows()) {
      seen |= (long) row[LogFormat.FAULTS];
    }
    for (FaultCode code : FaultCode.values()) {
      if ((seen & RESTING & code.bit()) != 0L) {
        checks.find(
            code.id(),
            Severity.PROBLEM,
            code.id().replace('_', ' ') + " was confirmed in " + r.name() + ".",
            "find out why first; it clears " + code.clearRule().words());
      }
    }
  }

  /** Pulls needed, and the highest pressure against the limit. */
  private void common(String group, int needed, double headroomKpa) {
    checks.judge(
        group + ".pulls", "full-throttle pulls that count", pulls.size(), Units.COUNT, needed, Checks.NONE);
    checks.judge(
        group + ".rpm_span",
        "engine speed the longest pull spans",
        pulls.stream().mapToDouble(p -> p.toRpm() - p.fromRpm()).max().orElse(Double.NaN),
        Units.RPM,
        LEAST_RPM_SPAN,
        Checks.NONE);
    checks.judge(
        group + ".peak_kpa",
        "highest pressure",
        peak(),
        Units.KPA_ABS,
        Checks.NONE,
        settings.limits().cutoffKpaAbs() - headroomKpa);
  }

  private double peak() {
    return pulls.stream().mapToDouble(Pull::peakKpaAbs).max().orElse(Double.NaN);
  }

  private double highestDutyPct() {
    return 100.0 * pulls.stream().mapToDouble(Pull::highestDuty).max().orElse(Double.NaN);
  }

  void spring() {
    common("spring", 1, HEADROOM_KPA);
    checks.judge(
        "spring.duty_pct", "highest duty", highestDutyPct(), Units.PERCENT, Checks.NONE, 0);
    double ambient = pulls.isEmpty() ? Double.NaN : pulls.get(0).ambientKpaAbs();
    double cracks = settings.actuator().springCracksKpaGauge();
    checks.judge(
        "spring.boost_kpa",
        "boost on the spring alone",
        peak() - ambient,
        Units.KPA,
        Double.isNaN(cracks) ? 10.0 : 0.6 * cracks,
        Checks.NONE);
    Pull last = pulls.isEmpty() ? null : pulls.get(pulls.size() - 1);
    checks.keep(
        "spring.sag_kpa",
        "sag from the peak to the end of the pull",
        last == null ? Double.NaN : last.dropKpa(),
        Units.KPA);
    checks.judge(
        "spring.creep_kpa",
        "creep: rise per 1000 rpm over the second half of the pull",
        last == null ? Double.NaN : creep(last),
        Units.KPA,
        Checks.NONE,
        MOST_CREEP_KPA_PER_1000_RPM);
  }

  /**
   * Slope of pressure over speed in the second half, kPa for each 1000 1/min, at least 0; NaN for a
   * short pull, which is still spooling up there.
   */
  private static double creep(Pull pull) {
    if (!(pull.toRpm() - pull.fromRpm() >= LEAST_RPM_SPAN)) {
      return Double.NaN;
    }
    DriveLog log = pull.log();
    int middle = pull.from() + (pull.to() - pull.from()) / 2;
    double rise = log.meanKpaAbs(pull.to() - 1) - log.meanKpaAbs(middle);
    double speed = log.rpm(pull.to() - 1) - log.rpm(middle);
    return speed > 0.0 ? Math.max(0.0, 1000.0 * rise / speed) : Double.NaN;
  }

  void firstBoost(Standing standing) {
    common("first", 1, HEADROOM_KPA);
    double allowed = settings.valve().commandToDuty().at(Standing.FIRST_BOOST_COMMAND);
    checks.judge(
        "first.duty_pct",
        "highest duty",
        highestDutyPct(),
        Units.PERCENT,
        100.0 * settings.valve().windowLowDuty(),
        100.0 * allowed + 1e-6);
    checks.judge("first.trim_pct", "highest trim", trimPct(), Units.PERCENT, Checks.NONE, 0);
    checks.judge(
        "first.effect_kpa",
        "pressure above that of the spring drive",
        peak() - kept(standing, Rung.SPRING_DRIVE, SPRING_PEAK),
        Units.KPA,
        LEAST_EFFECT_KPA,
        Checks.NONE);
  }

  private static double kept(Standing standing, Rung rung, String id) {
    RungState state = standing.of(rung);
    Entry entry = state.entry();
    if (entry == null) {
      return Double.NaN;
    }
    return entry.measurements().stream()
        .filter(m -> m.id().equals(id))
        .mapToDouble(m -> m.value())
        .findFirst()
        .orElse(Double.NaN);
  }

  private double trimPct() {
    double most = pulls.isEmpty() ? Double.NaN : 0.0;
    for (Pull pull : pulls) {
      for (int row = pull.from(); row < pull.to(); row++) {
        most = Math.max(most, 100.0 * Math.abs(pull.log().trimFraction(row)));
      }
    }
    return most;
  }

  void fullTable() {
    common("table", REPEATS, TARGET_HEADROOM_KPA);
    repeats("table");
    checks.judge("table.trim_pct", "highest trim", trimPct(), Units.PERCENT, Checks.NONE, 0);
    double over = pulls.isEmpty() ? Double.NaN : Double.NEGATIVE_INFINITY;
    double under = over;
    for (Pull pull : pulls) {
      over = Math.max(over, farthest(pull, 1.0));
      under = Math.max(under, farthest(pull, -1.0));
    }
    checks.judge(
        "table.over_target_kpa",
        "highest over target",
        over,
        Units.KPA,
        Checks.NONE,
        MOST_OVER_TABLE_KPA);
    checks.judge(
        "table.under_target_kpa",
        "farthest under target once spooled up",
        under,
        Units.KPA,
        Checks.NONE,
        MOST_OFF_TABLE_KPA);
  }

  /**
   * How far pressure went to one side of the target from 0.3 s after 90 % were reached, kPa; NaN
   * when they never were.
   */
  private static double farthest(Pull pull, double side) {
    DriveLog log = pull.log();
    double most = Double.NaN;
    for (int row = pull.from(); row < pull.to(); row++) {
      if (pull.since(row) >= pull.most().seconds() + SPOOLED_SECONDS) {
        double off = side * (log.meanKpaAbs(row) - log.targetKpaAbs(row));
        most = Double.isNaN(most) ? off : Math.max(most, off);
      }
    }
    return most;
  }

  void feedback() {
    common("feedback", REPEATS, TARGET_HEADROOM_KPA);
    repeats("feedback");
    checks.judge(
        "feedback.trim_pct",
        "highest trim (0: it never acted)",
        trimPct(),
        Units.PERCENT,
        0.05,
        Checks.NONE);
    checks.judge(
        "feedback.overshoot_kpa",
        "highest over target",
        worst(Pull::overshootKpa),
        Units.KPA,
        Checks.NONE,
        MOST_OVERSHOOT_KPA);
    checks.judge(
        "feedback.settled_kpa",
        "farthest from target once settled",
        worst(p -> Math.abs(p.settledErrorKpa())),
        Units.KPA,
        Checks.NONE,
        MOST_SETTLED_KPA);
  }

  private double worst(ToDoubleFunction<Pull> measure) {
    double most = pulls.isEmpty() ? Double.NaN : Double.NEGATIVE_INFINITY;
    for (Pull pull : pulls) {
      most = Math.max(most, measure.applyAsDouble(pull)); // NaN stays
    }
    return most;
  }

  private void repeats(String group) {
    double lowest = pulls.stream().mapToDouble(Pull::peakKpaAbs).min().orElse(Double.NaN);
    checks.judge(
        group + ".repeat_kpa",
        "spread of the peaks",
        peak() - lowest,
        Units.KPA,
        Checks.NONE,
        REPEAT_KPA);
  }
}
