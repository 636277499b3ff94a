package org.boostwright.rig.logs.correct;

import java.util.ArrayList;
import java.util.List;
import org.boostwright.core.control.DutyWindow;
import org.boostwright.core.monitor.FaultCode;
import org.boostwright.core.monitor.Reaction;
import org.boostwright.core.settings.Settings;
import org.boostwright.core.settings.UnitSettings;
import org.boostwright.core.state.SafetyState;
import org.boostwright.rig.logs.identify.LocalGain;
import org.boostwright.rig.logs.pulls.DriveLog;

/**
 * Takes from a log the rows that say something about base duty: the controller in control, throttle
 * steady, no spool under way or just over, pressure nearly at rest against its target, inside the
 * duty window, no fault.
 *
 * <p>From the error in pressure follows the duty that would have held the target: {@code applied +
 * error/gain}. What stands in the table was corrected for ambient pressure when it was driven with,
 * and the correction is taken back in the same ratio.
 */
final class SettledRows {
  /** Pressure may move this fast against its target, kPa/s. */
  static final double STILL_KPA_PER_SECOND = 10.0;

  private static final int TARGET_ROWS = 30;
  private static final double AFTER_SPOOL_SECONDS = 0.7;
  private static final double STEADY_SECONDS = 0.5;
  private static final double STEADY_PCT = 4.0;
  private static final double NEW_VISIT_SECONDS = 2.0;
  private static final double EDGE = 0.004;
  private static final double HEADROOM_KPA = 5.0;
  private static final double INTERCOOLER_DROP_KPA = 10.0;
  private static final long RESTING = resting();
  private static final long SUSPECT =
      FaultCode.MAP_FALL_UNEXPLAINED.bit()
          | FaultCode.VALVE_NO_EFFECT.bit()
          | FaultCode.SPOOL_NOT_RISING.bit()
          | FaultCode.AMBIENT_IN_DOUBT.bit();

  private final DriveLog log;
  private final Settings settings;
  private final LocalGain gain;
  private final DutyWindow window;
  private final List<Evidence> evidence = new ArrayList<>();
  private int visit;
  private double lastSeconds = Double.NEGATIVE_INFINITY;
  private int strange;

  private SettledRows(DriveLog log, Settings settings, LocalGain gain, int visit) {
    this.log = log;
    this.settings = settings;
    this.gain = gain;
    this.visit = visit;
    window = new DutyWindow(settings.valve());
  }

  private static long resting() {
    long bits = 0L;
    for (FaultCode code : FaultCode.values()) {
      if (code.reaction().compareTo(Reaction.REST) >= 0) {
        bits |= code.bit();
      }
    }
    return bits;
  }

  /** The rows of a log, its visits numbered from {@code visit} on. */
  static SettledRows of(DriveLog log, Settings settings, LocalGain gain, int visit) {
    SettledRows rows = new SettledRows(log, settings, gain, visit);
    rows.collect();
    return rows;
  }

  /** What was found. */
  List<Evidence> evidence() {
    return evidence;
  }

  /** Number of the next visit. */
  int nextVisit() {
    return evidence.isEmpty() ? visit : visit + 1;
  }

  /** Rows whose recorded base duty is not what the table of the settings gives. */
  int strangeRows() {
    return strange;
  }

  private void collect() {
    double spoolEnd = Double.NEGATIVE_INFINITY;
    double steadySince = Double.NaN;
    double steadyPct = Double.NaN;
    boolean fault = false;
    for (int r = 0; r < log.rows(); r++) {
      if (log.startsAgain(r)) {
        steadySince = Double.NaN;
        fault = false;
      }
      // After a fault nothing of this log may raise duty: what broke was perhaps breaking before.
      fault |= (log.faults(r) & RESTING) != 0L;
      if (log.spooling(r)) {
        spoolEnd = log.seconds(r);
      }
      if (!(Math.abs(log.demandPct(r) - steadyPct) <= STEADY_PCT)) {
        steadyPct = log.demandPct(r);
        steadySince = log.seconds(r);
      }
      if (log.state(r) == SafetyState.CONTROLLING
          && log.faults(r) == 0L
          && !log.spooling(r)
          && log.seconds(r) - spoolEnd >= AFTER_SPOOL_SECONDS
          && log.seconds(r) - steadySince >= STEADY_SECONDS) {
        row(r, fault);
      }
    }
  }

