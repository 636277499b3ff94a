package org.boostwright.pi.web;

import java.util.Locale;
import org.boostwright.core.AnalogChannel;
import org.boostwright.core.monitor.ClearRule;
import org.boostwright.core.monitor.FaultCode;
import org.boostwright.core.monitor.FaultWords;
import org.boostwright.core.monitor.Reaction;
import org.boostwright.core.monitor.Roadside;
import org.boostwright.core.record.LogFormat;
import org.boostwright.core.settings.AnalogSensor;
import org.boostwright.core.settings.OptionalWires;
import org.boostwright.core.settings.Settings;
import org.boostwright.core.settings.UnitSettings;
import org.boostwright.core.state.SafetyState;
import org.boostwright.core.state.Waiting;
import org.boostwright.core.table.Axis;

/** One row of the newest tick as the page shows it: numbers in the person's unit, and words. */
final class LiveFrame {
  private static final int THROTTLE = LogFormat.column("throttle_pct");
  private static final int RPM = LogFormat.column("engine_rpm");
  private static final int GEAR = LogFormat.column("gear");
  private static final int AIR = LogFormat.column("intake_air_c");
  private static final int AMBIENT = LogFormat.column("ambient_kpa_abs");
  private static final int TARGET = LogFormat.column("target_kpa_abs");
  private static final int BASE = LogFormat.column("base_duty_fraction");
  private static final int TRIM = LogFormat.column("trim_duty_fraction");
  private static final int SPOOLING = LogFormat.column("spooling");
  private static final int LATE = LogFormat.column("late_ticks");
  private static final int CUT = LogFormat.column("engine_cut_request");
  private static final int KEY = LogFormat.column("key_on");
  private static final int PERMIT = LogFormat.column("permit");
  private static final int COIL_FEED = LogFormat.column("coil_feed");
  private static final int HIGH_BOOST = LogFormat.column("high_boost");
  private static final int PEDAL_VOLTS = LogFormat.column(AnalogChannel.PEDAL.id() + "_raw_v");

  /** A sample older than this is called old, ns. */
  private static final double OLD_NANOS = 250e6;

  private final Settings settings;
  private final UnitSettings units;

  LiveFrame(Settings settings) {
    this.settings = settings;
    units = settings.units();
  }

  /** Decimals a pressure is shown with. */
  int decimals() {
    return switch (units.pressure()) {
      case KPA -> 0;
      case PSI -> 1;
      case BAR -> 2;
    };
  }

  /** Writes the fields of one row into an open object. */
  void write(JsonText json, double[] row) {
    SafetyState state = SafetyState.values()[(int) row[LogFormat.STATE]];
    long faults = (long) row[LogFormat.FAULTS];
    json.name("state").value(state.words());
    json.name("tone").value(tone(state));
    json.name("why").value(why(row, state, faults));
    pressure(json, "map", row[LogFormat.MAP]);
    pressure(json, "target", state == SafetyState.CONTROLLING ? row[TARGET] : Double.NaN);
    pressure(json, "limit", settings.limits().cutoffKpaAbs());
    double margin = settings.limits().cutoffKpaAbs() - row[LogFormat.MAP];
    json.name("margin").value(units.pressure().fromKpa(margin), decimals());
    pressure(json, "ambient", row[AMBIENT]);
    json.name("duty").value(100.0 * row[LogFormat.DUTY], 0);
    json.name("parts").value(parts(row, state));
    json.name("rpm").value(row[RPM], 0);
    json.name("throttle").value(row[THROTTLE], 0);
    json.name("gear").value((long) row[GEAR]);
    json.name("air").value(row[AIR], 0);
    json.name("tables").value(tables(row));
    json.name("late").value((long) row[LATE]);
    json.name("cut").value(row[CUT] != 0.0);
    json.name("stopped").value(row[RPM] == 0.0);
    sensors(json, row, faults);
    switches(json, row);
    json.name("active").openList();
    for (FaultCode code : FaultCode.values()) {
      if (((faults | (long) row[LogFormat.FINDINGS]) & code.bit()) != 0L) {
        fault(json, code);
      }
    }
    json.closeList();
  }

