package org.boostwright.rig.scenario.fault;

import java.util.ArrayList;
import java.util.EnumSet;
import java.util.List;
import java.util.Set;
import org.boostwright.core.AnalogChannel;
import org.boostwright.core.state.SafetyState;
import org.boostwright.rig.inject.FaultyRun;
import org.boostwright.rig.inject.Stoppable;
import org.boostwright.rig.plant.VirtualCar;
import org.boostwright.rig.scenario.CarRun;
import org.boostwright.rig.scenario.RunLog;

/**
 * A drive with faults beside the same drive without them, tick by tick.
 *
 * <p>The twin is the proof that a fault took effect, and that the same run without it raises
 * nothing. The same setup and faults give the same bits.
 */
public final class TwinRun {
  private static final double OVER_KPA = 12.0;
  private static final double OVER_SECONDS = 0.250;
  private static final double HEARTBEAT_OVER_KPA = 25.0;
  private static final double HEARTBEAT_OVER_SECONDS = 0.500;

  private final Setup setup;
  private final FaultyRun with;
  private final FaultyRun without;
  private final Driver driverWith;
  private final Driver driverWithout;
  private final RunFacts facts;
  private final RunFacts twin;
  private final List<FaultFacts> faults = new ArrayList<>();
  private boolean logged;
  private double largestDutyApart;

  /** A drive at key on. */
  public TwinRun(Setup setup, List<Injection> injections) {
    this.setup = setup;
    with = car(setup, setup.clockAtStartNanos());
    without = car(setup, 0L);
    double idleRpm = setup.car().car().idleRpm();
    driverWith = new Driver(setup.drive(), idleRpm, setup.airC());
    driverWithout = new Driver(setup.drive(), idleRpm, setup.airC());
    facts = new RunFacts(setup.settings());
    twin = new RunFacts(setup.settings());
    for (Injection injection : injections) {
      faults.add(new FaultFacts(injection));
    }
  }

  private static FaultyRun car(Setup setup, long clockAtStartNanos) {
    double hz = setup.settings().valve().frequencyHz();
    VirtualCar car = new VirtualCar(setup.car().withPwmHz(hz), setup.air(), setup.seed());
    Set<AnalogChannel> fitted = EnumSet.noneOf(AnalogChannel.class);
    for (AnalogChannel channel : AnalogChannel.values()) {
      if (setup.settings().sensors().channel(channel) != null) {
        fitted.add(channel);
      }
    }
    car.sensors().setFitted(fitted);
    car.faults().recirculationStuck = setup.recirculationStuck();
    CarRun run = new CarRun(setup.settings(), setup.permission(), car);
    run.startClockAt(clockAtStartNanos);
    run.keepLog(false);
    return new FaultyRun(
        run,
        setup.altitudeM(),
        setup.airC(),
        setup.overLink(),
        setup.gateHoldSeconds(),
        setup.seed());
  }

  /** Keeps the rows of the run with the faults. */
  public TwinRun keepLog() {
    logged = true;
    with.run().keepLog(true);
    return this;
  }

  /** Drives to the end. */
  public TwinRun drive() {
    double lead = driverWith.leadSeconds();
    double end = setup.drive().seconds();
    while (true) {
      double seconds = elapsed(with, setup.clockAtStartNanos()) - lead;
      if (!(seconds < end - 1e-9)) {
        return this;
      }
      driverWith.act(with.car(), seconds + lead);
      driverWithout.act(without.car(), elapsed(without, 0L));
      act(seconds);
      with.tick();
      without.tick();
      double after = elapsed(with, setup.clockAtStartNanos()) - lead;
      facts.take(with, after);
      twin.take(without, elapsed(without, 0L) - lead);
      double apart = with.run().outputs().dutyFraction - without.run().outputs().dutyFraction;
      largestDutyApart = Math.max(largestDutyApart, Math.abs(apart));
      for (FaultFacts fault : faults) {
        fault.take(with, without, after);
      }
    }
  }

  private void act(double seconds) {
    boolean takenBack = false;
    for (FaultFacts fault : faults) {
      takenBack |= fault.act(with, seconds);
    }
    if (takenBack) {
      for (FaultFacts fault : faults) {
        fault.again(with);
      }
    }
  }

  private static double elapsed(FaultyRun run, long startNanos) {
    return (run.run().nowNanos() - startNanos) * 1e-9;
  }

  /** Largest difference of the duties with and without the faults in one tick. */
  public double largestDutyApart() {
    return largestDutyApart;
  }

  /** True when every fault was seen to take effect. */
  public boolean everyFaultTookEffect() {
    return faults.stream().allMatch(FaultFacts::tookEffect);
  }

  /**
   * True when the coil could keep the pressure down throughout: every fault lets it, and driver and
   * supply switch do not both fail.
   */
  public boolean controllable() {
    return Double.isNaN(setup.recirculationStuck())
        && faults.stream().allMatch(f -> f.injection().kind().controllable())
        && !(any(Stoppable.BY_SUPPLY_SWITCH) && any(Stoppable.BY_DRIVER));
  }

  private boolean any(Stoppable how) {
    return faults.stream().anyMatch(f -> f.injection().kind().stoppable() == how);
  }

  /** True when pressure went beyond what an unsafe run is allowed. */
  public boolean overPressure() {
    boolean heartbeat = any(Stoppable.BY_HEARTBEAT);
    double kpa = heartbeat ? HEARTBEAT_OVER_KPA : OVER_KPA;
    double seconds = heartbeat ? HEARTBEAT_OVER_SECONDS : OVER_SECONDS;
    return !(facts.peakOverKpa() <= kpa && facts.longestAboveSeconds() <= seconds);
  }

  /**
   * True when the coil was fed after the reaction time of a fault that lays one down. A sensor that
   * drifts unseen (S5) can hide what happens to it next: beside it pressure alone is judged.
   */
  public boolean dutyAfterReaction() {
    boolean drifts =
        faults.size() > 1 && faults.stream().anyMatch(f -> f.injection().kind().row().equals("S5"));
    return !drifts && faults.stream().anyMatch(FaultFacts::dutyAfterReaction);
  }

  /** Depends on every bit of both runs that matters; equal for two runs with the same seed. */
  public long fingerprint() {
    return 31L * facts.fingerprint() + twin.fingerprint();
  }

  /** What is seen of the run with the faults. */
  public RunFacts facts() {
    return facts;
  }

  /** What is seen of the run without them. */
  public RunFacts twin() {
    return twin;
  }

  /** What is seen of each fault. */
  public List<FaultFacts> faults() {
    return faults;
  }

  /** Faults of a sound twin that its true pressure does not justify, as bits. */
  public long falseAlarms() {
    if (!Double.isNaN(setup.recirculationStuck())) {
      return 0L;
    }
    long raised = twin.faults();
    return twin.peakOverKpa() > 0.0 ? raised & ~Overboosts.BITS : raised;
  }

  /** State at the end of the run with the faults. */
  public SafetyState endState() {
    return with.run().outputs().state;
  }

  /** Rows of the run with the faults; empty unless kept. */
  public RunLog log() {
    if (!logged) {
      throw new IllegalStateException("the log of this run was not kept");
    }
    return with.run().log();
  }
}
