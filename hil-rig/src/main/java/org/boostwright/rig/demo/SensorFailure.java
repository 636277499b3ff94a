package org.boostwright.rig.demo;

import org.boostwright.core.AnalogChannel;
import org.boostwright.core.Controller;
import org.boostwright.core.monitor.FaultCode;
import org.boostwright.core.record.LogFormat;
import org.boostwright.core.state.SafetyState;
import org.boostwright.rig.plant.WireFaults;
import org.boostwright.rig.result.ResultBuilder;
import org.boostwright.rig.result.Severity;
import org.boostwright.rig.result.Units;
import org.boostwright.rig.scenario.PullPlan;
import org.boostwright.rig.scenario.PullRun;
import org.boostwright.rig.scenario.RunLog;

/**
 * The pressure sensor's wire opens at full boost (fault S1): rest within 40 ms, nothing but the
 * right fault, spring pressure to the end.
 */
final class SensorFailure {
  /** Longest time from the wire opening to rest, ms. */
  private static final double REST_WITHIN_MS = 40.0;

  /** How close to a pull on the spring alone it has to end, kPa. */
  private static final double SPRING_KPA = 3.0;

  private static final double NONE = Double.NaN;

  private SensorFailure() {}

  /** The wire opens so long after the throttle, s. */
  static PullPlan.Event wireOpensAt(double seconds) {
    return new PullPlan.Event(
        seconds, faults -> faults.wire(AnalogChannel.MAP).wire = WireFaults.Wire.OPEN);
  }

  /** The coil's wire is open from the start: the car runs on its spring. */
  static PullPlan.Event springOnly() {
    return new PullPlan.Event(0.0, faults -> faults.valve.coilOpen = true);
  }

  static void judge(ResultBuilder result, PullRun failed, PullRun spring) {
    int opened = failed.eventRows().get(0);
    RunLog log = failed.log();
    int rest = opened;
    while (rest < log.rows() && !atRest(log, rest)) {
      rest++;
    }
    boolean rested = rest < log.rows();
    // The wire opens at the beginning of its tick and rest is commanded at the end of its own.
    double restMillis = rested ? (rest - opened + 1) * Controller.TICK_NANOS * 1e-6 : NONE;
    result.measure(
        "demo.failure_rest_ms",
        "from the open sensor wire to rest",
        restMillis,
        Units.MILLISECONDS,
        NONE,
        REST_WITHIN_MS);
    double duty = 0.0;
    double peak = 0.0;
    for (int i = rest; i < log.rows(); i++) {
      duty = Math.max(duty, log.get(i, LogFormat.DUTY));
    }
    for (int i = opened; i < log.rows(); i++) {
      peak = Math.max(peak, log.get(i, RunLog.TRUE_MAP));
    }
    result.measure(
        "demo.failure_duty_pct", "highest duty after rest", 100.0 * duty, Units.PERCENT, NONE, 0.0);
    result.measure(
        "demo.failure_peak_kpa",
        "highest true pressure after the wire opened",
        peak,
        Units.KPA_ABS,
        NONE,
        failed.settings().limits().cutoffKpaAbs());
    result.measure(
        "demo.failure_from_spring_kpa",
        "distance from the spring pull at its end",
        atEnd(failed) - atEnd(spring),
        Units.KPA,
        -SPRING_KPA,
        SPRING_KPA);
    faults(result, failed);
  }

  private static boolean atRest(RunLog log, int row) {
    return SafetyState.values()[(int) log.get(row, LogFormat.STATE)].isRest();
  }

  private static double atEnd(PullRun run) {
    return run.log().get(run.shutAt() - 1, RunLog.TRUE_MAP);
  }

  private static void faults(ResultBuilder result, PullRun failed) {
    long seen = 0L;
    for (int i = 0; i < failed.log().rows(); i++) {
      seen |= (long) failed.log().get(i, LogFormat.FAULTS);
    }
    if (seen == FaultCode.MAP_SIGNAL_LOW.bit()) {
      result.find(
          "failure_reported",
          Severity.NOTE,
          "The open sensor wire was reported as "
              + FaultCode.MAP_SIGNAL_LOW.id()
              + " and as nothing else.",
          "");
    } else {
      StringBuilder words = new StringBuilder();
      LogFormat.appendFaults(words, seen);
      result.find(
          "failure_misreported",
          Severity.PROBLEM,
          "The open sensor wire was reported as: " + words + ".",
          "this is a defect; please report it");
    }
  }
}
