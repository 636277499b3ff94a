package org.boostwright.core.settings.file;

import java.util.Locale;
import org.boostwright.core.AnalogChannel;
import org.boostwright.core.settings.AnalogSensor;
import org.boostwright.core.settings.Settings;
import org.boostwright.core.settings.WiringNumbers;
import org.boostwright.core.settings.WiringSettings;
import org.boostwright.core.settings.WiringSettings.Clamp;
import org.boostwright.core.table.Curve;

/**
 * Do the circuit's values add up to a circuit that is safe and can be read? Made only where the
 * file has a {@code [wiring]} table; the project's own circuit is proved by simulation.
 */
final class WiringChecks {
  /** Share of a MOSFET's rating that may be used. */
  private static final double RATING_SHARE = 0.8;

  /** An open wire must have fallen past its threshold in this time, of the 40 ms to rest, s. */
  private static final double OPEN_WIRE_SECONDS = 0.019;

  /** The coil supply opens within this time after the last heartbeat, s. */
  private static final double HOLD_LOW_SECONDS = 0.030;

  private static final double HOLD_HIGH_SECONDS = 0.100;

  /** A pull-down above this loses against a pin that pulls up while the board boots, ohm. */
  private static final double PULL_DOWN_OHMS = 10e3;

  /** Slowest filter: 20 Hz, 1.6 ticks of lag; half the tick's rate is the fastest, Hz. */
  private static final double FILTER_LOW_HZ = 20.0;

  private static final double FILTER_HIGH_HZ = 100.0;

  private final Reading reading;
  private final Settings settings;
  private final WiringSettings wiring;
  private final WiringNumbers numbers;

  WiringChecks(Reading reading, Settings settings) {
    this.reading = reading;
    this.settings = settings;
    wiring = settings.wiring();
    numbers = new WiringNumbers(wiring, settings.valve().coilOhms());
  }

  void run() {
    boolean present = reading.stated().keySet().stream().anyMatch(key -> key.startsWith("wiring."));
    if (!present) {
      return;
    }
    AnalogSensor map = settings.sensors().channel(AnalogChannel.MAP);
    if (map != null && reading.sound("sensors.map.volts", "sensors.map.valid_volts")) {
      levels(map);
      openWire(map);
    }
    filter();
    coil();
    window();
    driver();
    heartbeat();
  }

  private void levels(AnalogSensor map) {
    Curve curve = map.calibration();
    double low = curve.axis().point(0);
    double top = curve.axis().point(curve.axis().size() - 1);
    double onSupply = numbers.shortToSupplyVolts();
    double converter = wiring.converterSupplyVolts();
    if (!(onSupply <= converter + 0.3)) {
      error(
          "wiring_over_range",
          "map_divider_bottom_ohms",
          "a signal wire on the sensor's supply puts %s on the converter, which bears %s; lower the"
              + " divider or the sensor's supply",
          volts(onSupply),
          volts(converter + 0.3));
    } else if (!(top <= onSupply)) {
      error(
          "wiring_divider",
          "sensor_supply_volts",
          "sensors.map is calibrated up to %s at the converter, but this supply and divider let"
              + " through %s at most; correct one of them",
          volts(top),
          volts(onSupply));
    } else if (!(onSupply > map.validHighVolts())) {
      error(
          "wiring_short_unseen",
          "sensor_supply_volts",
          "a signal wire on the sensor's supply reads %s and would pass for a pressure; the upper of"
              + " sensors.map.valid_volts, %s, must lie below it",
          volts(onSupply),
          volts(map.validHighVolts()));
    }
    double used = numbers.rangeUsedFraction(low, top);
    if (!(used >= 0.5)) {
      warning(
          "wiring_range_small",
          "converter_supply_volts",
          "the sensor uses %s of the converter's range, less than half; a smaller divider reads"
              + " pressure in finer steps",
          percent(used));
    }
    if (!(wiring.map().sensorSupplyVolts() >= 4.75 && wiring.map().sensorSupplyVolts() <= 5.25)) {
      warning(
          "wiring_sensor_rail",
          "sensor_supply_volts",
          "%s is outside 4.75 to 5.25 V, for which ratiometric sensors are made; put the sensor on"
              + " the 5 V sensor supply",
          volts(wiring.map().sensorSupplyVolts()));
    }
  }

