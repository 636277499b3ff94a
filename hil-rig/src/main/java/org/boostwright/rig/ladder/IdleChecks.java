package org.boostwright.rig.ladder;

import java.util.Arrays;
import java.util.List;
import org.boostwright.core.AnalogChannel;
import org.boostwright.core.monitor.FaultCode;
import org.boostwright.core.record.LogFormat;
import org.boostwright.core.settings.AnalogSensor;
import org.boostwright.core.settings.MapLocation;
import org.boostwright.core.settings.Settings;
import org.boostwright.rig.result.Severity;
import org.boostwright.rig.result.Units;

/**
 * The rungs of the standing car. Cut proven: with the limit below idle pressure the overboost is
 * confirmed, the cut asked for and the engine stalls; with the limit restored it idles. First start:
 * it idles for a minute with the coil off, vacuum and signals live. The limits are common practice
 * where no source is named.
 */
final class IdleChecks {
  private static final int RPM = LogFormat.column("engine_rpm");
  private static final int THROTTLE = LogFormat.column("throttle_pct");
  private static final int CUT = LogFormat.column("engine_cut_request");
  private static final int COIL = LogFormat.column("coil_supply_closed");
  private static final int AMBIENT = LogFormat.column("ambient_kpa_abs");
  private static final int SUPPLY = LogFormat.column("supply_raw_v");

  /** Longest from the confirmed overboost to the request: 300 ms of rest, and a few ticks. */
  private static final double LONGEST_REQUEST_MS = 400.0;

  private static final double LONGEST_STALL_SECONDS = 3.0;
  private static final double SHORTEST_AFTER_SECONDS = 10.0;
  private static final double SHORTEST_IDLE_SECONDS = 60.0;
  private static final double IDLE_THROTTLE_PCT = 10.0;

  /** Idle vacuum: a leak, or ignition far too late, idles above two thirds of ambient. */
  private static final double HIGHEST_IDLE_SHARE = 0.65;

  private static final double WIDEST_IDLE_SPREAD_KPA = 12.0;
  /** After a blip the engine comes back to idle in this time. */
  private static final double SETTLED_SECONDS = 4.0;

  private static final double BLIP_PCT = 20.0;
  private static final double BLIP_RPM = 300.0;
  private static final double BLIP_SECONDS = 1.5;
  private static final int BLIPS = 2;

  private final Settings settings;
  private final Checks checks;

  IdleChecks(Settings settings, Checks checks) {
    this.settings = settings;
    this.checks = checks;
  }

  void cut(List<Recording> recordings) {
    boolean tested = false;
    boolean restored = false;
    for (Recording recording : recordings) {
      if (recording.cutTest()) {
        cutTest(recording);
        tested = true;
      } else {
        limitRestored(recording);
        restored = true;
      }
    }
    if (!tested || !restored) {
      checks.find(
          "cut_recordings",
          Severity.PROBLEM,
          "Two recordings are needed: one of 'drive --cut-test' and one of 'drive' after it.",
          "give both to 'stage --log'");
    }
    if (!settings.limits().engineCut()) {
      checks.find(
          "no_engine_cut",
          Severity.CAUTION,
          "No engine cut is wired: only the overboost trip was proven. Against a hose off the"
              + " actuator, a stuck wastegate or a stuck valve nothing but your foot can stop the"
              + " boost.",
          "wire a cut of all cylinders and set limits.engine_cut, or lift in time");
    }
  }

  private boolean runs(Recording r, int row) {
    return r.get(row, RPM) > settings.car().idleRpm();
  }

  private static boolean overboost(Recording r, int row) {
    return ((long) r.get(row, LogFormat.FAULTS) & FaultCode.OVERBOOST.bit()) != 0L;
  }

  private void cutTest(Recording r) {
    int trip = -1;
    int request = -1;
    int stalled = -1;
    boolean ran = false;
    for (int row = 0; row < r.rows().size() && stalled < 0; row++) {
      ran |= runs(r, row);
      if (ran && trip < 0 && overboost(r, row)) {
        trip = row;
      }
      if (trip >= 0 && request < 0 && r.get(row, CUT) != 0.0) {
        request = row;
      }
      if (request >= 0 && !runs(r, row)) {
        stalled = row;
      }
    }
    double pressure = trip < 0 ? Double.NaN : r.get(trip, LogFormat.MAP);
    checks.judge(
        "cut.trip_kpa",
        "pressure at which the lowered limit tripped, engine running",
        pressure,
        Units.KPA_ABS,
        r.cutTestKpaAbs(),
        Checks.NONE);
    if (settings.limits().engineCut()) {
      checks.judge(
          "cut.request_ms",
          "from the trip to the engine-cut request",
          trip < 0 || request < 0 ? Double.NaN : 1e3 * r.seconds(trip, request),
          Units.MILLISECONDS,
          0,
          LONGEST_REQUEST_MS);
      checks.judge(
          "cut.stall_s",
          "from the request until the engine stalled",
          stalled < 0 ? Double.NaN : r.seconds(request, stalled),
          Units.SECONDS,
          0,
          LONGEST_STALL_SECONDS);
    }
    coilOff(r, "cut.coil_on_ticks");
  }

