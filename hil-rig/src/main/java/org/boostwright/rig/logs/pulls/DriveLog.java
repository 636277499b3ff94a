package org.boostwright.rig.logs.pulls;

import java.util.Arrays;
import java.util.BitSet;
import java.util.List;
import org.boostwright.core.Controller;
import org.boostwright.core.record.LogFormat;
import org.boostwright.core.state.SafetyState;
import org.boostwright.rig.replay.csv.LogRefusedException;
import org.boostwright.rig.replay.csv.LogSignal;
import org.boostwright.rig.replay.csv.Pause;
import org.boostwright.rig.replay.csv.RecordedLog;
import org.boostwright.rig.replay.csv.SignalTrace;
import org.jspecify.annotations.Nullable;

/**
 * A recorded drive as learning sees it, whoever recorded it: pressures kPa absolute, demand and
 * throttle percent, engine speed 1/min, duties as fractions.
 *
 * <p>An imported log knows no duty, target, state or fault: these read NaN, NaN, READY and 0.
 */
public final class DriveLog {
  private static final int THROTTLE = LogFormat.column("throttle_pct");
  private static final int RPM = LogFormat.column("engine_rpm");
  private static final int ROAD = LogFormat.column("road_kmh");
  private static final int GEAR = LogFormat.column("gear");
  private static final int AIR = LogFormat.column("intake_air_c");
  private static final int AMBIENT = LogFormat.column("ambient_kpa_abs");
  private static final int TARGET = LogFormat.column("target_kpa_abs");
  private static final int BASE = LogFormat.column("base_duty_fraction");
  private static final int TRIM = LogFormat.column("trim_duty_fraction");
  private static final int SPOOLING = LogFormat.column("spooling");
  private static final double PAUSE_SECONDS = 0.5;

  private final String name;
  private final int rows;
  private final double[] seconds;
  private final double[] map;
  private final double[] demand;
  private final double[] rpm;
  private final double[] roadKmh;
  private final double[][] more;
  private final BitSet breaks;
  private final boolean controlled;
  private final double refreshSeconds;
  private final Smoothed smoothed;

  private DriveLog(
      String name,
      double[] seconds,
      double[] map,
      double[] demand,
      double[] rpm,
      double[] roadKmh,
      double[][] more,
      BitSet breaks,
      boolean controlled,
      double refreshSeconds) {
    this.name = name;
    rows = seconds.length;
    this.seconds = seconds;
    this.map = map;
    this.demand = demand;
    this.rpm = rpm;
    this.roadKmh = roadKmh;
    this.more = more;
    this.breaks = breaks;
    this.controlled = controlled;
    this.refreshSeconds = refreshSeconds;
    smoothed = new Smoothed(seconds, map, refreshSeconds);
  }

  /**
   * A run recorded by Boostwright.
   *
   * @param name name shown in messages
   * @param record rows of {@link LogFormat}, at least one
   */
  public static DriveLog ofRecord(String name, List<double[]> record) {
    int n = record.size();
    double[] seconds = new double[n];
    BitSet breaks = new BitSet(n);
    for (int i = 0; i < n; i++) {
      seconds[i] = record.get(i)[LogFormat.TIME_NS] * 1e-9;
      if (i > 0 && !(seconds[i] - seconds[i - 1] <= PAUSE_SECONDS)) {
        breaks.set(i);
      }
    }
    double[][] more = {
      column(record, GEAR),
      column(record, AIR),
      column(record, AMBIENT),
      column(record, TARGET),
      column(record, LogFormat.DUTY),
      column(record, BASE),
      column(record, TRIM),
      column(record, SPOOLING),
      column(record, LogFormat.STATE),
      column(record, LogFormat.FAULTS),
      column(record, LogFormat.FINDINGS)
    };
    return new DriveLog(
        name,
        seconds,
        column(record, LogFormat.MAP),
        column(record, THROTTLE),
        column(record, RPM),
        column(record, ROAD),
        more,
        breaks,
        true,
        Controller.TICK_NANOS * 1e-9);
  }

  private static double[] column(List<double[]> record, int column) {
    double[] values = new double[record.size()];
    for (int i = 0; i < values.length; i++) {
      values[i] = record.get(i)[column];
    }
    return values;
  }

