package org.boostwright.rig.calibrate;

import java.util.ArrayList;
import java.util.Arrays;
import java.util.List;
import java.util.Locale;
import org.boostwright.core.AnalogChannel;
import org.boostwright.core.record.LogFormat;
import org.boostwright.core.settings.AnalogSensor;
import org.boostwright.core.settings.Settings;

/**
 * Calibrates from the raw volts and periods of a recording. Limits are own choices: a reading
 * within the small one is right, beyond the large one it is a slip or a wrong sensor and not to be
 * written away.
 */
public final class Calibration {
  private static final double[] PULSES = {0.5, 1, 2, 3, 4};
  private static final double PULSE_TOLERANCE = 0.12;
  private static final double LEAST_SPAN_VOLTS = 1.0;
  private static final double PLATEAU_SECONDS = 0.5;
  private static final double PLATEAU_VOLTS = 0.03;
  private static final int VISITS = 2;
  private static final double RIGHT_SHARE = 0.01;
  private static final double RIGHT_KPA = 1.0;
  private static final double MOST_KPA = 6.0;
  private static final double RIGHT_C = 3.0;
  private static final double MOST_C = 8.0;
  private static final double RIGHT_VOLTS = 0.15;
  private static final double MOST_SHARE = 0.10;
  private static final double ATMOSPHERE_KPA = 101.325;
  private static final int RPM = LogFormat.column("engine_rpm");
  private static final int PERIOD = LogFormat.column("engine_period_ns");

  private final Settings settings;
  private final List<double[]> rows;

  /**
   * @param settings settings as they are
   * @param rows rows of {@link LogFormat}
   */
  public Calibration(Settings settings, List<double[]> rows) {
    this.settings = settings;
    this.rows = List.copyOf(rows);
  }

  private boolean stopped(double[] row) {
    return !(row[RPM] > 0.0);
  }

  /**
   * Closed and full throttle: the engine off, the pedal let go and pushed to the floor at least
   * twice.
   */
  public Calibrated throttle() {
    String what = "throttle";
    int column = LogFormat.column("throttle_raw_v");
    List<Double> plateaus = plateaus(column);
    if (plateaus.isEmpty()) {
      return Calibrated.refused(
          what,
          "The throttle was never held still for half a second with the engine off.",
          "let it go, push it to the floor, hold each for a second, twice");
    }
    double low = plateaus.stream().mapToDouble(v -> v).min().orElse(0.0);
    double high = plateaus.stream().mapToDouble(v -> v).max().orElse(0.0);
    if (!(high - low >= LEAST_SPAN_VOLTS)) {
      return Calibrated.refused(
          what,
          String.format(
              Locale.ROOT,
              "The throttle moved only %.2f V, from %.2f to %.2f.",
              high - low,
              low,
              high),
          "push it to the floor; if it was, this is not the throttle's wire");
    }
    double near = 0.02 * (high - low);
    long atLow = plateaus.stream().filter(v -> v <= low + near).count();
    long atHigh = plateaus.stream().filter(v -> v >= high - near).count();
    if (atLow < VISITS || atHigh < VISITS) {
      return Calibrated.refused(
          what,
          String.format(
              Locale.ROOT,
              "Closed (%d times) and full throttle (%d times) must agree twice each.",
              atLow,
              atHigh),
          "let it go and push it to the floor once more, all the way");
    }
    boolean first = plateaus.get(0) < 0.5 * (low + high);
    List<Double> volts =
        first ? List.of(round(low), round(high)) : List.of(round(high), round(low));
    AnalogSensor sensor = settings.sensors().channel(AnalogChannel.THROTTLE);
    String text =
        String.format(Locale.ROOT, "closed %.3f V, full %.3f V", volts.get(0), volts.get(1));
    double tolerance = RIGHT_SHARE * (high - low);
    if (sensor != null
        && Math.abs(end(sensor, false) - volts.get(0)) <= tolerance
        && Math.abs(end(sensor, true) - volts.get(1)) <= tolerance) {
      return Calibrated.right(what, text);
    }
    return Calibrated.changed(what, text, "sensors.throttle.volts", volts);
  }

