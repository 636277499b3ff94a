package org.boostwright.core;

import org.boostwright.core.control.BoostControl;
import org.boostwright.core.control.BoostSelector;
import org.boostwright.core.control.GearFinder;
import org.boostwright.core.gate.OutputGate;
import org.boostwright.core.monitor.FaultCode;
import org.boostwright.core.monitor.FaultTable;
import org.boostwright.core.monitor.Monitor;
import org.boostwright.core.monitor.Reaction;
import org.boostwright.core.monitor.TimingWatch;
import org.boostwright.core.record.LogFormat;
import org.boostwright.core.settings.OptionalWires;
import org.boostwright.core.settings.Settings;
import org.boostwright.core.signal.ChannelSignal;
import org.boostwright.core.signal.Signals;
import org.boostwright.core.state.Permission;
import org.boostwright.core.state.SafetyState;
import org.boostwright.core.state.StateMachine;
import org.boostwright.core.state.Waiting;

/**
 * The controller: one call per tick, the same class on the car, in the rig, over the link and in
 * replay.
 *
 * <p>Inputs flow one way: signal, monitor, state, control, gate. No clock, thread, file, log or
 * random number inside; no allocation after construction. The same inputs give the same outputs,
 * bit for bit.
 */
public final class Controller {
  /** Control tick, ns (200 Hz). */
  public static final long TICK_NANOS = 5_000_000L;

  private static final long FINDINGS =
      FaultCode.SPOOL_NOT_RISING.bit()
          | FaultCode.TARGET_OUT_OF_REACH.bit()
          | FaultCode.TARGET_LIMITED.bit()
          | FaultCode.AMBIENT_IN_DOUBT.bit();

  private static final long OUT_OF_REACH_NANOS = 500_000_000L;

  private final Settings settings;
  private final Permission permission;
  private final Signals signals;
  private final FaultTable faults = new FaultTable();
  private final TimingWatch timing = new TimingWatch(TICK_NANOS);
  private final Monitor monitor;
  private final StateMachine machine = new StateMachine();
  private final BoostControl control;
  private final BoostSelector selector = new BoostSelector();
  private final GearFinder gears;
  private final OutputGate gate;
  private final double[] row = new double[LogFormat.COLUMN_COUNT];

  private double commandedDuty;
  private boolean reachable = true;
  private long outOfReachSinceNanos;
  private boolean crashed;
  private String crash = "";

  /** A controller at rest with every proof given; for the virtual car and replay. */
  public Controller(Settings settings) {
    this(settings, Permission.FULL);
  }

  /** A controller at rest that never goes further than {@code permission}. */
  public Controller(Settings settings, Permission permission) {
    this.settings = settings;
    this.permission = permission;
    signals = new Signals(settings);
    monitor = new Monitor(settings, faults);
    control = new BoostControl(settings);
    gears = new GearFinder(settings.car().gearRpmPerKmh());
    gate = new OutputGate(settings.limits().dutyCeiling(), permission.dutyCeilingFraction());
  }

  /** Settings this controller was built with. */
  public Settings settings() {
    return settings;
  }

  /** Faults with their counts, times and freeze frames. */
  public FaultTable faults() {
    return faults;
  }

  /** What the watches know beyond faults: engine state, ambient, overboost trips. */
  public Monitor monitor() {
    return monitor;
  }

  /** Words about the last exception out of a tick; empty when there was none. */
  public String crash() {
    return crash;
  }

  /**
   * One tick. Whatever goes wrong inside, the hardware commands are at rest before anything else
   * happens, and the controller locks.
   *
   * @param nowNanos time of this tick on the clock of the inputs, ns
   * @param inputs what was read for this tick; not changed
   * @param outputs overwritten whole
   */
  public void step(long nowNanos, Inputs inputs, Outputs outputs) {
    outputs.rest();
    try {
      tick(nowNanos, inputs, outputs);
    } catch (Throwable thrown) {
      outputs.rest();
      outputs.heartbeatPermitted = false;
      outputs.engineCutRequest = false;
      machine.lock();
      outputs.state = machine.state();
      outputs.waiting = machine.waiting();
      crashed = true;
      crash = thrown.toString();
    }
    commandedDuty = outputs.coilSupplyClosed ? outputs.dutyFraction : 0.0;
  }

  private void tick(long nowNanos, Inputs inputs, Outputs outputs) {
    faults.beginTick();
    double dt = timing.update(nowNanos, faults);
    faults.sample(FaultCode.INTERNAL, crashed, nowNanos);
    signals.update(nowNanos, inputs);
    monitor.update(nowNanos, signals, inputs, commandedDuty);

    double rpm = signals.engineRpm();
    double throttlePct = signals.throttle().value();
    double mapKpaAbs = signals.map().value();
    double ambientKpaAbs = monitor.ambientKpaAbs();
    int gear = gears.update(rpm, signals.roadKmh(), dt);
    double demandPct = demandPct();
    boolean high = selector.high(nowNanos, inputs.highBoost);
    control.updateTarget(demandPct, rpm, gear, monitor, high);
    boolean demand = control.demand(demandPct, rpm, ambientKpaAbs);
    machine.update(
        faults.worstReaction(),
        missing(inputs),
        demand,
        inputs.benchRequest,
        monitor.engine().stopped());

    decideDuty(nowNanos, inputs, outputs, rpm, mapKpaAbs, dt);

    faults.endTick(nowNanos, monitor.throttleReleased(nowNanos), monitor.keyCycled());
    if (monitor.keyCycled()) {
      crashed = false;
    }
    report(outputs, rpm, throttlePct, mapKpaAbs, gear);
    if (faults.newlyConfirmed() != 0L) {
      LogFormat.fill(row, nowNanos, inputs, outputs);
      faults.storeFrames(row);
    }
  }

