package org.boostwright.core.monitor;

/**
 * Every watch of the controller as data: what it is called, how severe it is, how fast it counts
 * and how it clears.
 *
 * <p>Counting: up {@link #upCount} for a bad sample, down 1 for a good one, confirmed at {@link
 * #CONFIRM_AT}, so that an intermittent contact still matures. The {@code id} is stable and stands
 * in logs, JSON and tests; {@code requirement} is the row of the fault list it answers.
 */
public enum FaultCode {
  INTERNAL("internal_error", "S10", Reaction.LOCK, ClearRule.KEY_OFF, 30, 0),
  TICK_LATE("ticks_late", "T1", Reaction.REST, ClearRule.GOOD_FOR_CLEAR_TIME, 10, 2.0),
  MAP_SIGNAL_LOW("map_signal_low", "S1 S2", Reaction.REST, ClearRule.GOOD_FOR_CLEAR_TIME, 10, 2.0),
  MAP_SIGNAL_HIGH(
      "map_signal_high", "S1 S3", Reaction.REST, ClearRule.GOOD_FOR_CLEAR_TIME, 10, 2.0),
  MAP_NOT_A_NUMBER(
      "map_not_a_number", "S10", Reaction.REST, ClearRule.GOOD_FOR_CLEAR_TIME, 10, 2.0),
  MAP_STALE("map_stale", "S9 B1", Reaction.REST, ClearRule.GOOD_FOR_CLEAR_TIME, 30, 2.0),
  MAP_FROZEN("map_frozen", "S4", Reaction.REST, ClearRule.GOOD_FOR_CLEAR_TIME, 10, 2.0),
  MAP_JUMPS("map_jumps", "S8", Reaction.REST, ClearRule.GOOD_FOR_CLEAR_TIME, 10, 2.0),
  MAP_NOISY("map_noisy", "S6", Reaction.REST, ClearRule.GOOD_FOR_CLEAR_TIME, 10, 2.0),
  MAP_AMBIENT_MISMATCH("map_ambient_mismatch", "S5", Reaction.LOCK, ClearRule.KEY_OFF, 10, 0),
  MAP_FALL_UNEXPLAINED(
      "map_fall_unexplained", "S11", Reaction.REST, ClearRule.THROTTLE_RELEASED, 10, 2.0),
  OVERBOOST("overboost", "P1", Reaction.REST, ClearRule.THROTTLE_RELEASED, 10, 2.0),
  OVERBOOST_REPEATED("overboost_repeated", "P1", Reaction.LOCK, ClearRule.KEY_OFF, 30, 0),
  VALVE_NO_EFFECT("valve_no_effect", "P2 P4", Reaction.LOCK, ClearRule.KEY_OFF, 10, 0),
  COIL_FEEDBACK("coil_feedback", "E1", Reaction.LOCK, ClearRule.KEY_OFF, 10, 0),
  OUTPUTS_WRONG("outputs_wrong", "E1 E3", Reaction.LOCK, ClearRule.KEY_OFF, 10, 0),
  THROTTLE_SIGNAL("throttle_signal", "S12", Reaction.REST, ClearRule.GOOD_FOR_CLEAR_TIME, 10, 2.0),
  THROTTLE_STALE("throttle_stale", "S9 S12", Reaction.REST, ClearRule.GOOD_FOR_CLEAR_TIME, 30, 2.0),
  THROTTLE_AGAINST_PEDAL(
      "throttle_against_pedal", "S12", Reaction.REST, ClearRule.GOOD_FOR_CLEAR_TIME, 10, 2.0),
  PEDAL_SIGNAL("pedal_signal", "S12", Reaction.SUBSTITUTE, ClearRule.GOOD_FOR_CLEAR_TIME, 10, 2.0),
  ENGINE_SPEED_LOST(
      "engine_speed_lost", "S13", Reaction.REST, ClearRule.GOOD_FOR_CLEAR_TIME, 10, 2.0),
  ENGINE_SPEED_JUMPS(
      "engine_speed_jumps", "S13", Reaction.REST, ClearRule.GOOD_FOR_CLEAR_TIME, 10, 2.0),
  SUPPLY_LOW("supply_low", "E2", Reaction.REST, ClearRule.GOOD_FOR_CLEAR_TIME, 10, 1.0),
  SUPPLY_SIGNAL(
      "supply_signal", "S12", Reaction.SUBSTITUTE, ClearRule.GOOD_FOR_CLEAR_TIME, 10, 2.0),
  PERMIT_OPEN("permit_open", "P1", Reaction.REST, ClearRule.THROTTLE_RELEASED, 30, 0.5),
  INTAKE_AIR_SIGNAL(
      "intake_air_signal", "S12", Reaction.SUBSTITUTE, ClearRule.GOOD_FOR_CLEAR_TIME, 10, 2.0),
  BAROMETER_SIGNAL(
      "barometer_signal", "S14", Reaction.SUBSTITUTE, ClearRule.GOOD_FOR_CLEAR_TIME, 10, 2.0),
  AMBIENT_IN_DOUBT(
      "ambient_in_doubt", "S14", Reaction.REPORT, ClearRule.GOOD_FOR_CLEAR_TIME, 10, 2.0),
  SPOOL_NOT_RISING(
      "spool_not_rising", "P3", Reaction.REPORT, ClearRule.GOOD_FOR_CLEAR_TIME, 30, 2.0),
  TARGET_OUT_OF_REACH(
      "target_out_of_reach", "P7", Reaction.REPORT, ClearRule.GOOD_FOR_CLEAR_TIME, 30, 0.5),
  TARGET_LIMITED("target_limited", "P7", Reaction.REPORT, ClearRule.GOOD_FOR_CLEAR_TIME, 30, 0.1),
  MAP_FLAT_AT_AMBIENT(
      "map_flat_at_ambient", "S11", Reaction.REST, ClearRule.THROTTLE_RELEASED, 30, 2.0);

  /** A fault whose count reaches this is confirmed. */
  public static final int CONFIRM_AT = 30;

  /** Number of faults; they fit the bits of one long. */
  public static final int COUNT = values().length;

  private final String id;
  private final String requirement;
  private final Reaction reaction;
  private final ClearRule clearRule;
  private final int upCount;
  private final double clearSeconds;

  FaultCode(
      String id,
      String requirement,
      Reaction reaction,
      ClearRule clearRule,
      int upCount,
      double clearSeconds) {
    this.id = id;
    this.requirement = requirement;
    this.reaction = reaction;
    this.clearRule = clearRule;
    this.upCount = upCount;
    this.clearSeconds = clearSeconds;
  }

  /** Stable snake_case name. */
  public String id() {
    return id;
  }

  /** Rows of the fault list this watch answers, separated by blanks. */
  public String requirement() {
    return requirement;
  }

  /** What happens when it is confirmed. */
  public Reaction reaction() {
    return reaction;
  }

  /** When it is taken back. */
  public ClearRule clearRule() {
    return clearRule;
  }

  /** Added to the count for each bad sample. */
  public int upCount() {
    return upCount;
  }

  /** How long good samples without a bad one must span before it clears, s. */
  public double clearSeconds() {
    return clearSeconds;
  }

  /** The bit of this fault in a set of faults. */
  public long bit() {
    return 1L << ordinal();
  }
}
