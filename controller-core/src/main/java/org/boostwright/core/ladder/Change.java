package org.boostwright.core.ladder;

import java.util.Locale;
import java.util.Set;

/** Work on the car that no settings file shows; a person reports it and proofs fall. */
public enum Change {
  VALVE("the valve was replaced or opened", Rung.BENCH, Rung.SPRING_DRIVE),
  HOSE("a hose between turbo, valve and actuator was replaced", Rung.BENCH, Rung.SPRING_DRIVE),
  ACTUATOR(
      "actuator, spring or wastegate was replaced or adjusted", Rung.BENCH, Rung.SPRING_DRIVE),
  PRESSURE_SENSOR(
      "the pressure sensor or its hose was replaced",
      Rung.BENCH,
      Rung.CUT_PROVEN,
      Rung.FIRST_START,
      Rung.SPRING_DRIVE),
  OTHER_SENSOR(
      "throttle, speed or temperature sensor was replaced", Rung.FIRST_START, Rung.SPRING_DRIVE),
  WIRING(
      "wiring, driver or computer was replaced",
      Rung.BENCH,
      Rung.CUT_PROVEN,
      Rung.FIRST_START,
      Rung.SPRING_DRIVE),
  ENGINE_CUT("engine management or engine cut was changed", Rung.CUT_PROVEN),
  TURBO(
      "turbo, exhaust, intercooler or intake was changed", Rung.FIRST_START, Rung.SPRING_DRIVE),
  ENGINE("the engine was opened", Rung.FIRST_START, Rung.SPRING_DRIVE),
  FUEL("fuel, injectors or ignition were changed", Rung.FIRST_BOOST);

  private final String words;
  private final Set<Rung> rungs;

  Change(String words, Rung... rungs) {
    this.words = words;
    this.rungs = Set.of(rungs);
  }

  /** As typed and as written in files. */
  public String id() {
    return name().toLowerCase(Locale.ROOT);
  }

  /** What was done. */
  public String words() {
    return words;
  }

  /**
   * Whether it voids a rung: those named, and with the spring drive or the first boost everything
   * above.
   */
  public boolean voids(Rung rung) {
    if (rungs.contains(rung)) {
      return true;
    }
    boolean drives = rungs.contains(Rung.SPRING_DRIVE) || rungs.contains(Rung.FIRST_BOOST);
    return drives && rung.compareTo(Rung.FIRST_BOOST) >= 0;
  }
}
