package org.boostwright.rig.replay;

import java.util.ArrayList;
import java.util.List;
import org.boostwright.core.AnalogChannel;
import org.boostwright.core.Controller;
import org.boostwright.core.Inputs;
import org.boostwright.core.Outputs;
import org.boostwright.core.settings.AnalogSensor;
import org.boostwright.core.settings.CarSettings;
import org.boostwright.core.settings.Settings;
import org.boostwright.rig.replay.csv.LogRefusedException;
import org.boostwright.rig.replay.csv.LogSignal;
import org.boostwright.rig.replay.csv.RecordedLog;
import org.boostwright.rig.replay.csv.SignalTrace;

/**
 * Feeds a recorded log to the controller in stepped time, 200 ticks per second.
 *
 * <p>What the controller decides does not change the recording: the replay shows what it would have
 * believed and asked for, not what the car would then have done. The replay starts where every
 * signal has been read once and begins again after each pause, see {@link GapRule}.
 */
public final class TraceReplay {
  private static final double SECONDS_PER_MINUTE = 60.0;
  private static final double SECONDS_PER_HOUR = 3600.0;

  private final RecordedLog log;
  private final ReplayOptions options;
  private final ReplaySettings derived;
  private final List<ChannelFeed> channels = new ArrayList<>();
  private final PulseFeed engine;
  private final PulseFeed road;
  private final TraceObserver observer;
  private final List<Stretch> stretches;
  private final Inputs inputs = new Inputs();
  private final Outputs outputs = new Outputs();
  private Controller controller;
  private long tick;

  private TraceReplay(Settings car, RecordedLog log, ReplayOptions options)
      throws LogRefusedException {
    this.log = log;
    this.options = options;
    derived = ReplaySettings.derive(car, log, options);
    controller = new Controller(derived.settings());
    List<SignalTrace> fed = new ArrayList<>();
    SignalTrace engineSpeed = log.require(LogSignal.ENGINE_SPEED);
    fed.add(engineSpeed);
    for (AnalogChannel channel : AnalogChannel.values()) {
      SignalTrace trace = derived.traces()[channel.ordinal()];
      AnalogSensor sensor = derived.settings().sensors().channel(channel);
      List<TraceSplice> faults =
          options.splices().stream().filter(s -> s.channel() == channel).toList();
      if (trace != null && sensor != null) {
        fed.add(trace);
        channels.add(new ChannelFeed(channel, sensor, trace, log, faults));
      } else if (!faults.isEmpty()) {
        throw new IllegalArgumentException(channel.id() + " is not fitted in this replay");
      }
    }
    CarSettings settings = derived.settings().car();
    engine = new PulseFeed(engineSpeed, log, settings.pulsesPerRevolution() / SECONDS_PER_MINUTE);
    road =
        new PulseFeed(
            log.trace(LogSignal.ROAD_SPEED), log, settings.roadPulsesPerKm() / SECONDS_PER_HOUR);
    stretches = stretches(fed);
    long expected = 0;
    for (Stretch stretch : stretches) {
      expected +=
          (log.nanos(stretch.end() - 1) - log.nanos(stretch.start())) / Controller.TICK_NANOS + 1;
    }
    observer = new TraceObserver(new TraceSeries(expected, options.plotPoints()));
  }

  private List<Stretch> stretches(List<SignalTrace> fed) throws LogRefusedException {
    List<Stretch> found = Stretch.of(log, fed);
    if (found.isEmpty()) {
      throw new LogRefusedException(
          log.name(), "no part of the log holds every signal that is needed; record a longer one");
    }
    if (options.gapRule() == GapRule.STALE_DATA) {
      Stretch first = found.get(0);
      return List.of(new Stretch(first.first(), first.start(), log.rows()));
    }
    return found;
  }

  /**
   * Replays a log.
   *
   * @param car settings of the car it is replayed with
   */
  public static TraceResult run(Settings car, RecordedLog log, ReplayOptions options)
      throws LogRefusedException {
    return new TraceReplay(car, log, options).run();
  }