  /** What the driver asks for: throttle, or the pedal; a pedal that cannot be read asks nothing. */
  private double demandPct() {
    if (settings.demand() != AnalogChannel.PEDAL) {
      return signals.throttle().value();
    }
    ChannelSignal pedal = signals.channel(AnalogChannel.PEDAL);
    return pedal != null && pedal.usable() ? pedal.value() : 0.0;
  }

  private void decideDuty(
      long nowNanos, Inputs inputs, Outputs outputs, double rpm, double mapKpaAbs, double dt) {
    SafetyState state = machine.state();
    double wanted;
    if (state == SafetyState.CONTROLLING) {
      boolean trimAllowed =
          permission.feedbackAllowed() && faults.worstReaction().compareTo(Reaction.NO_TRIM) < 0;
      control.control(
          mapKpaAbs,
          signals.mapSlopeKpaPerSecond(),
          rpm,
          monitor.ambientKpaAbs(),
          gate.ceiling(rpm),
          trimAllowed,
          !monitor.fallUnexplained(),
          dt);
      wanted = control.dutyFraction();
    } else {
      control.idle(mapKpaAbs, dt, state.isRest() && faults.active() != 0L);
      wanted = state == SafetyState.BENCH ? inputs.benchDutyFraction : 0.0;
    }
    judgeFindings(nowNanos, state);
    if (!gate.apply(state, wanted, rpm, outputs)) {
      faults.sample(FaultCode.INTERNAL, true, nowNanos);
      machine.lock();
    }
  }

  private void judgeFindings(long nowNanos, SafetyState state) {
    boolean controlling = state == SafetyState.CONTROLLING;
    faults.sample(FaultCode.SPOOL_NOT_RISING, controlling && control.spoolGaveUp(), nowNanos);
    faults.sample(FaultCode.TARGET_LIMITED, controlling && control.target().limited(), nowNanos);
    boolean below = controlling && control.outOfReach();
    if (below && reachable) {
      outOfReachSinceNanos = nowNanos;
    }
    reachable = !below;
    faults.sample(
        FaultCode.TARGET_OUT_OF_REACH,
        below && nowNanos - outOfReachSinceNanos >= OUT_OF_REACH_NANOS,
        nowNanos);
  }

  private Waiting missing(Inputs inputs) {
    OptionalWires wires = settings.optional();
    if (wires.keyInput() && !inputs.keyOn) {
      return Waiting.KEY;
    }
    if (wires.permitInput() && !inputs.permit) {
      return Waiting.PERMIT;
    }
    if (wires.springOnlySense() && !inputs.coilFeed) {
      return Waiting.SPRING_ONLY_SWITCH;
    }
    if (!permission.controlAllowed()) {
      return Waiting.PROOF;
    }
    if (!(monitor.ambientKpaAbs() > 0.0)) {
      return Waiting.AMBIENT;
    }
    if (!monitor.engine().running()) {
      return Waiting.ENGINE;
    }
    if (!monitor.lifeShown()) {
      return Waiting.SENSOR_LIFE;
    }
    if (!signals.map().usable() || !signals.throttle().usable()) {
      return Waiting.SENSOR_LIFE;
    }
    return Waiting.NOTHING;
  }

  private void report(Outputs outputs, double rpm, double throttlePct, double mapKpaAbs, int gear) {
    outputs.engineCutRequest = monitor.overboost().cutRequest();
    outputs.heartbeatPermitted = !machine.state().isRest();
    outputs.state = machine.state();
    outputs.waiting = machine.waiting();
    outputs.activeFaults = faults.active() & ~FINDINGS;
    outputs.findings = faults.active() & FINDINGS;
    outputs.mapKpaAbs = mapKpaAbs;
    outputs.throttlePct = throttlePct;
    outputs.engineRpm = rpm;
    outputs.roadKmh = signals.roadKmh();
    outputs.gear = gear;
    outputs.intakeAirC = monitor.intakeAirC();
    outputs.ambientKpaAbs = monitor.ambientKpaAbs();
    outputs.targetKpaAbs = control.target().targetKpaAbs();
    outputs.baseDutyFraction = control.baseFraction();
    outputs.trimDutyFraction = control.trimFraction();
    outputs.spooling = control.spooling();
    outputs.outsideTable = control.outsideTable();
    outputs.lateTicks = timing.late();
  }
}
