package org.boostwright.rig.scenario.file;

import java.util.List;
import org.boostwright.core.state.SafetyState;
import org.boostwright.rig.scenario.fault.Drive;
import org.boostwright.rig.scenario.fault.Injection;
import org.jspecify.annotations.Nullable;

/**
 * One scenario as its file says it.
 *
 * @param file name of the file, for messages
 * @param id stable name
 * @param row row of the fault list
 * @param text what it shows, for people
 * @param car the car
 * @param drive what the driver does
 * @param faults what goes wrong when
 * @param expect what must happen
 * @param twins variations just below a threshold, which must stay silent
 */
public record Scenario(
    String file,
    String id,
    String row,
    String text,
    Car car,
    Drive drive,
    List<Injection> faults,
    Expect expect,
    List<Twin> twins) {

  /**
   * Which car.
   *
   * @param seeds one run for each
   * @param altitudeM altitude, m
   * @param airC outside air, degC
   * @param tolerance 0 = exactly the project car, 1 = anywhere within its tolerances
   * @param recirculationStuck recirculation valve stuck at 0 (shut) to 1 (open); NaN = sound
   * @param settings changes to the settings, each {@code key=value}
   * @param proven every proof is given; otherwise none
   * @param link inputs come over the serial link
   * @param clockRollsOver the monotonic clock runs over its highest number during the drive
   */
  public record Car(
      List<Long> seeds,
      double altitudeM,
      double airC,
      double tolerance,
      double recirculationStuck,
      List<String> settings,
      boolean proven,
      boolean link,
      boolean clockRollsOver) {}

  /**
   * What must happen. The rules that hold in every tick are checked besides.
   *
   * @param faults every one must be confirmed
   * @param anyOf at least one must be confirmed; empty = none need be
   * @param allowed may be confirmed besides
   * @param findings every one must be raised
   * @param restWithinSeconds from taking effect to the coil without current, s; NaN = not asked
   * @param stateAtEnd state after the last tick; null = not asked
   * @param peakOverLimitKpa highest true pressure over the limit allowed, kPa; NaN = not asked
   * @param peakOverLimitAtLeastKpa lowest peak that proves the danger is real, kPa; NaN = not asked
   * @param dutyApartAtMost largest difference of duty from the run without the fault; NaN
   * @param neverDriven the coil is never fed
   * @param invariants which rules are checked
   */
  public record Expect(
      long faults,
      long anyOf,
      long allowed,
      long findings,
      double restWithinSeconds,
      @Nullable SafetyState stateAtEnd,
      double peakOverLimitKpa,
      double peakOverLimitAtLeastKpa,
      double dutyApartAtMost,
      boolean neverDriven,
      List<Invariant> invariants) {}

  /** Rules that a scenario can have checked. */
  public enum Invariant {
    /** The rules of every tick, see {@code RunFacts}. */
    EVERY_TICK("every_tick"),
    /** Not an unsafe run: pressure and duty after the reaction time. */
    SAFE("safe"),
    /** The run without the fault raises nothing. */
    SILENT_TWIN("silent_twin"),
    /** The same seed gives the same bytes. */
    SAME_BYTES("same_bytes");

    private final String key;

    Invariant(String key) {
      this.key = key;
    }

    /** Name in the file. */
    public String key() {
      return key;
    }
  }

  /**
   * A variation of the first fault that must raise nothing.
   *
   * @param text what it is
   * @param fault the fault instead of the scenario's first
   * @param allowed faults that may be confirmed all the same, as bits
   */
  public record Twin(String text, Injection fault, long allowed) {}
}