  /** Volts of one end of a sensor's calibration. */
  private static double end(AnalogSensor sensor, boolean highest) {
    int last = sensor.calibration().axis().size() - 1;
    boolean rises = sensor.calibration().value(last) > sensor.calibration().value(0);
    return sensor.calibration().axis().point(rises == highest ? last : 0);
  }

  /** Means of the stretches in which a channel stood still with the engine off, in order. */
  private List<Double> plateaus(int column) {
    List<Double> found = new ArrayList<>();
    int from = -1;
    double low = 0.0;
    double high = 0.0;
    for (int i = 0; i <= rows.size(); i++) {
      double volts = i < rows.size() && stopped(rows.get(i)) ? rows.get(i)[column] : Double.NaN;
      boolean still = from >= 0 && Math.max(high, volts) - Math.min(low, volts) <= PLATEAU_VOLTS;
      if (still) {
        low = Math.min(low, volts);
        high = Math.max(high, volts);
        continue;
      }
      if (from >= 0 && seconds(from, i - 1) >= PLATEAU_SECONDS) {
        found.add(mean(column, from, i));
      }
      from = Double.isNaN(volts) ? -1 : i;
      low = volts;
      high = volts;
    }
    return found;
  }

  private double seconds(int from, int to) {
    return (rows.get(to)[LogFormat.TIME_NS] - rows.get(from)[LogFormat.TIME_NS]) * 1e-9;
  }

  private double mean(int column, int from, int to) {
    double sum = 0.0;
    for (int i = from; i < to; i++) {
      sum += rows.get(i)[column];
    }
    return sum / (to - from);
  }

  /**
   * Pulses per revolution.
   *
   * @param shownRpm what the tachometer showed at idle, 1/min
   */
  public Calibrated pulses(double shownRpm) {
    String what = "engine speed";
    double[] periods =
        rows.stream().mapToDouble(r -> r[PERIOD]).filter(p -> p > 0.0).sorted().toArray();
    if (periods.length == 0) {
      return Calibrated.refused(
          what, "There are no pulses in this recording.", "record the engine at idle");
    }
    double perMinute = 60e9 / periods[periods.length / 2];
    double found = perMinute / shownRpm;
    for (double pulses : PULSES) {
      if (Math.abs(found / pulses - 1.0) <= PULSE_TOLERANCE) {
        String text =
            String.format(
                Locale.ROOT,
                "%.0f pulses a minute at %.0f rpm: %s per revolution",
                perMinute,
                shownRpm,
                pulses == 0.5 ? "0.5" : String.valueOf((int) pulses));
        return pulses == settings.car().pulsesPerRevolution()
            ? Calibrated.right(what, text)
            : Calibrated.changed(what, text, "car.pulses_per_revolution", List.of(pulses));
      }
    }
    return Calibrated.refused(
        what,
        String.format(
            Locale.ROOT,
            "%.0f pulses a minute at %.0f rpm would be %.2f per revolution; there are 0.5, 1, 2, 3"
                + " and 4.",
            perMinute,
            shownRpm,
            found),
        "read the tachometer while the engine idles steadily, and look for noise on the wire");
  }

  /**
   * The pressure sensor against ambient, engine off.
   *
   * @param kpaAbs what the barometer shows here, not reduced to sea level, kPa absolute
   */
  public Calibrated ambient(double kpaAbs) {
    return pressure("pressure sensor against ambient", kpaAbs);
  }

  /**
   * The pressure sensor against a gauge, engine off, on the last steady pressure of the recording.
   *
   * @param kpaGauge what the gauge shows, kPa gauge
   * @param ambientKpaAbs ambient pressure, kPa absolute
   */
  public Calibrated gauge(double kpaGauge, double ambientKpaAbs) {
    return pressure("pressure sensor against a gauge", kpaGauge + ambientKpaAbs);
  }

