package org.boostwright.rig.scenario.fault;

import org.boostwright.core.Controller;
import org.boostwright.core.Outputs;
import org.boostwright.core.monitor.FaultCode;
import org.boostwright.core.monitor.Reaction;
import org.boostwright.core.settings.Settings;
import org.boostwright.core.state.SafetyState;
import org.boostwright.rig.inject.FaultyRun;

/**
 * What is seen of one run tick by tick: pressures over the limit, faults, and the rules that hold
 * in every tick whatever happens.
 *
 * <p>The rules: duty finite, in 0 to 1 and under its ceiling; in a rest state duty 0, channel
 * disabled, coil supply open, heartbeat stopped; rest in the very tick in which a resting fault is
 * confirmed; locked while a locking fault stands; duty rises no faster than 1 per second in the
 * first second of control after a fault.
 */
public final class RunFacts {
  /** A tick less than the core's own second, which ends between two ticks. */
  private static final double RECOVERY_SECONDS = 0.99;


  private static final double RECOVERY_PER_SECOND = 1.0;
  private static final double TICK_SECONDS = Controller.TICK_NANOS * 1e-9;

  private static final long RESTING = bits(Reaction.REST);
  private static final long LOCKING = bits(Reaction.LOCK);

  private final Settings settings;
  private final double limitKpaAbs;

  private double peakKpaAbs;
  private double aboveSeconds;
  private double longestAboveSeconds;
  private boolean everDriven;
  private long fingerprint = 17L;
  private long seen;
  private long findings;
  private String broken = "";
  private double lastDuty;
  private double recoveryLeft;
  private double lastSeconds = Double.NaN;

  RunFacts(Settings settings) {
    this.settings = settings;
    limitKpaAbs = settings.limits().cutoffKpaAbs();
  }

  private static long bits(Reaction least) {
    long bits = 0L;
    for (FaultCode code : FaultCode.values()) {
      if (code.reaction().compareTo(least) >= 0) {
        bits |= code.bit();
      }
    }
    return bits;
  }

  /** Takes one tick, {@code seconds} in the drive's time. */
  void take(FaultyRun run, double seconds) {
    double dt = Double.isNaN(lastSeconds) ? TICK_SECONDS : seconds - lastSeconds;
    lastSeconds = seconds;
    pressure(run.car().mapKpaAbs(), dt);
    if (run.programStands()) {
      return;
    }
    Outputs out = run.run().outputs();
    everDriven |= out.dutyFraction > 0.0;
    fingerprint = mix(mix(fingerprint, out.dutyFraction), run.car().mapKpaAbs());
    fingerprint = 31L * fingerprint + out.activeFaults;
    seen |= out.activeFaults;
    findings |= out.findings;
    rules(out, seconds, dt);
    lastDuty = out.dutyFraction;
  }

  private void pressure(double kpaAbs, double dt) {
    if (!(kpaAbs <= peakKpaAbs)) {
      peakKpaAbs = kpaAbs;
    }
    aboveSeconds = kpaAbs > limitKpaAbs ? aboveSeconds + dt : 0.0;
    longestAboveSeconds = Math.max(longestAboveSeconds, aboveSeconds);
  }

  private void rules(Outputs out, double seconds, double dt) {
    double duty = out.dutyFraction;
    boolean resting = duty == 0.0 && !out.pwmEnabled && !out.coilSupplyClosed;
    SafetyState state = out.state;
    if (!(duty >= 0.0 && duty <= 1.0)) {
      breaks("duty " + duty, seconds);
    }
    if (state != SafetyState.BENCH && out.engineRpm >= 0.0) {
      double ceiling = settings.limits().dutyCeiling().at(out.engineRpm);
      if (!(duty <= Math.max(0.0, ceiling) + 1e-12)) {
        breaks("duty " + duty + " above its ceiling " + ceiling, seconds);
      }
    }
    if (state.isRest() && !(resting && !out.heartbeatPermitted)) {
      breaks("not at rest in " + state.words(), seconds);
    }
    if ((out.activeFaults & RESTING) != 0L && !(state.isRest() && resting)) {
      breaks("not at rest with a resting fault", seconds);
    }
    if ((out.activeFaults & LOCKING) != 0L && state != SafetyState.LOCKED_UNTIL_RESTART) {
      breaks("not locked with a locking fault", seconds);
    }
    if ((out.activeFaults & RESTING) != 0L) {
      recoveryLeft = RECOVERY_SECONDS;
    } else if (state == SafetyState.CONTROLLING && recoveryLeft > 0.0) {
      recoveryLeft -= dt;
      if (!(duty - lastDuty <= RECOVERY_PER_SECOND * dt + 1e-9)) {
        breaks("duty leaps from " + lastDuty + " to " + duty + " after a fault", seconds);
      }
    }
  }

  private void breaks(String what, double seconds) {
    if (broken.isEmpty()) {
      broken = String.format(java.util.Locale.ROOT, "%s at %.3f s", what, seconds);
    }
  }

  private static long mix(long print, double value) {
    return 31L * print + Double.doubleToLongBits(value);
  }

  /** Depends on every bit of duty, true pressure and faults in every tick. */
  public long fingerprint() {
    return fingerprint;
  }

  /** The coil was ever driven. */
  public boolean everDriven() {
    return everDriven;
  }

  /** Highest true manifold pressure, kPa absolute. */
  public double peakKpaAbs() {
    return peakKpaAbs;
  }

  /** Highest true manifold pressure over the limit, kPa; negative below it. */
  public double peakOverKpa() {
    return peakKpaAbs - limitKpaAbs;
  }

  /** Longest time without a break above the limit, s. */
  public double longestAboveSeconds() {
    return longestAboveSeconds;
  }

  /** Faults that were confirmed, as bits. */
  public long faults() {
    return seen;
  }

  /** Findings that were raised, as bits. */
  public long findings() {
    return findings;
  }

  /** The first rule that was broken, in words; empty when none was. */
  public String broken() {
    return broken;
  }
}
