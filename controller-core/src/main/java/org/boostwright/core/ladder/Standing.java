package org.boostwright.core.ladder;

import java.util.List;
import org.boostwright.core.settings.ValveSettings;
import org.boostwright.core.state.Permission;
import org.jspecify.annotations.Nullable;

/**
 * How far a car got: the state of every rung, lowest first, and what follows.
 *
 * @param rungs every rung in order
 */
public record Standing(List<RungState> rungs) {
  /**
   * First boost: share of the valve's way, 0 to 1. The actuator still sees three quarters of the
   * boost, so that pressure stays within a third above the spring's (gauge), where common practice
   * begins.
   */
  public static final double FIRST_BOOST_COMMAND = 0.25;

  /**
   * Copies the list.
   *
   * @throws IllegalArgumentException when it does not hold every rung in order
   */
  public Standing {
    rungs = List.copyOf(rungs);
    if (rungs.size() != Rung.values().length) {
      throw new IllegalArgumentException("every rung once");
    }
    for (Rung rung : Rung.values()) {
      if (rungs.get(rung.ordinal()).rung() != rung) {
        throw new IllegalArgumentException("rungs in order");
      }
    }
  }

  /** State of one rung. */
  public RungState of(Rung rung) {
    return rungs.get(rung.ordinal());
  }

  /** The lowest rung that does not hold; null when all do. */
  public @Nullable Rung next() {
    for (RungState state : rungs) {
      if (!state.holds()) {
        return state.rung();
      }
    }
    return null;
  }

  /** True when a rung and everything below it holds. */
  public boolean reached(Rung rung) {
    Rung next = next();
    return next == null || rung.compareTo(next) < 0;
  }

  /**
   * How far the runtime may go: far enough to climb the next rung, and no further.
   *
   * @param valve says what the low duty of the first boost is
   */
  public Permission permission(ValveSettings valve) {
    if (!reached(Rung.SPRING_DRIVE)) {
      return Permission.NONE;
    }
    if (!reached(Rung.FIRST_BOOST)) {
      return new Permission(true, valve.commandToDuty().at(FIRST_BOOST_COMMAND), false);
    }
    return reached(Rung.FULL_TABLE) ? Permission.FULL : new Permission(true, 1.0, false);
  }

  /** One sentence: where the car stands and why. */
  public String words() {
    Rung next = next();
    if (next == null) {
      return "every rung is proven";
    }
    String allowed =
        switch (next) {
          case BENCH, CUT_PROVEN, FIRST_START, SPRING_DRIVE -> "the coil stays off";
          case FIRST_BOOST -> "duty is held low, no feedback";
          case FULL_TABLE -> "base duty without feedback";
          case PRESSURE_FEEDBACK -> "base duty with feedback, to be proven";
        };
    return "next rung: " + next.words() + " (" + of(next).words() + "); " + allowed;
  }
}