  private Calibrated pressure(String what, double kpaAbs) {
    AnalogSensor sensor = settings.sensors().channel(AnalogChannel.MAP);
    List<Double> steady = plateaus(LogFormat.column("map_raw_v"));
    if (sensor == null || steady.isEmpty()) {
      return Calibrated.refused(
          what, "The pressure was never steady with the engine off.", "record it engine off");
    }
    double reads = sensor.calibration().at(steady.get(steady.size() - 1));
    double off = kpaAbs - reads;
    String text =
        String.format(Locale.ROOT, "reads %.1f kPa absolute where %.1f are", reads, kpaAbs);
    if (Math.abs(off) <= RIGHT_KPA) {
      return Calibrated.right(what, text);
    }
    if (!(Math.abs(off) <= MOST_KPA)) {
      return Calibrated.refused(
          what, "It " + text + "." + slip(off, kpaAbs), "check unit and place");
    }
    double[] values = sensor.calibration().values();
    List<Double> moved = Arrays.stream(values).mapToObj(v -> round(v + off)).toList();
    return Calibrated.changed(what, text, "sensors.map.pressure_kpa_abs", moved);
  }

  private static String slip(double off, double typed) {
    if (Math.abs(Math.abs(off) - ATMOSPHERE_KPA) < 8.0) {
      return " About 101 kPa off: gauge and absolute were mixed up.";
    }
    if (typed > 800.0 && typed < 1100.0) {
      return " That looks like millibar: divide by ten.";
    }
    if (typed > 12.0 && typed < 16.0) {
      return " That looks like psi: one psi is 6.895 kPa.";
    }
    if (typed > 22.0 && typed < 32.0) {
      return " That looks like inches of mercury: one is 3.386 kPa.";
    }
    return " That is no error of a sound sensor: a pressure reduced to sea level, or a wrong"
        + " sensor.";
  }

  /**
   * The thermistor against the air, engine cold.
   *
   * @param airC what the thermometer shows, degC
   */
  public Calibrated air(double airC) {
    String what = "air temperature";
    AnalogSensor sensor = settings.sensors().channel(AnalogChannel.INTAKE_AIR);
    if (sensor == null) {
      return Calibrated.refused(what, "There is no [sensors.intake_air].", "");
    }
    double volts = median(LogFormat.column("intake_air_raw_v"));
    double reads = sensor.calibration().at(volts);
    String text = String.format(Locale.ROOT, "reads %.1f degC where %.1f are", reads, airC);
    if (Math.abs(reads - airC) <= RIGHT_C) {
      return Calibrated.right(what, text);
    }
    if (!(Math.abs(reads - airC) <= MOST_C)) {
      String fahrenheit =
          Math.abs((airC - 32.0) / 1.8 - reads) <= RIGHT_C ? " That looks like Fahrenheit." : "";
      return Calibrated.refused(
          what,
          "It " + text + "." + fahrenheit,
          "let the engine cool down; else the curve is another sensor's: enter its table");
    }
    double[] values = sensor.calibration().values();
    List<Double> moved = Arrays.stream(values).mapToObj(v -> round(v + airC - reads)).toList();
    return Calibrated.changed(what, text, "sensors.intake_air.temperature_c", moved);
  }

  /**
   * The supply's divider against a multimeter.
   *
   * @param volts what the multimeter shows, V
   */
  public Calibrated supply(double volts) {
    String what = "supply voltage";
    AnalogSensor sensor = settings.sensors().channel(AnalogChannel.SUPPLY);
    if (sensor == null) {
      return Calibrated.refused(what, "There is no [sensors.supply].", "");
    }
    double reads = sensor.calibration().at(median(LogFormat.column("supply_raw_v")));
    String text = String.format(Locale.ROOT, "reads %.2f V where %.2f are", reads, volts);
    if (Math.abs(reads - volts) <= RIGHT_VOLTS) {
      return Calibrated.right(what, text);
    }
    if (!(Math.abs(volts / reads - 1.0) <= MOST_SHARE)) {
      return Calibrated.refused(
          what, "It " + text + ".", "measure at the same place; else the divider is another");
    }
    double[] values = sensor.calibration().values();
    List<Double> scaled = Arrays.stream(values).mapToObj(v -> round(v * volts / reads)).toList();
    return Calibrated.changed(what, text, "sensors.supply.supply_volts", scaled);
  }

  private double median(int column) {
    double[] all = rows.stream().mapToDouble(r -> r[column]).sorted().toArray();
    return all.length == 0 ? Double.NaN : all[all.length / 2];
  }

  private static double round(double value) {
    return Math.rint(1000.0 * value) / 1000.0;
  }
}