  private void openWire(AnalogSensor map) {
    double seconds =
        numbers.openWireSeconds(numbers.shortToSupplyVolts() * 0.96, map.validLowVolts());
    if (!(seconds <= OPEN_WIRE_SECONDS)) {
      error(
          "wiring_open_wire_slow",
          wiring.map().buffered() ? "map_filter_nf" : "map_bias_ohms",
          "an open signal wire falls past sensors.map.valid_volts after %s, later than %s; lower the"
              + " bias or the filter, or put a follower before it",
          millis(seconds),
          millis(OPEN_WIRE_SECONDS));
    }
  }

  private void filter() {
    double hertz = numbers.filterCornerHz();
    if (!(hertz >= FILTER_LOW_HZ)) {
      warning(
          "wiring_filter_slow",
          "map_filter_nf",
          "the filter's corner is %s and its lag %s, more than 1.6 ticks; the loop sees pressure too"
              + " late: go to %s or more",
          hertz(hertz),
          millis(numbers.filterLagSeconds()),
          hertz(FILTER_LOW_HZ));
    } else if (!(hertz <= FILTER_HIGH_HZ)) {
      warning(
          "wiring_filter_fast",
          "map_filter_nf",
          "the filter's corner is %s, above half the tick's rate, %s; intake pulsation beats with the"
              + " tick: raise resistor or capacitor, with a follower before it",
          hertz(hertz),
          hertz(FILTER_HIGH_HZ));
    }
  }

  private void coil() {
    double weak = numbers.weakestCoilAmps();
    if (!(weak >= wiring.coil().pickUpAmps())) {
      warning(
          "wiring_coil_weak",
          "pick_up_a",
          "at 9 V and hot the coil gets %s, less than it needs to pick up, %s; a coil of lower"
              + " resistance, or no boost on a weak battery",
          amps(weak),
          amps(wiring.coil().pickUpAmps()));
    }
    if (!(wiring.coil().dropOutAmps() < wiring.coil().pickUpAmps())) {
      error(
          "wiring_drop_out",
          "drop_out_a",
          "%s is not below the pick-up current, %s; a valve drops out at less than it picks up",
          amps(wiring.coil().dropOutAmps()),
          amps(wiring.coil().pickUpAmps()));
    }
    double most = numbers.coilAmps(WiringNumbers.HIGHEST_VOLTS);
    double fuse = wiring.driver().fuseAmps();
    if (!(fuse <= 3.0 && most <= 0.75 * fuse)) {
      warning(
          "wiring_fuse",
          "coil_fuse_a",
          "the coil draws %s at 16 V and its fuse is %s; it should be 1.3 times the coil's current or"
              + " more, and 3 A at most",
          amps(most),
          amps(fuse));
    }
    double watts = numbers.coilWatts(WiringNumbers.HIGHEST_VOLTS);
    if (!(watts <= 12.0)) {
      warning(
          "wiring_coil_hot",
          "coil_fuse_a",
          "the coil turns %s into heat when on without a break at 16 V, more than 12 W; use a coil of"
              + " 22 ohm or more",
          number(watts) + " W");
    }
  }

  private void window() {
    double hz = settings.valve().frequencyHz();
    if (!reading.stated().containsKey("valve.window_low_pct")
        || !reading.stated().containsKey("valve.window_high_pct")) {
      return;
    }
    double on = settings.valve().windowLowDuty() / hz;
    double off = (1.0 - settings.valve().windowHighDuty()) / hz;
    if (!(Math.abs(numbers.onSeconds() - on) <= 1e-3
        && Math.abs(numbers.offSeconds() - off) <= 1e-3)) {
      warning(
          "wiring_window_shift",
          "clamp",
          "coil and clamp give t_on %s and t_off %s, so a window of %s to %s; the file's window means"
              + " %s and %s: repeat the bench, the circuit has changed or is not the one stated",
          millis(numbers.onSeconds()),
          millis(numbers.offSeconds()),
          percent(numbers.onSeconds() * hz),
          percent(1.0 - numbers.offSeconds() * hz),
          millis(on),
          millis(off));
    }
  }

