package org.boostwright.core.record;

import org.boostwright.core.AnalogChannel;
import org.boostwright.core.Inputs;
import org.boostwright.core.Outputs;
import org.boostwright.core.monitor.FaultCode;
import org.boostwright.core.state.Permission;
import org.boostwright.core.state.SafetyState;
import org.boostwright.core.state.Waiting;

/**
 * The log row: names, units and order of its columns.
 *
 * <p>One row per tick, every number a double. The inputs are complete, so a recorded run replays to
 * the same bits; the outputs are what people read. As text it is RFC 4180 CSV: {@link
 * #appendHeader} and {@link #appendRow}, numbers in the shortest form that reads back exactly,
 * states in words. The last column, {@code meta}, is filled in the first row only: format version,
 * settings digest, seed.
 */
public final class LogFormat {
  /** In the {@code meta} column: ambient pressure the run began with, kPa absolute. */
  public static final String META_AMBIENT = "ambient_kpa_abs=";

  /** In the {@code meta} column: what the run was allowed, {@code Permission.text()}. */
  public static final String META_PERMISSION = "permission=";

  /** In the {@code meta} column: overboost limit of a cut test, kPa absolute. */
  public static final String META_CUT_TEST = "cut_test_kpa_abs=";

  /** In the {@code meta} column: fingerprint of the settings. */
  public static final String META_SETTINGS = "settings=";

  /** In the {@code meta} column: where the wires were, such as {@code pi}. */
  public static final String META_SOURCE = "source=";

  /** Value of {@link #META_SOURCE} for a run of the virtual car. */
  public static final String SOURCE_VIRTUAL = "virtual_car";

  /** Version of this format, first token of the {@code meta} column. */
  public static final String VERSION = "boostwright-log-1";

  private static final int ANALOG = 1;
  private static final int PULSES = ANALOG + 3 * AnalogChannel.COUNT;
  private static final int SWITCHES = PULSES + 6;
  private static final int OUTPUTS = SWITCHES + 8;

  /** Column of the tick's time, ns. */
  public static final int TIME_NS = 0;

  /** Column of the duty, fraction. */
  public static final int DUTY = OUTPUTS;

  /** Column of the safety state. */
  public static final int STATE = OUTPUTS + 5;

  /** Column of what is waited for. */
  public static final int WAITING = OUTPUTS + 6;

  /** Column of the confirmed faults. */
  public static final int FAULTS = OUTPUTS + 7;

  /** Column of the findings. */
  public static final int FINDINGS = OUTPUTS + 8;

  /** Column of the manifold pressure in use, kPa absolute. */
  public static final int MAP = OUTPUTS + 9;

  private static final String[] OUTPUT_NAMES = {
    "duty_fraction",
    "pwm_enabled",
    "coil_supply_closed",
    "engine_cut_request",
    "heartbeat_permitted",
    "state",
    "waiting",
    "faults",
    "findings",
    "map_kpa_abs",
    "throttle_pct",
    "engine_rpm",
    "road_kmh",
    "gear",
    "intake_air_c",
    "ambient_kpa_abs",
    "target_kpa_abs",
    "base_duty_fraction",
    "trim_duty_fraction",
    "spooling",
    "outside_table",
    "late_ticks"
  };

  /** Number of numeric columns; the text column {@code meta} follows them. */
  public static final int COLUMN_COUNT = OUTPUTS + OUTPUT_NAMES.length;

  private static final String[] NAMES = names();

  private static final FaultCode[] CODES = FaultCode.values();

  private LogFormat() {}

  private static String[] names() {
    String[] names = new String[COLUMN_COUNT];
    names[TIME_NS] = "time_ns";
    for (AnalogChannel channel : AnalogChannel.values()) {
      int i = ANALOG + 3 * channel.ordinal();
      names[i] = channel.id() + "_raw_v";
      names[i + 1] = channel.id() + "_sample_ns";
      names[i + 2] = channel.id() + "_answered";
    }
    names[PULSES] = "engine_period_ns";
    names[PULSES + 1] = "engine_pulse_ns";
    names[PULSES + 2] = "engine_seen";
    names[PULSES + 3] = "road_period_ns";
    names[PULSES + 4] = "road_pulse_ns";
    names[PULSES + 5] = "road_seen";
    names[SWITCHES] = "key_on";
    names[SWITCHES + 1] = "permit";
    names[SWITCHES + 2] = "coil_feed";
    names[SWITCHES + 3] = "high_boost";
    names[SWITCHES + 4] = "coil_energised";
    names[SWITCHES + 5] = "bench_request";
    names[SWITCHES + 6] = "bench_duty_fraction";
    names[SWITCHES + 7] = "outputs_wrong";
    System.arraycopy(OUTPUT_NAMES, 0, names, OUTPUTS, OUTPUT_NAMES.length);
    return names;
  }

