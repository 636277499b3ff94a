package org.boostwright.rig.cli;

import org.boostwright.core.monitor.FaultCode;
import org.boostwright.rig.link.CaseOutcome;
import org.boostwright.rig.link.CaseOutcome.Verdict;
import org.boostwright.rig.link.RigBench;
import org.boostwright.rig.link.RigPlan;
import org.boostwright.rig.link.RigReport;
import org.boostwright.rig.result.ResultBuilder;
import org.boostwright.rig.result.Severity;
import org.boostwright.rig.result.Units;

/** Puts what the rig measured into a result. */
final class RigResult {
  private static final double NO_LIMIT = Double.NaN;
  private static final double START_SECONDS = 1.5;

  private RigResult() {}

  static void add(ResultBuilder result, RigPlan plan, RigReport report) {
    if (!report.connected()) {
      result.refuse(
          "no_controller",
          "No controller: " + report.health() + ".",
          "start it with: boostwright drive --io link:PORT");
      result.headline("No controller answered.");
      return;
    }
    timing(result, report);
    for (CaseOutcome outcome : report.outcomes()) {
      CaseFindings.add(result, "rig", outcome);
    }
    CaseFindings.timeLine(result, report.outcomes());
    if (plan.cases().isEmpty()) {
      driving(result, report);
    }
    if (!report.restartAtRest()) {
      result.find(
          "restart_not_at_rest",
          Severity.PROBLEM,
          "After it was killed the controller did not come up at rest.",
          "");
    }
    if (!report.sameSettings()) {
      result.find(
          "other_settings",
          Severity.CAUTION,
          "The controller works with other settings than the rig.",
          "give both the same file");
    }
    if (!report.realTime()) {
      result.find(
          "rig_not_real_time",
          Severity.NOTE,
          "The rig's ticks had no place before other programs on this machine; a busy machine makes"
              + " reactions look longer than they are.",
          "");
    }
    result.provenance("sequence and stamps rolled over", report.rolledOver() ? "yes" : "not yet");
    result.headline(headline(report));
  }

  /** What a run at the bench saw. */
  static void addBench(ResultBuilder result, RigBench.Report report) {
    if (!report.connected()) {
      result.refuse(
          "no_controller",
          "No controller: " + report.health() + ".",
          "start it with: boostwright bench --valve link:PORT");
      result.headline("No controller answered.");
      return;
    }
    frames(result, report.frames(), report.broken());
    result.measure(
        "rig.drive_highest_duty_pct", "highest duty", 100.0 * report.highestDuty(), Units.PERCENT);
    result.provenance("wires", report.health());
    result.headline("The bench session at the other end is over.");
  }

  private static void frames(ResultBuilder result, long frames, long broken) {
    result.measure("rig.frames", "controller frames", frames, Units.COUNT);
    result.measure(
        "rig.broken_frames",
        "frames with an impossible duty, or duty while at rest",
        broken,
        Units.COUNT,
        NO_LIMIT,
        0.0);
  }

  private static String headline(RigReport report) {
    int all = report.outcomes().size();
    if (all == 0) {
      return "The controller drove to the end.";
    }
    long failed = count(report, Verdict.FAILED);
    long invalid = count(report, Verdict.INVALID);
    if (failed + invalid == 0) {
      return "All " + all + " faults met as they must be.";
    }
    return (failed == 0 ? "None" : Long.toString(failed))
        + " of "
        + all
        + " faults not met as they must be"
        + (invalid == 0 ? "." : "; " + invalid + " invalid, which proves nothing.");
  }

  private static long count(RigReport report, Verdict verdict) {
    return report.outcomes().stream().filter(o -> o.verdict() == verdict).count();
  }

  private static void timing(ResultBuilder result, RigReport report) {
    frames(result, report.frames(), report.brokenFrames());
    result.measure(
        "link.round_trip_p50_ms",
        "round trip, half",
        report.roundTripP50Millis(),
        Units.MILLISECONDS);
    result.measure(
        "link.round_trip_p99_ms",
        "round trip, 99 %",
        report.roundTripP99Millis(),
        Units.MILLISECONDS);
    result.measure(
        "tick.interval_p999_ms",
        "tick to tick, 99.9 %",
        report.tickP999Millis(),
        Units.MILLISECONDS);
    result.measure(
        "tick.interval_max_ms",
        "tick to tick while driving, longest",
        report.tickMaxMillis(),
        Units.MILLISECONDS);
    result.measure(
        "link.missed_at_rig",
        "controller frames that never came while driving",
        report.missedAtRig(),
        Units.COUNT,
        NO_LIMIT,
        0.0);
    result.measure("tick.late", "late ticks while driving", report.lateTicks(), Units.COUNT);
    result.measure(
        "rig.late_max_ms",
        "latest tick of the rig itself while driving",
        report.rigLateMaxMillis(),
        Units.MILLISECONDS);
    if (!Double.isNaN(report.startSeconds())) {
      result.measure(
          "drive.start_s",
          "start of the program to its first tick",
          report.startSeconds(),
          Units.SECONDS);
    }
    if (!Double.isNaN(report.restartSeconds())) {
      result.measure(
          "drive.restart_s",
          "the same after it was killed",
          report.restartSeconds(),
          Units.SECONDS);
    }
  }

  private static void driving(ResultBuilder result, RigReport report) {
    if (!Double.isNaN(report.missedAtController())) {
      result.measure(
          "link.missed_at_controller",
          "rig frames that never came",
          report.missedAtController(),
          Units.COUNT,
          NO_LIMIT,
          0.0);
    }
    result.measure(
        "rig.drive_faults",
        "faults reported while driving",
        Long.bitCount(report.driveFaults()),
        Units.COUNT,
        NO_LIMIT,
        0.0);
    result.measure(
        "rig.drive_highest_duty_pct",
        "highest duty while driving",
        100.0 * report.driveHighestDuty(),
        Units.PERCENT);
    for (FaultCode code : FaultCode.values()) {
      if ((report.driveFaults() & code.bit()) != 0L) {
        result.find("drive_fault_" + code.id(), Severity.CAUTION, code.id() + " was reported.", "");
      }
    }
    if (!Double.isNaN(report.startSeconds())) {
      result.measure(
          "drive.start_within_s",
          "start to first tick, judged",
          report.startSeconds(),
          Units.SECONDS,
          NO_LIMIT,
          START_SECONDS);
    }
  }
}
