package org.boostwright.core.monitor;

import org.boostwright.core.AnalogChannel;
import org.boostwright.core.Inputs;
import org.boostwright.core.settings.AnalogSensor;
import org.boostwright.core.settings.OptionalWires;
import org.boostwright.core.settings.Settings;
import org.boostwright.core.signal.ChannelSignal;
import org.boostwright.core.signal.SignalStatus;
import org.boostwright.core.signal.Signals;
import org.jspecify.annotations.Nullable;

/**
 * Every watch of one tick, in order; what it finds stands in the {@link FaultTable}.
 *
 * <p>While a bench procedure moves the valve with the engine known to be stopped, the pressure
 * sensor may sit on the actuator line and the PWM run at any frequency. What judges pressure as an
 * engine's (overboost, falls, jumps, noise) and current at the settings' frequency pauses then; the
 * bench keeps limits of its own. Everything about wires and samples goes on.
 */
public final class Monitor {
  /** Throttle below this counts as released, percent. */
  static final double RELEASED_PCT = 20.0;

  static final long RELEASED_NANOS = 2_000_000_000L;

  /** Supply below this cannot drive a coil reliably, V. */
  static final double SUPPLY_LOW_VOLTS = 9.0;

  /** Fastest fall the wastegate alone explains, kPa/s. */
  static final double EXPLAINED_FALL_KPA_PER_SECOND = 300.0;

  /** A fall is judged only from boost: an engine that starts pulls vacuum fast enough, too. */
  static final double BOOSTED_KPA = 10.0;

  static final long BOOSTED_NANOS = 200_000_000L;

  static final double THROTTLE_OPEN_PCT = 40.0;
  static final double PEDAL_CLOSED_PCT = 8.0;

  /** A lost intake-air sensor is replaced by this, hot enough to take boost away, degC. */
  static final double INTAKE_AIR_SUBSTITUTE_C = 60.0;

  private static final long HOSE_OFF =
      FaultCode.MAP_FALL_UNEXPLAINED.bit() | FaultCode.MAP_FLAT_AT_AMBIENT.bit();

  private final FaultTable faults;
  private final OptionalWires wires;
  private final EngineWatch engine;
  private final AmbientWatch ambient;
  private final SpeedLossWatch speedLoss = new SpeedLossWatch();
  private final LifeWatch life;
  private final AnalogChannel demand;
  private final HoseWatch hose;
  private final @Nullable NoiseWatch noise;
  private final OverboostWatch overboost;
  private final CoilWatch coil;
  private final boolean frozenWatched;
  private final boolean jumpsWatched;

  private boolean everBoosted;
  private long boostedNanos;
  private boolean released;
  private long releasedSinceNanos;
  private boolean fallUnexplained;
  private boolean keyCycled;
  private double intakeAirC = 20.0;

  /** Watches that have judged nothing yet. */
  public Monitor(Settings settings, FaultTable faults) {
    this.faults = faults;
    wires = settings.optional();
    engine = new EngineWatch(settings);
    ambient = new AmbientWatch(settings.sensors().ambientKpaAbs());
    life = new LifeWatch(settings.sensors());
    demand = settings.demand();
    hose = new HoseWatch(settings.car().redlineRpm());
    AnalogSensor map = settings.sensors().channel(AnalogChannel.MAP);
    frozenWatched = map != null && map.frozenIsWatched();
    jumpsWatched = map != null && Double.isFinite(map.maxRatePerSecond());
    double ratedKpa = settings.sensors().mapNoiseKpa();
    noise = frozenWatched && ratedKpa > 0.0 ? new NoiseWatch(ratedKpa) : null;
    overboost = new OverboostWatch(settings.limits().cutoffKpaAbs(), settings.limits().engineCut());
    coil = new CoilWatch(settings.valve().frequencyHz());
  }

