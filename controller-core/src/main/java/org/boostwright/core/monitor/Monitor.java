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

/** Every watch of one tick, in order; what it finds stands in the {@link FaultTable}. */
public final class Monitor {
  /** Throttle below this counts as released, percent. */
  static final double RELEASED_PCT = 20.0;

  static final long RELEASED_NANOS = 2_000_000_000L;

  /** Supply below this cannot drive a coil reliably, V. */
  static final double SUPPLY_LOW_VOLTS = 9.0;

  /** Barometer and pressure sensor may differ by this with the engine stopped, kPa. */
  static final double AMBIENT_TOLERANCE_KPA = 4.0;

  /** Fastest fall the wastegate alone explains, kPa/s. */
  static final double EXPLAINED_FALL_KPA_PER_SECOND = 300.0;

  /** A fall is judged only from boost: an engine that starts pulls vacuum fast enough, too. */
  static final double BOOSTED_KPA = 10.0;

  static final long BOOSTED_NANOS = 200_000_000L;

  /** No engine pulse for this long while pressure or road speed says it runs is a lost signal. */
  static final long PULSE_LOST_NANOS = 250_000_000L;

  /** A pressure this far from ambient cannot belong to a stopped engine, kPa. */
  static final double ENGINE_AT_WORK_KPA = 15.0;

  static final double THROTTLE_OPEN_PCT = 40.0;
  static final double PEDAL_CLOSED_PCT = 8.0;

  /** A lost intake-air sensor is replaced by this, hot enough to take boost away, degC. */
  static final double INTAKE_AIR_SUBSTITUTE_C = 60.0;

  /** Fastest climb allowed for without a barometer, kPa per s (about 1000 m in ten minutes). */
  static final double CLIMB_KPA_PER_SECOND = 0.02;

  /** Largest drift allowed for without a barometer (a climb of 2000 m), kPa. */
  static final double CLIMB_BOUND_KPA = 22.0;

  private final FaultTable faults;
  private final OptionalWires wires;
  private final EngineWatch engine;
  private final LifeWatch life;
  private final NoiseWatch noise;
  private final OverboostWatch overboost;

  private boolean everBoosted;
  private long boostedNanos;
  private boolean released;
  private long releasedSinceNanos;
  private boolean fallUnexplained;
  private double ambientKpaAbs = Double.NaN;
  private double ambientFloorKpaAbs = Double.NaN;
  private double intakeAirC = 20.0;

  /** Watches that have judged nothing yet. */
  public Monitor(Settings settings, FaultTable faults) {
    this.faults = faults;
    wires = settings.optional();
    engine = new EngineWatch(settings);
    life = new LifeWatch(settings.sensors());
    AnalogSensor map = settings.sensors().channel(AnalogChannel.MAP);
    boolean noiseKnown = map != null && map.frozenIsWatched();
    noise = new NoiseWatch(noiseKnown ? settings.sensors().mapNoiseKpa() : 0.0);
    overboost = new OverboostWatch(settings.limits().cutoffKpaAbs(), settings.limits().engineCut());
  }

  /** Judges one tick; the signals are already updated. */
  public void update(long nowNanos, Signals signals, Inputs inputs, boolean coilCommanded) {
    boolean keyOn = !wires.keyInput() || inputs.keyOn;
    engine.update(nowNanos, signals);
    watchAmbient(nowNanos, signals);
    watchMap(nowNanos, signals);
    watchThrottle(nowNanos, signals);
    watchEngineSpeed(nowNanos, signals);
    watchSupply(nowNanos, signals);
    watchIntakeAir(nowNanos, signals);
    overboost.update(nowNanos, signals, faults, keyOn);
    faults.sample(FaultCode.OUTPUTS_WRONG, inputs.outputsWrong, nowNanos);
    if (wires.permitInput()) {
      faults.sample(FaultCode.PERMIT_OPEN, !inputs.permit, nowNanos);
    }
    if (wires.coilFeedback()) {
      faults.sample(FaultCode.COIL_FEEDBACK, inputs.coilEnergised && !coilCommanded, nowNanos);
    }
  }