  /**
   * The {@code meta} text of a run.
   *
   * @param settingsDigest fingerprint of the settings it runs with
   * @param permission what it is allowed
   * @param source where the wires are: {@code pi}, {@code link} or {@link #SOURCE_VIRTUAL}
   */
  public static String meta(String settingsDigest, Permission permission, String source) {
    return VERSION
        + " "
        + META_SETTINGS
        + settingsDigest
        + " "
        + META_PERMISSION
        + permission.text()
        + " "
        + META_SOURCE
        + source;
  }

  /**
   * A value of the {@code meta} text.
   *
   * @param key one of the {@code META_} names
   * @return the value; empty when it is not there
   */
  public static String metaValue(String meta, String key) {
    for (String word : meta.split(" ")) {
      if (word.startsWith(key)) {
        return word.substring(key.length());
      }
    }
    return "";
  }

  /** Name of a numeric column, with its unit as suffix. */
  public static String name(int column) {
    return NAMES[column];
  }

  /** Column of the given name; -1 when there is none. */
  public static int column(String name) {
    for (int i = 0; i < NAMES.length; i++) {
      if (NAMES[i].equals(name)) {
        return i;
      }
    }
    return -1;
  }

  /**
   * Fills a row.
   *
   * @param row at least {@link #COLUMN_COUNT} long
   */
  public static void fill(double[] row, long nowNanos, Inputs in, Outputs out) {
    row[TIME_NS] = nowNanos;
    for (int c = 0; c < AnalogChannel.COUNT; c++) {
      int i = ANALOG + 3 * c;
      row[i] = in.volts[c];
      row[i + 1] = in.sampleNanos[c];
      row[i + 2] = flag(in.answered[c]);
    }
    row[PULSES] = in.enginePeriodNanos;
    row[PULSES + 1] = in.enginePulseNanos;
    row[PULSES + 2] = flag(in.engineSeen);
    row[PULSES + 3] = in.roadPeriodNanos;
    row[PULSES + 4] = in.roadPulseNanos;
    row[PULSES + 5] = flag(in.roadSeen);
    row[SWITCHES] = flag(in.keyOn);
    row[SWITCHES + 1] = flag(in.permit);
    row[SWITCHES + 2] = flag(in.coilFeed);
    row[SWITCHES + 3] = flag(in.highBoost);
    row[SWITCHES + 4] = flag(in.coilEnergised);
    row[SWITCHES + 5] = flag(in.benchRequest);
    row[SWITCHES + 6] = in.benchDutyFraction;
    row[SWITCHES + 7] = flag(in.outputsWrong);
    row[DUTY] = out.dutyFraction;
    row[OUTPUTS + 1] = flag(out.pwmEnabled);
    row[OUTPUTS + 2] = flag(out.coilSupplyClosed);
    row[OUTPUTS + 3] = flag(out.engineCutRequest);
    row[OUTPUTS + 4] = flag(out.heartbeatPermitted);
    row[STATE] = out.state.ordinal();
    row[WAITING] = out.waiting.ordinal();
    row[FAULTS] = out.activeFaults;
    row[FINDINGS] = out.findings;
    row[MAP] = out.mapKpaAbs;
    row[MAP + 1] = out.throttlePct;
    row[MAP + 2] = out.engineRpm;
    row[MAP + 3] = out.roadKmh;
    row[MAP + 4] = out.gear;
    row[MAP + 5] = out.intakeAirC;
    row[MAP + 6] = out.ambientKpaAbs;
    row[MAP + 7] = out.targetKpaAbs;
    row[MAP + 8] = out.baseDutyFraction;
    row[MAP + 9] = out.trimDutyFraction;
    row[MAP + 10] = flag(out.spooling);
    row[MAP + 11] = out.outsideTable;
    row[MAP + 12] = out.lateTicks;
  }