  /**
   * Judges one tick; the signals are already updated.
   *
   * @param commandedDuty duty commanded in the last tick, 0 to 1; 0 where the coil supply was open
   */
  public void update(long nowNanos, Signals signals, Inputs inputs, double commandedDuty) {
    boolean keyOff = wires.keyInput() && !inputs.keyOn;
    engine.update(nowNanos, signals, keyOff, inputs.benchRequest);
    keyCycled = wires.keyInput() ? keyOff : engine.stopped();
    @Nullable ChannelSignal barometer = signals.channel(AnalogChannel.BAROMETER);
    if (barometer != null) {
      watchSlow(FaultCode.BAROMETER_SIGNAL, barometer, nowNanos);
    }
    ambient.update(nowNanos, barometer, engine, faults);
    watchMap(nowNanos, signals);
    watchThrottle(nowNanos, signals);
    watchEngineSpeed(nowNanos, signals);
    watchSupply(nowNanos, signals);
    watchIntakeAir(nowNanos, signals);
    if (!engine.onBench()) {
      overboost.update(nowNanos, signals, faults, keyCycled, ambient.trustedShare());
    }
    faults.sample(FaultCode.OUTPUTS_WRONG, inputs.outputsWrong, nowNanos);
    if (wires.permitInput()) {
      faults.sample(FaultCode.PERMIT_OPEN, !inputs.permit, nowNanos);
    }
    if (wires.coilFeedback() && engine.onBench()) {
      coil.interrupt();
    } else if (wires.coilFeedback()) {
      coil.update(nowNanos, commandedDuty, inputs.coilEnergised, faults);
    }
  }

  private void watchMap(long nowNanos, Signals signals) {
    ChannelSignal map = signals.map();
    watchStale(FaultCode.MAP_STALE, map, nowNanos);
    if (map.fresh()) {
      faults.sample(FaultCode.MAP_SIGNAL_LOW, map.has(ChannelSignal.LOW), nowNanos);
      faults.sample(FaultCode.MAP_SIGNAL_HIGH, map.has(ChannelSignal.HIGH), nowNanos);
      faults.sample(FaultCode.MAP_NOT_A_NUMBER, map.has(ChannelSignal.NOT_A_NUMBER), nowNanos);
      if (frozenWatched) {
        faults.sample(FaultCode.MAP_FROZEN, map.has(ChannelSignal.FROZEN), nowNanos);
      }
      if (jumpsWatched && !engine.onBench()) {
        faults.sample(FaultCode.MAP_JUMPS, map.has(ChannelSignal.JUMP), nowNanos);
      }
    }
    boolean valid = map.fresh() && map.status() == SignalStatus.VALID;
    if (map.usable() && map.value() > ambient.kpaAbs() + BOOSTED_KPA) {
      boostedNanos = nowNanos;
      everBoosted = true;
    }
    boolean fromBoost = everBoosted && nowNanos - boostedNanos <= BOOSTED_NANOS;
    fallUnexplained =
        fromBoost
            && !engine.onBench()
            && !signals.throttleExplainsFall()
            && map.usable()
            && signals.mapSlopeKpaPerSecond() < -EXPLAINED_FALL_KPA_PER_SECOND;
    if (valid) {
      faults.sample(FaultCode.MAP_FALL_UNEXPLAINED, fallUnexplained, nowNanos);
      boolean flat =
          hose.flatAtAmbient(
              nowNanos,
              map.value(),
              ambient.kpaAbs(),
              ambient.floorKpaAbs(),
              signals.throttle().usable() ? signals.throttle().value() : 0.0,
              signals.engineRpm());
      // Before the sensor has shown life nothing is driven, and ambient is what it should read.
      faults.sample(FaultCode.MAP_FLAT_AT_AMBIENT, flat && life.shown(), nowNanos);
      @Nullable ChannelSignal opened = signals.channel(demand);
      life.update(
          nowNanos,
          engine.stopped(),
          engine.running(),
          map.value(),
          ambient.kpaAbs(),
          opened != null && opened.usable() ? opened.value() : Double.NaN);
      if ((faults.active() & HOSE_OFF) != 0L) {
        // Throttle released is no proof that the hose is on again; life is.
        life.forget();
      }
    }
    if (noise != null && map.fresh()) {
      if (valid && !signals.throttleExplains() && !engine.onBench()) {
        faults.sample(FaultCode.MAP_NOISY, noise.excessive(map.value()), nowNanos);
      } else {
        noise.interrupt();
      }
    }
  }

  private void watchThrottle(long nowNanos, Signals signals) {
    ChannelSignal throttle = signals.throttle();
    watchStale(FaultCode.THROTTLE_STALE, throttle, nowNanos);
    if (throttle.fresh()) {
      boolean bad =
          throttle.has(
              ChannelSignal.LOW
                  | ChannelSignal.HIGH
                  | ChannelSignal.NOT_A_NUMBER
                  | ChannelSignal.JUMP
                  | ChannelSignal.FROZEN);
      faults.sample(FaultCode.THROTTLE_SIGNAL, bad, nowNanos);
    }
    @Nullable ChannelSignal pedal = signals.channel(AnalogChannel.PEDAL);
    if (pedal != null) {
      watchSlow(FaultCode.PEDAL_SIGNAL, pedal, nowNanos);
    }
    if (pedal != null && pedal.fresh() && pedal.usable() && throttle.usable()) {
      boolean against =
          throttle.value() > THROTTLE_OPEN_PCT
              && pedal.value() < PEDAL_CLOSED_PCT
              && !signals.throttleExplains();
      faults.sample(FaultCode.THROTTLE_AGAINST_PEDAL, against, nowNanos);
    }
    boolean low = throttle.status() == SignalStatus.VALID && throttle.value() < RELEASED_PCT;
    if (!low) {
      released = false;
    } else if (!released) {
      released = true;
      releasedSinceNanos = nowNanos;
    }
  }