  private void pressure(JsonText json, String name, double kpaAbs) {
    json.name(name).value(units.fromKpaAbs(kpaAbs), decimals());
  }

  private static String tone(SafetyState state) {
    return switch (state) {
      case HELD_AT_SPRING, LOCKED_UNTIL_RESTART -> "fault";
      case CONTROLLING, BENCH -> "working";
      case READY -> "ready";
      case RESTING -> "rest";
    };
  }

  private static String why(double[] row, SafetyState state, long faults) {
    if (state.isRest() && faults != 0L) {
      FaultCode worst = worst(faults);
      return FaultWords.of(worst).meaning() + " Clears " + clears(worst) + ".";
    }
    if (state == SafetyState.CONTROLLING) {
      return "The valve follows the tables.";
    }
    if (state == SafetyState.BENCH) {
      return "A bench procedure moves the valve.";
    }
    return "Waiting for " + Waiting.values()[(int) row[LogFormat.WAITING]].words() + ".";
  }

  private static FaultCode worst(long faults) {
    FaultCode worst = null;
    for (FaultCode code : FaultCode.values()) {
      boolean set = (faults & code.bit()) != 0L;
      if (set && (worst == null || code.reaction().compareTo(worst.reaction()) > 0)) {
        worst = code;
      }
    }
    if (worst == null) {
      throw new IllegalArgumentException("no fault in " + faults);
    }
    return worst;
  }

  private static String clears(FaultCode code) {
    return code.clearRule() == ClearRule.GOOD_FOR_CLEAR_TIME
        ? String.format(Locale.ROOT, "when it has been good for %.1f s", code.clearSeconds())
        : code.clearRule().words();
  }

  private static String parts(double[] row, SafetyState state) {
    if (state != SafetyState.CONTROLLING) {
      return "";
    }
    return row[SPOOLING] != 0.0
        ? "held shut to spool up"
        : String.format(
            Locale.ROOT, "table %.0f %%, trim %+.0f %%", 100.0 * row[BASE], 100.0 * row[TRIM]);
  }

  /** Where the tables are read, in words. */
  private String tables(double[] row) {
    Axis rpms = settings.target().columns();
    Axis demands = settings.target().rows();
    boolean pedal = settings.demand() == AnalogChannel.PEDAL;
    AnalogSensor sensor = settings.sensors().channel(settings.demand());
    double demand =
        pedal && sensor != null ? sensor.calibration().at(row[PEDAL_VOLTS]) : row[THROTTLE];
    if (!Double.isFinite(row[RPM]) || !Double.isFinite(demand)) {
      return "The tables are not read: engine speed or " + name(settings.demand()) + " is unknown.";
    }
    return String.format(
        Locale.ROOT,
        "Tables read at %.0f rpm (%s) and %.0f %% %s (%s).",
        row[RPM],
        between(rpms, row[RPM], "rpm"),
        demand,
        name(settings.demand()),
        between(demands, demand, "%"));
  }

  private static String between(Axis axis, double x, String unit) {
    double[] points = axis.points();
    if (x < points[0]) {
      return String.format(Locale.ROOT, "below the first column, %.0f %s", points[0], unit)
          .replace("column", unit.equals("%") ? "row" : "column");
    }
    double last = points[points.length - 1];
    if (x > last) {
      return String.format(Locale.ROOT, "above the last column, %.0f %s", last, unit)
          .replace("column", unit.equals("%") ? "row" : "column");
    }
    for (int i = 0; i < points.length; i++) {
      if (points[i] == x) {
        return "on a point";
      }
    }
    int at = axis.locate(x);
    return String.format(Locale.ROOT, "between %.0f and %.0f", points[at], points[at + 1]);
  }

  private void sensors(JsonText json, double[] row, long faults) {
    json.name("sensors").openList();
    for (AnalogChannel channel : AnalogChannel.values()) {
      AnalogSensor sensor = settings.sensors().channel(channel);
      if (sensor == null) {
        continue;
      }
      int at = LogFormat.column(channel.id() + "_raw_v");
      String status = status(channel, row, at, faults);
      json.open();
      json.name("name").value(name(channel));
      json.name("status").value(status);
      json.name("good").value(status.equals("reading"));
      json.name("volts").value(row[at], 3);
      json.name("value").value(shown(channel, sensor.calibration().at(row[at])));
      json.close();
    }
    json.closeList();
  }

