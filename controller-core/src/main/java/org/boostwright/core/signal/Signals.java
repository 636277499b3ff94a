package org.boostwright.core.signal;

import org.boostwright.core.AnalogChannel;
import org.boostwright.core.Inputs;
import org.boostwright.core.settings.AnalogSensor;
import org.boostwright.core.settings.CarSettings;
import org.boostwright.core.settings.Settings;
import org.jspecify.annotations.Nullable;

/** All signals of one tick: every fitted channel, both speeds, the slope of the pressure. */
public final class Signals {
  /** Throttle movement counts as explaining pressure changes for this long, ns. */
  static final long THROTTLE_EXPLAINS_NANOS = 400_000_000L;

  /** Throttle this far from its own slow average is moving, percent. */
  static final double THROTTLE_MOVING_PCT = 4.0;

  /**
   * Throttle this far below its own slow average closes, percent. At high engine speed and little
   * throttle 4 % less takes 13 kPa away within 40 ms; sensor noise is below a tenth of this.
   */
  static final double THROTTLE_CLOSING_PCT = 1.5;

  /** Fastest plausible change of engine speed, 1/min per s. */
  static final double MAX_RPM_PER_SECOND = 25_000.0;

  private static final int SLOPE_SAMPLES = 12;

  private final @Nullable ChannelSignal[] channels = new ChannelSignal[AnalogChannel.COUNT];
  private final ChannelSignal map;
  private final ChannelSignal throttle;
  private final PulseSpeed engine;
  private final PulseSpeed road;
  private final SlopeEstimate mapSlope = new SlopeEstimate(SLOPE_SAMPLES);
  private final double rpmPerEngineRate;
  private final double kmhPerRoadRate;

  private boolean throttleSeen;
  private double slowThrottlePct;
  private long throttleMovedNanos;
  private boolean throttleEverMoved;
  private boolean throttleExplains;
  private long throttleClosedNanos;
  private boolean throttleEverClosed;
  private boolean throttleExplainsFall;
  private double engineRpm;
  private double roadKmh;

  /** Signals that have seen nothing yet. */
  public Signals(Settings settings) {
    for (AnalogChannel channel : AnalogChannel.values()) {
      AnalogSensor sensor = settings.sensors().channel(channel);
      channels[channel.ordinal()] = sensor == null ? null : new ChannelSignal(sensor);
    }
    map = required(AnalogChannel.MAP);
    throttle = required(AnalogChannel.THROTTLE);
    CarSettings car = settings.car();
    rpmPerEngineRate = 60.0 / car.pulsesPerRevolution();
    engine =
        new PulseSpeed(
            1.25 * car.redlineRpm() / rpmPerEngineRate, MAX_RPM_PER_SECOND / rpmPerEngineRate);
    kmhPerRoadRate = car.roadPulsesPerKm() > 0.0 ? 3600.0 / car.roadPulsesPerKm() : 0.0;
    road = new PulseSpeed(1e4, 1e5);
  }

  private ChannelSignal required(AnalogChannel channel) {
    ChannelSignal signal = channels[channel.ordinal()];
    if (signal == null) {
      throw new IllegalArgumentException("a " + channel.id() + " sensor is always needed");
    }
    return signal;
  }

  /** Reads one tick's inputs. */
  public void update(long nowNanos, Inputs inputs) {
    updateThrottle(nowNanos, inputs);
    for (int i = 0; i < AnalogChannel.COUNT; i++) {
      ChannelSignal signal = channels[i];
      if (signal == null || signal == throttle) {
        continue;
      }
      signal.update(
          nowNanos,
          inputs.volts[i],
          inputs.sampleNanos[i],
          inputs.answered[i],
          signal == map && throttleExplains);
    }
    if (map.fresh() && map.status() == SignalStatus.VALID) {
      mapSlope.add(map.value(), inputs.sampleNanos[AnalogChannel.MAP.ordinal()]);
    }
    engine.update(nowNanos, inputs.engineSeen, inputs.enginePeriodNanos, inputs.enginePulseNanos);
    engineRpm = engine.perSecond() * rpmPerEngineRate;
    if (kmhPerRoadRate > 0.0) {
      // What is not wired is not listened to: an open input picks up anything.
      road.update(nowNanos, inputs.roadSeen, inputs.roadPeriodNanos, inputs.roadPulseNanos);
    }
    roadKmh = road.perSecond() * kmhPerRoadRate;
  }

  private void updateThrottle(long nowNanos, Inputs inputs) {
    int i = AnalogChannel.THROTTLE.ordinal();
    throttle.update(nowNanos, inputs.volts[i], inputs.sampleNanos[i], inputs.answered[i], false);
    if (throttle.usable()) {
      double pct = throttle.value();
      if (!throttleSeen) {
        throttleSeen = true;
        slowThrottlePct = pct;
      }
      slowThrottlePct += 0.05 * (pct - slowThrottlePct);
      double ahead = pct - slowThrottlePct;
      if (!(Math.abs(ahead) <= THROTTLE_MOVING_PCT)) {
        throttleMovedNanos = nowNanos;
        throttleEverMoved = true;
      }
      if (ahead < -THROTTLE_CLOSING_PCT) {
        throttleClosedNanos = nowNanos;
        throttleEverClosed = true;
      }
    }
    throttleExplains =
        throttle.usable()
            && throttleEverMoved
            && nowNanos - throttleMovedNanos <= THROTTLE_EXPLAINS_NANOS;
    throttleExplainsFall =
        throttle.usable()
            && throttleEverClosed
            && nowNanos - throttleClosedNanos <= THROTTLE_EXPLAINS_NANOS;
  }

  /** A channel's signal; null where not fitted. */
  public @Nullable ChannelSignal channel(AnalogChannel channel) {
    return channels[channel.ordinal()];
  }

  /** Manifold pressure. */
  public ChannelSignal map() {
    return map;
  }

  /** Throttle position. */
  public ChannelSignal throttle() {
    return throttle;
  }

  /** Rate of change of manifold pressure over about 60 ms, kPa/s. */
  public double mapSlopeKpaPerSecond() {
    return mapSlope.perSecond();
  }

  /** True while recent throttle movement explains any change of pressure. */
  public boolean throttleExplains() {
    return throttleExplains;
  }

  /** True while a recent closing of the throttle explains a fall of pressure. */
  public boolean throttleExplainsFall() {
    return throttleExplainsFall;
  }

  /** Engine-speed pulses. */
  public PulseSpeed engine() {
    return engine;
  }

  /** Road-speed pulses. */
  public PulseSpeed road() {
    return road;
  }

  /** Engine speed, 1/min; falls to 0 as pulses stay away. */
  public double engineRpm() {
    return engineRpm;
  }

  /**
   * Engine speed at the last accepted pulse, 1/min, however far it has fallen since; 0 when pulses
   * have been away for 2 s.
   */
  public double lastPulseRpm() {
    return engine.lastPerSecond() * rpmPerEngineRate;
  }

  /** Road speed, km/h; 0 where not wired. */
  public double roadKmh() {
    return roadKmh;
  }
}