  private TraceResult run() {
    int replayed = 0;
    for (int i = 0; i < stretches.size(); i++) {
      Stretch stretch = stretches.get(i);
      if (i > 0) {
        controller = new Controller(derived.settings());
        inputs.clear();
      }
      replay(stretch, i + 1 == stretches.size());
      replayed += stretch.end() - stretch.start();
    }
    return new TraceResult(
        log,
        derived.settings(),
        notes(),
        fedChannels(),
        replayed,
        log.rows() - replayed,
        stretches.size() - 1,
        observer.ticks(),
        observer.stateSeconds(),
        observer.events(false),
        observer.events(true),
        observer.overboosts(),
        observer.judged(),
        observer.outsideTable(),
        observer.peakMapKpaAbs(),
        observer.peakDutyFraction(),
        spliced(),
        observer.series());
  }

  private void replay(Stretch stretch, boolean last) {
    inputs.keyOn = true;
    inputs.permit = true;
    inputs.coilFeed = true;
    inputs.highBoost = true;
    for (ChannelFeed channel : channels) {
      channel.begin(stretch.first(), stretch.start(), stretch.end());
    }
    int pulsesEnd = beginPulses(stretch.first(), stretch.start(), stretch.end(), true);
    int row = stretch.start();
    long end = log.nanos(stretch.end() - 1);
    long now = log.nanos(row);
    while (now <= end) {
      while (row + 1 < stretch.end() && log.nanos(row + 1) <= now) {
        row++;
      }
      if (row >= pulsesEnd) {
        pulsesEnd = beginPulses(row, row, stretch.end(), false);
      } else if (row == pulsesEnd - 1 && pulsesEnd < stretch.end()) {
        engine.silence();
        road.silence();
      }
      step(now, row);
      now += Controller.TICK_NANOS;
    }
    observer.endOfRun((now - Controller.TICK_NANOS) * 1e-9, outputs, controller, last);
  }

  /** Begins the pulses at a row; they end at the next pause. Returns the row after their last. */
  private int beginPulses(int first, int start, int end, boolean forget) {
    int stop = end;
    for (var pause : log.pauses()) {
      if (pause.row() > start && pause.row() < stop) {
        stop = pause.row();
      }
    }
    engine.begin(first, start, stop, forget);
    road.begin(first, start, stop, forget);
    return stop;
  }

  private void step(long now, int row) {
    for (ChannelFeed channel : channels) {
      channel.feed(now, tick, inputs);
    }
    engine.feed(now);
    road.feed(now);
    inputs.engineSeen = engine.seen();
    inputs.enginePulseNanos = engine.pulseNanos();
    inputs.enginePeriodNanos = engine.periodNanos();
    inputs.roadSeen = road.seen();
    inputs.roadPulseNanos = road.pulseNanos();
    inputs.roadPeriodNanos = road.periodNanos();
    controller.step(now, inputs, outputs);
    observer.tick(now * 1e-9, log.line(row), outputs, controller);
    tick++;
  }

  private List<String> notes() {
    List<String> notes = new ArrayList<>(derived.notes());
    if (!observer.overboosts().isEmpty()) {
      notes.add(
          "the recorded pressure does not follow the replay: after an overboost it can stay up, and "
              + "valve_no_effect then says nothing about the valve");
    }
    return notes;
  }

  private List<FedChannel> fedChannels() {
    List<FedChannel> fed = new ArrayList<>();
    for (ChannelFeed feed : channels) {
      AnalogChannel channel = feed.channel();
      SignalTrace trace = derived.traces()[channel.ordinal()];
      AnalogSensor sensor = derived.settings().sensors().channel(channel);
      if (trace != null && sensor != null) {
        fed.add(new FedChannel(channel, trace.header(), sensor, feed.samples(), feed.clipped()));
      }
    }
    return fed;
  }

  private List<SplicedFault> spliced() {
    List<SplicedFault> faults = new ArrayList<>();
    for (ChannelFeed feed : channels) {
      long[] ticks = feed.splicedTicks();
      for (int i = 0; i < ticks.length; i++) {
        faults.add(new SplicedFault(feed.splices().get(i), ticks[i]));
      }
    }
    return faults;
  }
}
