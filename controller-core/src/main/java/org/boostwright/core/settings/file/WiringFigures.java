package org.boostwright.core.settings.file;

import java.util.ArrayList;
import java.util.List;
import org.boostwright.core.AnalogChannel;
import org.boostwright.core.Controller;
import org.boostwright.core.settings.AnalogSensor;
import org.boostwright.core.settings.ConverterSettings;
import org.boostwright.core.settings.ScanPlan;
import org.boostwright.core.settings.Settings;
import org.boostwright.core.settings.ValveSettings;
import org.boostwright.core.settings.WiringNumbers;
import org.boostwright.core.table.Axis;

/** Works out what the settings mean at the bench: currents, steps, times, frequencies. */
final class WiringFigures {
  /** Charging voltage of a running engine, V (common practice, no source). */
  private static final double RUNNING_VOLTS = 14.0;

  private final List<CheckReport.Figure> figures = new ArrayList<>();

  private WiringFigures() {}

  static List<CheckReport.Figure> of(Settings settings) {
    WiringFigures all = new WiringFigures();
    all.pressureSensor(settings);
    all.coil(settings.valve());
    all.circuit(settings);
    all.window(settings.valve());
    all.pulses(settings);
    all.converter(settings);
    return List.copyOf(all.figures);
  }

  private void pressureSensor(Settings settings) {
    AnalogSensor map = settings.sensors().channel(AnalogChannel.MAP);
    if (map == null) {
      return;
    }
    double kpaPerVolt = SensorReader.steepest(map.calibration());
    add("map.step_kpa", map.stepVolts() * kpaPerVolt, "kPa", "one step of the converter");
    add(
        "map.noise_steps",
        map.noiseVolts() / map.stepVolts(),
        "steps",
        map.frozenIsWatched()
            ? "declared noise; above 1, so a frozen reading is detected"
            : "declared noise; not above 1 or read too slowly: a frozen reading is NOT detected");
    add(
        "limits.cutoff_highest_kpa_abs",
        CrossChecks.highestCutoffKpaAbs(map),
        "kPa absolute",
        "highest overboost limit this sensor can watch: its top less 10 % of its span");
  }

  private void coil(ValveSettings valve) {
    double amps = RUNNING_VOLTS / valve.coilOhms();
    add("coil.current_a", amps, "A", "coil on at 14 V");
    add("coil.power_w", amps * RUNNING_VOLTS, "W", "coil on without a break at 14 V");
  }

  /** What the circuit of {@code [wiring]}, or the project's own, makes of sensor, coil and beat. */
  private void circuit(Settings settings) {
    WiringNumbers n = new WiringNumbers(settings.wiring(), settings.valve().coilOhms());
    AnalogSensor map = settings.sensors().channel(AnalogChannel.MAP);
    if (map != null) {
      Axis volts = map.calibration().axis();
      double used = n.rangeUsedFraction(volts.point(0), volts.point(volts.size() - 1));
      add("wiring.range_used_pct", 100.0 * used, "%", "share of the converter's range in use");
      add(
          "wiring.open_wire_ms",
          1e3 * n.openWireSeconds(n.shortToSupplyVolts() * 0.96, map.validLowVolts()),
          "ms",
          "an open pressure wire reads as open after this; at most 19 ms");
    }
    add(
        "wiring.filter_hz",
        n.filterCornerHz(),
        "Hz",
        "corner of the pressure filter, 20 to 100 Hz");
    add(
        "wiring.filter_lag_ticks",
        n.filterLagSeconds() * 1e9 / Controller.TICK_NANOS,
        "ticks",
        "lag of the pressure filter");
    add("wiring.coil_hot_9v_a", n.weakestCoilAmps(), "A", "coil at 9 V and 100 degC");
    add("wiring.drop_out_ms", 1e3 * n.dropOutSeconds(), "ms", "coil current down to drop-out");
    add("wiring.t_on_ms", 1e3 * n.onSeconds(), "ms", "valve on, from coil and spool travel");
    add("wiring.t_off_ms", 1e3 * n.offSeconds(), "ms", "valve off, from clamp and spool travel");
    add(
        "wiring.window_low_shift_pct",
        100.0 * (n.onSeconds() * settings.valve().frequencyHz() - settings.valve().windowLowDuty()),
        "%",
        "lower edge of the window from the circuit, less the stated one");
    add(
        "wiring.window_high_shift_pct",
        100.0
            * (1.0
                - n.offSeconds() * settings.valve().frequencyHz()
                - settings.valve().windowHighDuty()),
        "%",
        "upper edge of the window from the circuit, less the stated one");
    add(
        "wiring.drain_load_dump_v",
        n.drainVolts(settings.wiring().driver().loadDumpVolts()),
        "V",
        "drain of the low-side switch in a load dump; at most 80 % of its rating");
    add(
        "wiring.hold_shortest_ms",
        1e3 * n.shortestHoldSeconds(),
        "ms",
        "coil supply opens, earliest");
    add("wiring.hold_longest_ms", 1e3 * n.longestHoldSeconds(), "ms", "coil supply opens, latest");
  }