  private void row(int r, boolean afterFault) {
    double demand = log.demandPct(r);
    double rpm = log.rpm(r);
    double base = log.baseFraction(r);
    double applied = log.dutyFraction(r);
    double target = log.targetKpaAbs(r);
    double mean = log.meanKpaAbs(r);
    double rate = log.rateKpaPerSecond(r) - targetRate(r);
    double tabled = settings.baseDuty().at(demand, rpm);
    if (!(base > 0.0 && applied > 0.0 && tabled > 0.0 && target > 0.0 && mean > 0.0)) {
      return;
    }
    double toTable = tableRatio(demand, rpm, target, log.ambientKpaAbs(r));
    if (strange(tabled, base, rpm, demand, target, log.ambientKpaAbs(r))) {
      strange++;
    }
    if (log.seconds(r) - lastSeconds > NEW_VISIT_SECONDS && !evidence.isEmpty()) {
      visit++;
    }
    lastSeconds = log.seconds(r);
    boolean still = Math.abs(rate) <= STILL_KPA_PER_SECOND;
    double trim = applied - base;
    double wanted = (trim + (target - mean) / gain.at(rpm)) * toTable;
    double room = (trim + (target + HEADROOM_KPA - mean) / gain.highestAt(rpm)) * toTable;
    double ceiling = settings.limits().dutyCeiling().at(rpm);
    boolean saturated =
        applied >= Math.min(ceiling, settings.valve().windowHighDuty()) - EDGE
            || Math.abs(trim) >= settings.limits().trimCapDuty() - EDGE
            || (log.findings(r) & FaultCode.TARGET_OUT_OF_REACH.bit()) != 0L;
    boolean doubtful = afterFault || (log.findings(r) & SUSPECT) != 0L;
    evidence.add(
        new Evidence(visit, demand, rpm, wanted, room, target - mean, still, saturated, doubtful));
  }

  /** Boost that follows a moving target is settled too. */
  private double targetRate(int r) {
    int from = Math.max(0, r - TARGET_ROWS);
    int to = Math.min(log.rows() - 1, r + TARGET_ROWS);
    double seconds = log.seconds(to) - log.seconds(from);
    return (log.targetKpaAbs(to) - log.targetKpaAbs(from)) / seconds;
  }

  /** A change of the duty that was driven, per change in the table: see BoostControl. */
  private double tableRatio(double demand, double rpm, double target, double ambient) {
    double reference =
        settings.target().at(demand, rpm)
            - UnitSettings.STANDARD_ATMOSPHERE_KPA
            + INTERCOOLER_DROP_KPA;
    double here = target - ambient + INTERCOOLER_DROP_KPA;
    return reference > INTERCOOLER_DROP_KPA && here > INTERCOOLER_DROP_KPA ? here / reference : 1.0;
  }

  private boolean strange(
      double tabled, double base, double rpm, double demand, double target, double ambient) {
    double command = window.commandOf(tabled);
    double expected = tabled;
    double ratio = tableRatio(demand, rpm, target, ambient);
    if (command > 0.0 && ratio != 1.0) {
      double lost = UnitSettings.STANDARD_ATMOSPHERE_KPA - ambient;
      double here = target - ambient + INTERCOOLER_DROP_KPA;
      double share = (1.0 - command) / ratio - settings.exhaustHelp().at(rpm) * lost / here;
      expected = share < 1.0 ? window.dutyOf(1.0 - share) : 0.0;
    }
    return !(Math.abs(expected - base) <= 2.0 * EDGE);
  }
}