  /** Restores the inputs of a row. Times are exact up to 2^53 ns (104 days). */
  public static void restoreInputs(double[] row, Inputs in) {
    for (int c = 0; c < AnalogChannel.COUNT; c++) {
      int i = ANALOG + 3 * c;
      in.volts[c] = row[i];
      in.sampleNanos[c] = (long) row[i + 1];
      in.answered[c] = row[i + 2] != 0.0;
    }
    in.enginePeriodNanos = row[PULSES];
    in.enginePulseNanos = (long) row[PULSES + 1];
    in.engineSeen = row[PULSES + 2] != 0.0;
    in.roadPeriodNanos = row[PULSES + 3];
    in.roadPulseNanos = (long) row[PULSES + 4];
    in.roadSeen = row[PULSES + 5] != 0.0;
    in.keyOn = row[SWITCHES] != 0.0;
    in.permit = row[SWITCHES + 1] != 0.0;
    in.coilFeed = row[SWITCHES + 2] != 0.0;
    in.highBoost = row[SWITCHES + 3] != 0.0;
    in.coilEnergised = row[SWITCHES + 4] != 0.0;
    in.benchRequest = row[SWITCHES + 5] != 0.0;
    in.benchDutyFraction = row[SWITCHES + 6];
    in.outputsWrong = row[SWITCHES + 7] != 0.0;
  }

  private static double flag(boolean on) {
    return on ? 1.0 : 0.0;
  }

  /** Appends the header line without its line end; the caller may add columns after it. */
  public static void appendHeader(StringBuilder to) {
    for (String name : NAMES) {
      to.append(name).append(',');
    }
    to.append("meta");
  }

  /**
   * Appends one row without its line end.
   *
   * @param meta text of the {@code meta} column; must hold no comma, quote or line end
   */
  public static void appendRow(StringBuilder to, double[] row, String meta) {
    for (int i = 0; i < COLUMN_COUNT; i++) {
      if (i == STATE) {
        to.append(SafetyState.values()[(int) row[i]].words());
      } else if (i == WAITING) {
        to.append(Waiting.values()[(int) row[i]].name().toLowerCase(java.util.Locale.ROOT));
      } else if (i == FAULTS || i == FINDINGS) {
        appendFaults(to, (long) row[i]);
      } else {
        appendNumber(to, row[i]);
      }
      to.append(',');
    }
    to.append(meta);
  }

  /** Appends fault ids joined by blanks; nothing for an empty set. */
  public static void appendFaults(StringBuilder to, long faults) {
    boolean first = true;
    for (FaultCode code : CODES) {
      if ((faults & code.bit()) != 0) {
        if (!first) {
          to.append(' ');
        }
        to.append(code.id());
        first = false;
      }
    }
  }

  /** Appends a number in the shortest form that reads back exactly; NaN as an empty cell. */
  public static void appendNumber(StringBuilder to, double number) {
    if (Double.isNaN(number)) {
      return;
    }
    long whole = (long) number;
    if (whole == number && (whole != 0L || 1.0 / number > 0.0)) {
      to.append(whole);
    } else {
      to.append(number);
    }
  }

  /**
   * Reads a state, waiting or fault column back from its text.
   *
   * @return the number {@link #fill} had written
   * @throws IllegalArgumentException when the text is none that this version writes
   */
  public static double parseWords(int column, String text) {
    if (column == STATE) {
      for (SafetyState state : SafetyState.values()) {
        if (state.words().equals(text)) {
          return state.ordinal();
        }
      }
      throw new IllegalArgumentException("unknown state '" + text + "'");
    }
    if (column == WAITING) {
      return Waiting.valueOf(text.toUpperCase(java.util.Locale.ROOT)).ordinal();
    }
    long faults = 0L;
    for (String id : text.split(" ")) {
      if (!id.isEmpty()) {
        faults |= faultOf(id).bit();
      }
    }
    return faults;
  }

  private static FaultCode faultOf(String id) {
    for (FaultCode code : CODES) {
      if (code.id().equals(id)) {
        return code;
      }
    }
    throw new IllegalArgumentException("unknown fault '" + id + "'");
  }

  /** True for the columns that hold words instead of numbers. */
  public static boolean isWords(int column) {
    return column == STATE || column == WAITING || column == FAULTS || column == FINDINGS;
  }
}