  private void watchEngineSpeed(long nowNanos, Signals signals) {
    if (signals.engine().fresh()) {
      faults.sample(FaultCode.ENGINE_SPEED_JUMPS, signals.engine().bad(), nowNanos);
    }
    speedLoss.update(nowNanos, signals, engine, ambient, faults);
  }

  private void watchSupply(long nowNanos, Signals signals) {
    @Nullable ChannelSignal supply = signals.channel(AnalogChannel.SUPPLY);
    if (supply == null) {
      return;
    }
    watchSlow(FaultCode.SUPPLY_SIGNAL, supply, nowNanos);
    // Every start pulls the supply down; nothing is energised before the engine runs.
    if (supply.fresh() && supply.status() == SignalStatus.VALID && engine.running()) {
      faults.sample(FaultCode.SUPPLY_LOW, !(supply.value() >= SUPPLY_LOW_VOLTS), nowNanos);
    }
  }

  private void watchIntakeAir(long nowNanos, Signals signals) {
    @Nullable ChannelSignal air = signals.channel(AnalogChannel.INTAKE_AIR);
    if (air == null) {
      return;
    }
    watchSlow(FaultCode.INTAKE_AIR_SIGNAL, air, nowNanos);
    if (faults.isActive(FaultCode.INTAKE_AIR_SIGNAL)) {
      intakeAirC = INTAKE_AIR_SUBSTITUTE_C;
    } else if (air.status() == SignalStatus.VALID) {
      intakeAirC = air.value();
    }
  }

  /** One sample of a slow channel is judged once, however many ticks it lasts. */
  private void watchSlow(FaultCode code, ChannelSignal channel, long nowNanos) {
    boolean stale = channel.has(ChannelSignal.STALE);
    if (stale || channel.fresh()) {
      faults.sample(code, stale || channel.status() != SignalStatus.VALID, nowNanos);
    }
  }

  private void watchStale(FaultCode code, ChannelSignal channel, long nowNanos) {
    faults.sample(code, channel.has(ChannelSignal.STALE), nowNanos);
  }

  /** Faults found so far. */
  public FaultTable faults() {
    return faults;
  }

  /**
   * Begins with the ambient pressure of an earlier run, until one is measured; anything no
   * atmosphere has is ignored.
   */
  public void recallAmbient(double kpaAbs) {
    if (kpaAbs >= EngineWatch.AMBIENT_LOW_KPA && kpaAbs <= EngineWatch.AMBIENT_HIGH_KPA) {
      engine.recall();
      ambient.recall(kpaAbs);
    }
  }

  /** Engine running or stopped, and its ambient pressure. */
  public EngineWatch engine() {
    return engine;
  }

  /** The pressure sensor has shown life since the engine started. */
  public boolean lifeShown() {
    return life.shown();
  }

  /** Overboost counter and engine-cut request. */
  public OverboostWatch overboost() {
    return overboost;
  }

  /** Pressure falls as no throttle movement explains. */
  public boolean fallUnexplained() {
    return fallUnexplained;
  }

  /** A valid throttle has been below 20 % for 2 s. */
  public boolean throttleReleased(long nowNanos) {
    return released && nowNanos - releasedSinceNanos >= RELEASED_NANOS;
  }

  /** The key is off, or the engine is known to be stopped where no key is wired. */
  public boolean keyCycled() {
    return keyCycled;
  }

  /** Ambient pressure in use, kPa absolute; NaN while unknown. */
  public double ambientKpaAbs() {
    return ambient.kpaAbs();
  }

  /** Lowest ambient pressure that is possible by now, kPa absolute; NaN while unknown. */
  public double ambientFloorKpaAbs() {
    return ambient.floorKpaAbs();
  }

  /** Share of target and overboost limit that a sensor which may read low leaves, 0 to 1. */
  public double trustedShare() {
    return ambient.trustedShare();
  }

  /** Intake air temperature in use, degC. */
  public double intakeAirC() {
    return intakeAirC;
  }
}