  private void window(ValveSettings valve) {
    double periodMs = 1e3 / valve.frequencyHz();
    double onMs = valve.windowLowDuty() * periodMs;
    double offMs = (1.0 - valve.windowHighDuty()) * periodMs;
    add("valve.period_ms", periodMs, "ms", "one period of the valve's PWM");
    add(
        "valve.period_ticks",
        periodMs / (Controller.TICK_NANOS / 1e6),
        "ticks",
        "control ticks in one period; a new duty waits for the next period");
    add("valve.t_on_ms", onMs, "ms", "shortest pulse that vents, from the window's lower edge");
    add("valve.t_off_ms", offMs, "ms", "shortest break that supplies, from its upper edge");
    add(
        "valve.window_width_pct",
        100.0 * (valve.windowHighDuty() - valve.windowLowDuty()),
        "%",
        "usable share of the duty at this frequency");
    if (onMs + offMs > 0.0) {
      add("valve.highest_hz", 1e3 / (onMs + offMs), "Hz", "no window is left at this frequency");
    }
  }

  private void pulses(Settings settings) {
    add(
        "tach.redline_hz",
        settings.car().redlineRpm() / 60.0 * settings.car().pulsesPerRevolution(),
        "Hz",
        "engine-speed pulses at the redline");
    if (settings.car().roadPulsesPerKm() > 0.0) {
      add(
          "road.hz_at_200_kmh",
          settings.car().roadPulsesPerKm() * 200.0 / 3600.0,
          "Hz",
          "road-speed pulses at 200 km/h");
    }
  }

  private void converter(Settings settings) {
    ConverterSettings converter = settings.converter();
    if (converter == null) {
      return;
    }
    ScanPlan plan = ScanPlan.of(converter);
    add(
        "converter.conversions_per_tick",
        plan.conversionsPerPass(),
        "",
        "pressure and as many others as a tick has time for");
    add(
        "converter.conversion_ms",
        plan.convertNanos() * 1e-6,
        "ms",
        "longest time of one conversion with its transfers");
    add(
        "converter.busy_ms",
        plan.passNanos() * 1e-6,
        "ms",
        "of each tick of " + Words.number(ScanPlan.PASS_NANOS * 1e-6) + " ms");
    for (AnalogChannel channel : AnalogChannel.values()) {
      if (converter.input(channel) != ConverterSettings.NOT_WIRED) {
        add(
            "converter." + channel.id() + "_every_ms",
            plan.periodMillis(channel),
            "ms",
            "a sample three times this old is not used");
      }
    }
    AnalogSensor map = settings.sensors().channel(AnalogChannel.MAP);
    if (converter.kind() == ConverterSettings.Kind.ADS1115 && map != null) {
      double volts = map.calibration().axis().point(map.calibration().axis().size() - 1);
      add(
          "converter.supply_error_kpa",
          0.01 * volts * SensorReader.steepest(map.calibration()),
          "kPa",
          "error at the sensor's top for each percent its supply is off: this converter has its"
              + " own reference");
    }
  }

  private void add(String id, double value, String unit, String meaning) {
    figures.add(new CheckReport.Figure(id, value, unit, meaning));
  }
}