  private void watchMap(long nowNanos, Signals signals) {
    ChannelSignal map = signals.map();
    watchStale(FaultCode.MAP_STALE, map, nowNanos);
    if (map.fresh()) {
      faults.sample(FaultCode.MAP_SIGNAL_LOW, map.has(ChannelSignal.LOW), nowNanos);
      faults.sample(FaultCode.MAP_SIGNAL_HIGH, map.has(ChannelSignal.HIGH), nowNanos);
      faults.sample(FaultCode.MAP_NOT_A_NUMBER, map.has(ChannelSignal.NOT_A_NUMBER), nowNanos);
      faults.sample(FaultCode.MAP_FROZEN, map.has(ChannelSignal.FROZEN), nowNanos);
      faults.sample(FaultCode.MAP_JUMPS, map.has(ChannelSignal.JUMP), nowNanos);
    }
    boolean valid = map.fresh() && map.status() == SignalStatus.VALID;
    if (map.usable() && map.value() > ambientKpaAbs + BOOSTED_KPA) {
      boostedNanos = nowNanos;
      everBoosted = true;
    }
    boolean fromBoost = everBoosted && nowNanos - boostedNanos <= BOOSTED_NANOS;
    fallUnexplained =
        fromBoost
            && !signals.throttleExplains()
            && map.usable()
            && signals.mapSlopeKpaPerSecond() < -EXPLAINED_FALL_KPA_PER_SECOND;
    if (valid) {
      faults.sample(FaultCode.MAP_FALL_UNEXPLAINED, fallUnexplained, nowNanos);
      life.update(engine.stopped(), engine.running(), map.value(), ambientKpaAbs);
    }
    if (valid && !signals.throttleExplains()) {
      faults.sample(FaultCode.MAP_NOISY, noise.excessive(map.value()), nowNanos);
    } else if (map.fresh()) {
      noise.interrupt();
    }
  }

  private void watchAmbient(long nowNanos, Signals signals) {
    @Nullable ChannelSignal barometer = signals.channel(AnalogChannel.BAROMETER);
    boolean barometerGood = barometer != null && barometer.status() == SignalStatus.VALID;
    if (barometer != null) {
      faults.sample(FaultCode.BAROMETER_SIGNAL, !barometerGood, nowNanos);
    }
    double measured = engine.ambientKpaAbs();
    if (barometerGood && barometer != null) {
      ambientKpaAbs = barometer.value();
      ambientFloorKpaAbs = ambientKpaAbs;
      if (engine.stopped() || engine.steadyOutOfRange()) {
        boolean apart = !(Math.abs(engine.lastValidKpa() - ambientKpaAbs) <= AMBIENT_TOLERANCE_KPA);
        faults.sample(FaultCode.MAP_AMBIENT_MISMATCH, apart, nowNanos);
      }
    } else {
      ambientKpaAbs = measured;
      double drift = CLIMB_KPA_PER_SECOND * engine.ambientAgeSeconds(nowNanos);
      ambientFloorKpaAbs = measured - Math.min(CLIMB_BOUND_KPA, drift);
      if (engine.stopped() || engine.steadyOutOfRange()) {
        faults.sample(FaultCode.MAP_AMBIENT_MISMATCH, engine.steadyOutOfRange(), nowNanos);
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
    boolean silent = signals.engine().age(nowNanos) >= PULSE_LOST_NANOS;
    boolean atWork =
        signals.map().usable()
            && !(Math.abs(signals.map().value() - ambientKpaAbs) <= ENGINE_AT_WORK_KPA);
    // An engine that fell silent from running speed is judged. One that slowed down first has been
    // switched off or stalled, whatever its manifold still holds; one that never ran waits in the
    // state machine.
    boolean judged = engine.isRunningSpeed(signals.lastPulseRpm()) && !engine.stopped();
    if (judged) {
      faults.sample(FaultCode.ENGINE_SPEED_LOST, silent && atWork, nowNanos);
    }
  }

  private void watchSupply(long nowNanos, Signals signals) {
    @Nullable ChannelSignal supply = signals.channel(AnalogChannel.SUPPLY);
    if (supply == null) {
      return;
    }
    boolean good = supply.status() == SignalStatus.VALID;
    faults.sample(FaultCode.SUPPLY_SIGNAL, !good, nowNanos);
    if (good && supply.fresh()) {
      faults.sample(FaultCode.SUPPLY_LOW, !(supply.value() >= SUPPLY_LOW_VOLTS), nowNanos);
    }
  }

  private void watchIntakeAir(long nowNanos, Signals signals) {
    @Nullable ChannelSignal air = signals.channel(AnalogChannel.INTAKE_AIR);
    if (air == null) {
      return;
    }
    boolean good = air.status() == SignalStatus.VALID;
    faults.sample(FaultCode.INTAKE_AIR_SIGNAL, !good, nowNanos);
    if (good) {
      intakeAirC = air.value();
    } else if (faults.isActive(FaultCode.INTAKE_AIR_SIGNAL)) {
      intakeAirC = INTAKE_AIR_SUBSTITUTE_C;
    }
  }

  private void watchStale(FaultCode code, ChannelSignal channel, long nowNanos) {
    faults.sample(code, channel.has(ChannelSignal.STALE), nowNanos);
  }

  /** Faults found so far. */
  public FaultTable faults() {
    return faults;
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

  /** Ambient pressure in use, kPa absolute; NaN while unknown. */
  public double ambientKpaAbs() {
    return ambientKpaAbs;
  }

  /** Lowest ambient pressure that is possible by now, kPa absolute; NaN while unknown. */
  public double ambientFloorKpaAbs() {
    return ambientFloorKpaAbs;
  }

  /** Intake air temperature in use, degC. */
  public double intakeAirC() {
    return intakeAirC;
  }
}