  /** Switches that are wired, in words. */
  private void switches(JsonText json, double[] row) {
    OptionalWires wires = settings.optional();
    json.name("switches").openList();
    position(json, wires.keyInput(), "key", row[KEY], "on", "off");
    position(json, wires.permitInput(), "safety device", row[PERMIT], "says yes", "says no");
    position(
        json,
        wires.springOnlySense(),
        "spring-only switch",
        row[COIL_FEED],
        "lets the coil work",
        "spring only");
    position(
        json,
        wires.boostSelector() || settings.limits().guest(),
        "boost",
        row[HIGH_BOOST],
        "high",
        "low");
    json.closeList();
  }

  private static void position(
      JsonText json, boolean wired, String name, double value, String yes, String no) {
    if (wired) {
      json.open().name("name").value(name).name("is").value(value != 0.0 ? yes : no).close();
    }
  }

  private static String name(AnalogChannel channel) {
    return switch (channel) {
      case MAP -> "manifold pressure";
      case THROTTLE -> "throttle";
      case PEDAL -> "pedal";
      case INTAKE_AIR -> "intake air";
      case COOLANT -> "coolant";
      case BAROMETER -> "barometer";
      case SUPPLY -> "supply voltage";
    };
  }

  private static String status(AnalogChannel channel, double[] row, int at, long faults) {
    for (FaultCode code : FaultCode.values()) {
      if ((faults & code.bit()) != 0L && code.id().startsWith(channel.id() + "_")) {
        return "fault: " + FaultWords.of(code).meaning();
      }
    }
    if (row[at + 2] == 0.0) {
      return "does not answer";
    }
    return row[LogFormat.TIME_NS] - row[at + 1] > OLD_NANOS ? "no new sample" : "reading";
  }

  private String shown(AnalogChannel channel, double value) {
    return switch (channel) {
      case MAP, BAROMETER ->
          String.format(
              Locale.ROOT, "%." + decimals() + "f %s", units.fromKpaAbs(value), units.label());
      case THROTTLE, PEDAL -> String.format(Locale.ROOT, "%.0f %%", value);
      case INTAKE_AIR, COOLANT -> String.format(Locale.ROOT, "%.0f °C", value);
      case SUPPLY -> String.format(Locale.ROOT, "%.1f V", value);
    };
  }

  /** One fault with its words. */
  static void fault(JsonText json, FaultCode code) {
    FaultWords words = FaultWords.of(code);
    json.open();
    json.name("id").value(code.id());
    json.name("text").value(words.meaning());
    json.name("next").value(words.next());
    json.name("does").value(does(code.reaction()));
    json.name("clears").value(clears(code));
    if (code.reaction() == Reaction.REST || code.reaction() == Reaction.LOCK) {
      json.name("order").value(Roadside.order(code));
      json.name("onwards").value(Roadside.driveOn(Roadside.blinks(code)));
    }
    json.close();
  }

  private static String does(Reaction reaction) {
    return switch (reaction) {
      case REPORT -> "shown and recorded only";
      case SUBSTITUTE -> "a stated substitute is used";
      case NO_TRIM -> "table only, no feedback";
      case REST -> "valve at rest";
      case LOCK -> "valve at rest until restart";
    };
  }

  /** The freeze frame of a fault: what a person can use of the row. */
  void frame(JsonText json, double[] row) {
    json.name("frame").openList();
    for (int column = 0; column < LogFormat.COLUMN_COUNT; column++) {
      if (LogFormat.isWords(column)) {
        continue;
      }
      json.open();
      json.name("name").value(LogFormat.name(column));
      json.name("value").value(number(row[column]));
      json.close();
    }
    json.closeList();
  }

  private static String number(double value) {
    return Double.isNaN(value)
        ? "unknown"
        : value == Math.rint(value) && Math.abs(value) < 1e15
            ? Long.toString((long) value)
            : String.format(Locale.ROOT, "%.4g", value);
  }
}
