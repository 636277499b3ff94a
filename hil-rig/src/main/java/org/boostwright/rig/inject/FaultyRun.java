package org.boostwright.rig.inject;

import org.boostwright.core.Controller;
import org.boostwright.core.Inputs;
import org.boostwright.core.Outputs;
import org.boostwright.rig.link.HeartbeatGate;
import org.boostwright.rig.link.LineFaults;
import org.boostwright.rig.plant.Atmosphere;
import org.boostwright.rig.plant.CarFaults;
import org.boostwright.rig.plant.VirtualCar;
import org.boostwright.rig.scenario.CarRun;

/**
 * The controller in the virtual car with everything between them that can go wrong: inputs, serial
 * link, time, the program itself, and the heartbeat circuit that holds the coil supply closed.
 *
 * <p>Without a fault every tick is that of {@link CarRun}.
 */
public final class FaultyRun {
  private static final double BOOT_SECONDS = 4.0;

  /** A road's climb in fast motion: 60 times the fastest that the ambient watch allows for, m/s. */
  private static final double CLIMB_M_PER_S = 100.0;

  private static final long TICK = Controller.TICK_NANOS;

  private final CarRun run;
  private final Tamper tamper = new Tamper();
  private final LinkPath link;
  private final boolean overLink;
  private final HeartbeatGate gate;
  private final double airC;
  private double altitudeM;
  private double goalM;
  private boolean level;
  private boolean hung;
  private long lateNanos;
  private long bootNanos;

  /**
   * @param run controller and car, before the first tick
   * @param altitudeM altitude at the start, m
   * @param airC outside air, degC
   * @param overLink the inputs come over the serial link
   * @param gateHoldSeconds how long the heartbeat circuit holds after the last edge, s
   * @param seed of what goes wrong at random on the link
   */
  public FaultyRun(
      CarRun run,
      double altitudeM,
      double airC,
      boolean overLink,
      double gateHoldSeconds,
      long seed) {
    this.run = run;
    this.altitudeM = altitudeM;
    this.airC = airC;
    goalM = altitudeM;
    this.overLink = overLink;
    link = new LinkPath(run.nowNanos(), seed);
    gate = new HeartbeatGate(Math.round(gateHoldSeconds * 1e9));
    run.disturb(this::deliver);
  }

  private void deliver(Inputs inputs) {
    tamper.accept(inputs);
    if (overLink) {
      link.carry(run.nowNanos(), inputs, run.outputs());
    }
  }

  /** One tick of 5 ms, whoever is awake in it. */
  public void tick() {
    climb();
    if (bootNanos > 0L) {
      boot();
    } else if (hung) {
      run.pass(TICK);
      openGate();
    } else {
      run.tick(lateNanos);
      if (run.outputs().heartbeatPermitted) {
        level = !level;
      }
      gate.level(level, run.nowNanos());
      if (!run.outputs().state.isRest()) {
        openGate();
      }
    }
  }

  private void climb() {
    if (altitudeM != goalM) {
      double step = CLIMB_M_PER_S * TICK * 1e-9;
      altitudeM += Math.max(-step, Math.min(step, goalM - altitudeM));
      run.car().setAtmosphere(Atmosphere.at(altitudeM, airC));
    }
  }

  /** The road climbs or falls to an altitude, m. */
  void climbTo(double metres) {
    goalM = metres;
  }

  /** The road stays level from here. */
  void stayHere() {
    goalM = altitudeM;
  }

  private void boot() {
    run.car().coil(0.0, false, false);
    run.pass(TICK);
    bootNanos -= TICK;
    if (bootNanos <= 0L) {
      run.restartController();
    }
  }

  private void openGate() {
    Outputs out = run.outputs();
    if (!gate.closed(run.nowNanos())) {
      run.car().coil(out.dutyFraction, out.pwmEnabled, false);
    }
  }

  /** True while the coil is fed as far as the controller's side decides. */
  public boolean coilFed() {
    Outputs out = run.outputs();
    return out.coilSupplyClosed
        && out.dutyFraction > 0.0
        && gate.closed(run.nowNanos())
        && bootNanos <= 0L;
  }

  /** The program stands still, or goes on. */
  void hang(boolean stands) {
    hung = stands;
  }

  /** Every tick comes this much late, s. */
  void late(double seconds) {
    lateNanos = Math.round(seconds * 1e9);
  }

  /** Power off and on again: everything off at once, a new program after booting. */
  void powerCut() {
    bootNanos = Math.round(BOOT_SECONDS * 1e9);
    run.outputs().rest();
  }

  /** What is wrong with the inputs. */
  Tamper tamper() {
    return tamper;
  }

  /** What is wrong with the link. */
  LineFaults line() {
    return link.line();
  }

  /** What is wrong with the car. */
  CarFaults faults() {
    return run.car().faults();
  }

  /** The car. */
  public VirtualCar car() {
    return run.car();
  }

  /** Controller and car. */
  public CarRun run() {
    return run;
  }

  /** The program does not run in this moment: its outputs are those of its last tick. */
  public boolean programStands() {
    return hung || bootNanos > 0L;
  }
}
