package org.boostwright.rig.scenario.fault;

import org.boostwright.core.Outputs;
import org.boostwright.core.state.SafetyState;
import org.boostwright.rig.inject.FaultyRun;
import org.boostwright.rig.inject.Site;

/**
 * What is seen of one fault: when it took effect, was reported, came to rest, and duty after that.
 */
public final class FaultFacts {
  private static final double BOOSTED_KPA = 10.0;

  private final Injection injection;
  private double effectSeconds = Double.NaN;
  private double seenSeconds;
  private double reportSeconds = Double.NaN;
  private double restSeconds = Double.NaN;
  private boolean controlledBoost;
  private boolean dutyAfter;
  private long before;
  private boolean begun;
  private boolean on;

  FaultFacts(Injection injection) {
    this.injection = injection;
  }

  /**
   * Before a tick: brings the fault about or takes it back.
   *
   * @return true when it was taken back
   */
  boolean act(FaultyRun with, double seconds) {
    if (!begun && seconds >= injection.fromSeconds() - 1e-9) {
      begun = true;
      on = !injection.kind().momentary();
      Outputs out = with.run().outputs();
      before = out.activeFaults;
      controlledBoost =
          out.state == SafetyState.CONTROLLING
              && out.mapKpaAbs > out.ambientKpaAbs + BOOSTED_KPA
              && with.coilFed();
      injection.kind().on().set(with, injection.amount());
    } else if (on && seconds >= injection.untilSeconds() - 1e-9) {
      on = false;
      injection.kind().off().clear(with);
      return true;
    }
    return false;
  }

  /** Brings it about again where it stands: another fault at the same place was taken back. */
  void again(FaultyRun with) {
    if (on) {
      injection.kind().on().set(with, injection.amount());
    }
  }

  /** After a tick. */
  void take(FaultyRun with, FaultyRun without, double seconds) {
    if (!begun) {
      return;
    }
    if (Double.isNaN(effectSeconds)) {
      if (!Difference.at(injection.kind().site(), with, without)) {
        return;
      }
      effectSeconds = seconds;
      seenSeconds = seconds;
    }
    // A program that stands sees nothing; until it runs again the heartbeat has to keep the coil
    // off.
    if (with.programStands() && injection.kind().site() != Site.TIME) {
      seenSeconds = seconds;
    }
    Outputs out = with.run().outputs();
    long fresh = out.activeFaults & ~before;
    if (Double.isNaN(reportSeconds)
        && !with.programStands()
        && (fresh & injection.kind().allowedBits()) != 0L) {
      reportSeconds = seconds;
    }
    boolean fed = with.coilFed();
    if (!fed && Double.isNaN(restSeconds)) {
      restSeconds = seconds;
    }
    double within = injection.kind().restWithinSeconds();
    boolean holds = on && (controlledBoost || !injection.kind().onlyUnderBoost());
    if (holds && fed && within >= 0.0 && seconds > seenSeconds + within + 1e-9) {
      dutyAfter = true;
    }
  }

  /** What was injected. */
  public Injection injection() {
    return injection;
  }

  /** True once it was seen to take effect. */
  public boolean tookEffect() {
    return !Double.isNaN(effectSeconds);
  }

  /** When it took effect, s of the drive's time; NaN when it never did. */
  public double effectSeconds() {
    return effectSeconds;
  }

  /** From the fault taking effect to the first fitting report, s; NaN when there was none. */
  public double detectionSeconds() {
    return reportSeconds - effectSeconds;
  }

  /** From the fault taking effect to the coil without current, s; NaN when it never was. */
  public double reactionSeconds() {
    return restSeconds - effectSeconds;
  }

  /** Boost was controlled and the coil fed in the moment of the fault. */
  public boolean controlledBoost() {
    return controlledBoost;
  }

  /** The coil was fed later than the time laid down, while the fault stood. */
  public boolean dutyAfterReaction() {
    return dutyAfter;
  }
}