  private void limitRestored(Recording r) {
    int trips = 0;
    int requests = 0;
    double running = 0.0;
    for (int row = 1; row < r.rows().size(); row++) {
      running += runs(r, row) ? r.seconds(row - 1, row) : 0.0;
      trips += overboost(r, row) ? 1 : 0;
      requests += r.get(row, CUT) != 0.0 ? 1 : 0;
    }
    checks.judge(
        "cut.after_running_s",
        "engine ran with the limit restored",
        running,
        Units.SECONDS,
        SHORTEST_AFTER_SECONDS,
        Checks.NONE);
    checks.judge(
        "cut.after_trips", "ticks with an overboost then", trips, Units.COUNT, Checks.NONE, 0);
    checks.judge(
        "cut.after_requests", "ticks with a cut request then", requests, Units.COUNT, Checks.NONE, 0);
  }

  private void coilOff(Recording r, String id) {
    long on = r.rows().stream().filter(row -> row[COIL] != 0.0 || row[LogFormat.DUTY] > 0.0).count();
    checks.judge(id, "ticks with the coil on", on, Units.COUNT, Checks.NONE, 0);
  }

  void firstStart(Recording r) {
    int n = r.rows().size();
    double running = 0.0;
    double shut = 0.0;
    double[] idle = new double[n];
    int idles = 0;
    long faults = 0L;
    for (int row = 1; row < n; row++) {
      faults |= (long) r.get(row, LogFormat.FAULTS);
      if (!runs(r, row)) {
        continue;
      }
      running += r.seconds(row - 1, row);
      shut = r.get(row, THROTTLE) < IDLE_THROTTLE_PCT ? shut + r.seconds(row - 1, row) : 0.0;
      if (shut > SETTLED_SECONDS) {
        idle[idles++] = r.get(row, LogFormat.MAP);
      }
    }
    double ambient = r.get(n - 1, AMBIENT);
    checks.judge(
        "start.running_s",
        "engine ran",
        running,
        Units.SECONDS,
        SHORTEST_IDLE_SECONDS,
        Checks.NONE);
    checks.judge(
        "start.ambient_kpa", "ambient pressure seen at key-on", ambient, Units.KPA_ABS, 60, 106);
    vacuum(Arrays.copyOf(idle, idles), ambient);
    checks.judge("start.blips", "throttle blips the engine followed", blips(r), Units.COUNT, BLIPS, Checks.NONE);
    supply(r);
    for (FaultCode code : FaultCode.values()) {
      if ((faults & code.bit()) != 0L) {
        checks.find(
            code.id(),
            Severity.PROBLEM,
            code.id().replace('_', ' ') + " was confirmed.",
            "put it right first; it clears " + code.clearRule().words());
      }
    }
    coilOff(r, "start.coil_on_ticks");
  }

  private void vacuum(double[] idle, double ambient) {
    Arrays.sort(idle);
    int n = idle.length;
    double median = n == 0 ? Double.NaN : idle[n / 2];
    boolean sees = settings.sensors().mapLocation() == MapLocation.INTAKE_MANIFOLD;
    checks.judge(
        "start.idle_kpa",
        sees ? "pressure at idle (a leak idles high)" : "pressure at idle",
        median,
        Units.KPA_ABS,
        Checks.NONE,
        sees ? HIGHEST_IDLE_SHARE * ambient : 1.05 * ambient);
    double spread = n == 0 ? Double.NaN : idle[(int) (0.95 * (n - 1))] - idle[(int) (0.05 * (n - 1))];
    checks.judge(
        "start.idle_spread_kpa",
        "spread of the pressure at idle (90 % of readings)",
        spread,
        Units.KPA,
        Checks.NONE,
        WIDEST_IDLE_SPREAD_KPA);
  }

  /** A blip: the throttle opens by 20 % and more, and within 1.5 s the engine is 300 1/min faster. */
  private int blips(Recording r) {
    int found = 0;
    int opened = -1;
    double lowest = Double.POSITIVE_INFINITY;
    for (int row = 0; row < r.rows().size(); row++) {
      double pct = r.get(row, THROTTLE);
      if (!runs(r, row)) {
        opened = -1;
        lowest = Double.POSITIVE_INFINITY;
      } else if (opened < 0) {
        lowest = Math.min(lowest, pct);
        opened = pct >= lowest + BLIP_PCT ? row : -1;
      } else if (r.seconds(opened, row) > BLIP_SECONDS) {
        opened = -1;
        lowest = pct;
      } else if (r.get(row, RPM) >= r.get(opened, RPM) + BLIP_RPM) {
        found++;
        opened = -1;
        lowest = Double.POSITIVE_INFINITY;
        while (row + 1 < r.rows().size() && r.get(row + 1, THROTTLE) >= BLIP_PCT) {
          row++;
        }
      }
    }
    return found;
  }

  private void supply(Recording r) {
    AnalogSensor sensor = settings.sensors().channel(AnalogChannel.SUPPLY);
    if (sensor == null) {
      return;
    }
    double volts = sensor.calibration().at(r.get(r.rows().size() - 1, SUPPLY));
    checks.judge("start.supply_v", "supply with the engine running", volts, "V", 12.0, 15.5);
  }
}
