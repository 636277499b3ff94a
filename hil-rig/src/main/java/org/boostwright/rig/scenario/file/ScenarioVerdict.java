package org.boostwright.rig.scenario.file;

import java.util.List;

/**
 * What came of one scenario with one seed.
 *
 * @param scenario the scenario
 * @param seed the seed
 * @param variation empty for the scenario itself, else the text of the twin
 * @param status what became of it
 * @param failures what was not as it must be, in words
 * @param detectionSeconds from the first fault taking effect to its report, s; NaN = none
 * @param reactionSeconds from the first fault taking effect to the coil without current, s; NaN
 * @param peakOverLimitKpa highest true pressure over the limit, kPa
 * @param faults faults confirmed, as bits
 */
public record ScenarioVerdict(
    Scenario scenario,
    long seed,
    String variation,
    Status status,
    List<String> failures,
    double detectionSeconds,
    double reactionSeconds,
    double peakOverLimitKpa,
    long faults) {

  /** Four results, not two. */
  public enum Status {
    PASSED,
    FAILED,
    /** The fault never took effect: the run says nothing. */
    INVALID
  }

  /** Name of the run: scenario, variation and seed. */
  public String name() {
    return scenario.id()
        + (variation.isEmpty() ? "" : " (" + variation + ")")
        + ", seed "
        + seed;
  }
}