  private void driver() {
    double limit = RATING_SHARE * wiring.driver().drainRatingVolts();
    double dump = numbers.drainVolts(wiring.driver().loadDumpVolts());
    if (wiring.coil().clamp() == Clamp.NONE) {
      error(
          "wiring_clamp_missing",
          "clamp",
          "nothing takes the coil's current when the switch opens, and it breaks down at %s; fit a"
              + " diode across the coil",
          volts(wiring.driver().drainRatingVolts()));
    } else if (!(dump <= limit)) {
      error(
          "wiring_clamp_high",
          "clamp_volts",
          "in a load dump of %s the drain reaches %s, above 80 %% of its rating, %s; a lower clamp or"
              + " a switch of a higher rating",
          volts(wiring.driver().loadDumpVolts()),
          volts(dump),
          volts(limit));
    }
    double threshold = wiring.driver().thresholdMaxVolts();
    if (!(threshold <= numbers.highestThresholdVolts())) {
      error(
          "wiring_mosfet_threshold",
          "mosfet_threshold_max_volts",
          "a pin of %s does not close a switch whose threshold may be %s; %s at most: use one"
              + " specified at 2.5 or 3.3 V",
          volts(wiring.driver().gateDriveVolts()),
          volts(threshold),
          volts(numbers.highestThresholdVolts()));
    }
    double pullDown = wiring.driver().pullDownOhms();
    if (!(pullDown > 0.0 && pullDown <= PULL_DOWN_OHMS)) {
      error(
          "wiring_pull_down",
          "pull_down_ohms",
          "%s; the gate needs a pull-down of at most 10000 ohm, or the coil may be energised while"
              + " the board boots",
          pullDown > 0.0 ? number(pullDown) + " ohm" : "there is none");
    }
    if (!(numbers.switchWatts() <= 0.5)) {
      warning(
          "wiring_switch_hot",
          "mosfet_on_ohms",
          "the switch turns %s into heat when on without a break, more than 0.5 W; use one of lower"
              + " resistance",
          number(numbers.switchWatts()) + " W");
    }
  }

  private void heartbeat() {
    double shortest = numbers.shortestHoldSeconds();
    double longest = numbers.longestHoldSeconds();
    if (!(shortest >= HOLD_LOW_SECONDS && longest <= HOLD_HIGH_SECONDS)) {
      error(
          "wiring_heartbeat_hold",
          "heartbeat_reservoir_nf",
          "without heartbeat the coil supply opens after %s to %s over tolerances and temperature; it"
              + " must be %s to %s: change bleed resistor or reservoir",
          millis(shortest),
          millis(longest),
          millis(HOLD_LOW_SECONDS),
          millis(HOLD_HIGH_SECONDS));
    }
  }

  private void error(String code, String key, String format, Object... values) {
    say(Severity.ERROR, code, key, format, values);
  }

  private void warning(String code, String key, String format, Object... values) {
    say(Severity.WARNING, code, key, format, values);
  }

  private void say(Severity severity, String code, String key, String format, Object... values) {
    if (reading.sound("wiring." + key)) {
      reading.atKey(severity, code, "wiring." + key, String.format(Locale.ROOT, format, values));
    }
  }

  private static String volts(double volts) {
    return number(volts) + " V";
  }

  private static String amps(double amps) {
    return number(amps) + " A";
  }

  private static String hertz(double hertz) {
    return number(hertz) + " Hz";
  }

  private static String millis(double seconds) {
    return Double.isInfinite(seconds) ? "never" : number(1e3 * seconds) + " ms";
  }

  private static String percent(double fraction) {
    return number(100.0 * fraction) + " %";
  }

  private static String number(double value) {
    return Words.number(value);
  }
}
