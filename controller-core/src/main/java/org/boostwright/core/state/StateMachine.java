package org.boostwright.core.state;

import org.boostwright.core.monitor.Reaction;

/**
 * The safety state machine.
 *
 * <p>One step per tick from facts that were all established before it. Every state reaches a rest
 * state within the tick in which a resting reaction is confirmed; {@code controlling} is entered
 * only from {@code ready}, and {@code ready} only with everything in {@link Waiting} satisfied.
 */
public final class StateMachine {
  private SafetyState state = SafetyState.RESTING;
  private Waiting waiting = Waiting.KEY;

  /**
   * Decides the state of this tick.
   *
   * @param worst most severe reaction of the confirmed faults
   * @param missing most basic thing that is missing before ready, {@link Waiting#NOTHING} if none
   * @param demand the driver and the tables ask for boost above the spring
   * @param bench bench state asked for
   * @param engineStopped engine known to be stopped
   */
  public void update(
      Reaction worst, Waiting missing, boolean demand, boolean bench, boolean engineStopped) {
    if (worst == Reaction.LOCK) {
      enter(SafetyState.LOCKED_UNTIL_RESTART, Waiting.FAULT);
    } else if (worst == Reaction.REST) {
      enter(SafetyState.HELD_AT_SPRING, Waiting.FAULT);
    } else if (bench && engineStopped) {
      enter(SafetyState.BENCH, Waiting.NOTHING);
    } else if (missing != Waiting.NOTHING) {
      enter(SafetyState.RESTING, missing);
    } else if (state == SafetyState.READY || state == SafetyState.CONTROLLING) {
      enter(
          demand ? SafetyState.CONTROLLING : SafetyState.READY,
          demand ? Waiting.NOTHING : Waiting.DEMAND);
    } else {
      enter(SafetyState.READY, Waiting.DEMAND);
    }
  }

  private void enter(SafetyState next, Waiting reason) {
    state = next;
    waiting = reason;
  }

  /** To the locked state at once, from anywhere. */
  public void lock() {
    enter(SafetyState.LOCKED_UNTIL_RESTART, Waiting.FAULT);
  }

  /** Current state. */
  public SafetyState state() {
    return state;
  }

  /** What keeps it from going further. */
  public Waiting waiting() {
    return waiting;
  }
}
