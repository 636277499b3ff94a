package org.boostwright.rig.replay;

import java.util.ArrayList;
import java.util.List;
import org.boostwright.core.AnalogChannel;
import org.boostwright.core.Controller;
import org.boostwright.core.settings.AnalogSensor;
import org.boostwright.core.settings.LimitSettings;
import org.boostwright.core.settings.OptionalWires;
import org.boostwright.core.settings.SensorSettings;
import org.boostwright.core.settings.Settings;
import org.boostwright.rig.replay.csv.LogRefusedException;
import org.boostwright.rig.replay.csv.LogSignal;
import org.boostwright.rig.replay.csv.RecordedLog;
import org.boostwright.rig.replay.csv.SignalTrace;
import org.jspecify.annotations.Nullable;

/**
 * The settings a log is replayed with: those of the car, with each sensor as coarse and as slow as
 * its recording, and without the inputs the log does not hold.
 *
 * @param settings for the controller
 * @param traces what is fed into each channel, by ordinal; null where the channel is not fitted
 * @param notes what the recording cannot show, in words
 */
record ReplaySettings(Settings settings, @Nullable SignalTrace[] traces, List<String> notes) {

  private static final OptionalWires NOTHING_WIRED =
      new OptionalWires(false, false, false, false, false);

  private static final double TICK_MILLIS = Controller.TICK_NANOS * 1e-6;

  /** A recording that is read anew less often than this hides what happens in between, ms. */
  private static final double SLOW_MILLIS = 50.0;

  /** The stale watch allows three refresh times; a longest one this many times stays below it. */
  private static final double STALE_MARGIN = 2.5;

  /** The overboost limit stays this share of the sensor's span below its top, as in a file. */
  private static final double MARGIN_OF_SPAN = 0.1;

  static ReplaySettings derive(Settings car, RecordedLog log, ReplayOptions options)
      throws LogRefusedException {
    List<String> notes = new ArrayList<>();
    @Nullable SignalTrace[] traces = new SignalTrace[AnalogChannel.COUNT];
    @Nullable AnalogSensor[] sensors = new AnalogSensor[AnalogChannel.COUNT];
    log.require(LogSignal.ENGINE_SPEED);
    AnalogChannel demand = options.demand() == null ? car.demand() : options.demand();
    for (AnalogChannel channel : AnalogChannel.values()) {
      int i = channel.ordinal();
      AnalogSensor sensor = car.sensors().channel(channel);
      SignalTrace trace = source(channel, log, demand);
      if (trace == null || sensor == null) {
        if (sensor != null) {
          notes.add(channel.id() + " is not in the log: replayed as not fitted");
        }
        continue;
      }
      traces[i] = trace;
      sensors[i] = asRecorded(channel, sensor, trace, notes);
    }
    if (!car.optional().equals(NOTHING_WIRED)) {
      notes.add("switches and feedback wires are not in the log: replayed as not wired");
    }
    Settings settings =
        new Settings(
            car.car(),
            car.units(),
            sensors(car.sensors(), sensors, options),
            car.valve(),
            car.target(),
            car.baseDuty(),
            limits(car, options),
            car.feedback(),
            car.spool(),
            NOTHING_WIRED,
            car.wiring(),
            AnalogChannel.THROTTLE,
            car.actuator(),
            car.exhaustHelp(),
            car.pins(),
            car.converter());
    return new ReplaySettings(settings, traces, notes);
  }

  private static @Nullable SignalTrace source(
      AnalogChannel channel, RecordedLog log, AnalogChannel demand) throws LogRefusedException {
    return switch (channel) {
      case MAP -> log.require(LogSignal.MAP);
      case THROTTLE -> log.require(LogSignal.of(demand));
      // As the demand it stands in the throttle's place; the two cannot be compared then.
      case PEDAL -> demand == AnalogChannel.PEDAL ? null : log.trace(LogSignal.PEDAL);
      default -> log.trace(LogSignal.of(channel));
    };
  }

  private static AnalogSensor asRecorded(
      AnalogChannel channel, AnalogSensor sensor, SignalTrace trace, List<String> notes) {
    InverseCalibration inverse = new InverseCalibration(sensor);
    double step = trace.resolution().size();
    double stepVolts = Double.isNaN(step) ? 0.0 : inverse.voltsPerStep(step);
    double refresh =
        Math.max(trace.refresh().millis(), trace.refresh().longestMillis() / STALE_MARGIN);
    boolean asFine = stepVolts <= sensor.stepVolts();
    boolean asFast = refresh <= Math.max(sensor.refreshMillis(), TICK_MILLIS);
    double noise = asFine && asFast ? sensor.noiseVolts() : 0.0;
    if (!Double.isNaN(trace.noise())) {
      noise = inverse.voltsPerStep(trace.noise());
    }
    double rate = sensor.maxRatePerSecond();
    if (Double.isFinite(rate) && !Double.isNaN(step)) {
      rate += step / (Math.max(refresh, TICK_MILLIS) * 1e-3);
    }
    AnalogSensor recorded =
        new AnalogSensor(
            sensor.calibration(),
            sensor.validLowVolts(),
            sensor.validHighVolts(),
            Math.max(stepVolts, sensor.stepVolts()),
            noise,
            Math.max(refresh, sensor.refreshMillis()),
            rate);
    note(channel, sensor, recorded, notes);
    return recorded;
  }

  private static void note(
      AnalogChannel channel, AnalogSensor sensor, AnalogSensor recorded, List<String> notes) {
    if (sensor.frozenIsWatched() && !recorded.frozenIsWatched()) {
      String why = ": too coarse or too slow a recording to tell a frozen reading";
      notes.add(channel.id() + why + (channel == AnalogChannel.MAP ? " or noise" : ""));
    }
    if (channel == AnalogChannel.MAP && recorded.refreshMillis() > SLOW_MILLIS) {
      notes.add(
          String.format(
              java.util.Locale.ROOT,
              "map: read anew every %.0f ms; jumps, sudden falls and overboost shorter than that "
                  + "are not seen",
              recorded.refreshMillis()));
    }
  }

  private static SensorSettings sensors(
      SensorSettings car, @Nullable AnalogSensor[] channels, ReplayOptions options) {
    double life = options.lifeChangeKpa();
    double ambient = options.ambientKpaAbs();
    return new SensorSettings(
        channels,
        options.mapLocation() == null ? car.mapLocation() : options.mapLocation(),
        Double.isNaN(life) ? car.lifeChangeKpa() : life,
        car.mapNoiseKpa(),
        Double.isNaN(ambient) ? car.ambientKpaAbs() : ambient);
  }

  private static LimitSettings limits(Settings car, ReplayOptions options) {
    LimitSettings limits = car.limits();
    double cutoff = options.cutoffKpaAbs();
    if (Double.isNaN(cutoff)) {
      return limits;
    }
    AnalogSensor map = car.sensors().channel(AnalogChannel.MAP);
    double highest = map == null ? 0.0 : highestLimit(map);
    if (!(cutoff > 100.0 && cutoff <= highest)) {
      throw new IllegalArgumentException(
          "an overboost limit of "
              + cutoff
              + " kPa; it must lie above 100 kPa and at most at "
              + highest
              + " kPa, the top of the pressure sensor less 10 % of its span");
    }
    return limits.withCutoffKpaAbs(cutoff);
  }

  private static double highestLimit(AnalogSensor map) {
    double[] values = map.calibration().values();
    double first = values[0];
    double last = values[values.length - 1];
    return Math.max(first, last) - MARGIN_OF_SPAN * Math.abs(last - first);
  }
}