  /**
   * A log of any other recorder.
   *
   * @param demandSignal what the driver asks with: {@link LogSignal#THROTTLE} or {@link
   *     LogSignal#PEDAL}
   * @param ambientKpaAbs ambient pressure, kPa absolute; NaN when not known
   * @throws LogRefusedException when pressure, demand or engine speed are missing
   */
  public static DriveLog ofImport(RecordedLog log, LogSignal demandSignal, double ambientKpaAbs)
      throws LogRefusedException {
    int n = log.rows();
    double[] seconds = new double[n];
    for (int i = 0; i < n; i++) {
      seconds[i] = log.nanos(i) * 1e-9;
    }
    BitSet breaks = new BitSet(n);
    for (Pause pause : log.pauses()) {
      breaks.set(pause.row());
    }
    SignalTrace pressure = log.require(LogSignal.MAP);
    double[][] more = new double[11][];
    Arrays.setAll(more, i -> filled(n, i >= 7 || i == 0 ? 0.0 : Double.NaN));
    more[2] = filled(n, ambientKpaAbs);
    more[8] = filled(n, SafetyState.READY.ordinal());
    return new DriveLog(
        log.name(),
        seconds,
        held(pressure, n),
        held(log.require(demandSignal), n),
        held(log.require(LogSignal.ENGINE_SPEED), n),
        held(log.trace(LogSignal.ROAD_SPEED), n),
        more,
        breaks,
        false,
        pressure.refresh().millis() * 1e-3);
  }

  private static double[] filled(int n, double value) {
    double[] values = new double[n];
    Arrays.fill(values, value);
    return values;
  }

  private static double[] held(@Nullable SignalTrace trace, int n) {
    double[] values = filled(n, Double.NaN);
    double last = Double.NaN;
    for (int i = 0; trace != null && i < n; i++) {
      last = Double.isNaN(trace.value(i)) ? last : trace.value(i);
      values[i] = last;
    }
    return values;
  }

  /** Name shown in messages. */
  public String name() {
    return name;
  }

  /** Number of rows. */
  public int rows() {
    return rows;
  }

  /** Time of a row, s. */
  public double seconds(int row) {
    return seconds[row];
  }

  /** Manifold pressure as recorded, kPa absolute. */
  public double mapKpaAbs(int row) {
    return map[row];
  }

  /** Manifold pressure, mean of 100 ms or of one reading where readings are rarer, kPa absolute. */
  public double meanKpaAbs(int row) {
    return smoothed.mean(row);
  }

  /** Rate of the pressure by least squares over 300 ms or five readings, kPa/s. */
  public double rateKpaPerSecond(int row) {
    return smoothed.rate(row);
  }

  /** What the driver asks for, percent. */
  public double demandPct(int row) {
    return demand[row];
  }

  /** Engine speed, 1/min. */
  public double rpm(int row) {
    return rpm[row];
  }

  /** Road speed, km/h; NaN or 0 when not known. */
  public double roadKmh(int row) {
    return roadKmh[row];
  }

  /** Gear, 0 when not known. */
  public int gear(int row) {
    return (int) more[0][row];
  }

  /** Intake air, degC; NaN when not known. */
  public double intakeAirC(int row) {
    return more[1][row];
  }

  /** Ambient pressure, kPa absolute; NaN when not known. */
  public double ambientKpaAbs(int row) {
    return more[2][row];
  }

  /** Boost target, kPa absolute; NaN when not known. */
  public double targetKpaAbs(int row) {
    return more[3][row];
  }

  /** Duty, fraction; NaN when not known. */
  public double dutyFraction(int row) {
    return more[4][row];
  }

  /** Base duty after its correction for ambient pressure, fraction; NaN when not known. */
  public double baseFraction(int row) {
    return more[5][row];
  }

  /** Trim that reached the duty, fraction; NaN when not known. */
  public double trimFraction(int row) {
    return more[6][row];
  }

  /** The wastegate was held shut to spool. */
  public boolean spooling(int row) {
    return more[7][row] != 0.0;
  }

  /** Safety state. */
  public SafetyState state(int row) {
    return SafetyState.values()[(int) more[8][row]];
  }

  /** Confirmed faults, as bits. */
  public long faults(int row) {
    return (long) more[9][row];
  }

  /** Findings, as bits. */
  public long findings(int row) {
    return (long) more[10][row];
  }

  /** The recording starts again with this row. */
  public boolean startsAgain(int row) {
    return breaks.get(row);
  }

  /** Duty, target, state and faults are known. */
  public boolean controlled() {
    return controlled;
  }

  /** Time between fresh readings of the pressure, s. */
  public double refreshSeconds() {
    return refreshSeconds;
  }
}
