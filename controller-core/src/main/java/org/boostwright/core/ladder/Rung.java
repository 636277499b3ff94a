package org.boostwright.core.ladder;

import java.util.List;
import java.util.Locale;
import java.util.Set;

/**
 * The rungs, lowest first. Each is climbed once all below it hold; what its proof depends on voids
 * it.
 */
public enum Rung {
  /** The valve is proven on the bench. */
  BENCH(
      "bench",
      "run 'bench' on the car's own valve and driver, then 'stage --sign bench'",
      false,
      List.of(
          "Bench air: regulator at 80 to 100 kPa (12 to 14 psi), relief valve at 150 kPa (22 psi)"
              + " or below, eye protection, hoses secured.",
          "Battery off while you wire; a fuse of 2 to 3 A in the coil feed; the clamp fitted before"
              + " the first click. The coil gets hot and the rod pinches."),
      SettingsPart.HARDWARE),
  /** The overboost limit is seen to act, and the engine cut with it. */
  CUT_PROVEN(
      "cut proven",
      "let the engine idle, run 'drive --cut-test' until it stalls (or the trip is reported), then"
          + " 'drive' again with the limit restored; give both recordings to 'stage --log'",
      false,
      List.of(
          "Standing car, handbrake on, gearbox in neutral, open air: exhaust gas kills.",
          "The cut must stop every cylinder alike: never the fuel pump alone, never the spark"
              + " alone.",
          "On the road a cut takes the power away in the middle of a bend."),
      SettingsPart.HARDWARE,
      SettingsPart.CAR,
      SettingsPart.PROTECTION),
  /** The engine idles with the coil held off and every signal alive. */
  FIRST_START(
      "first start",
      "start and idle for a minute with 'drive' running, blip the throttle twice, then give the"
          + " recording to 'stage --log'",
      true,
      List.of(
          "Standing car, handbrake on, neutral, open air. Keep hands and hoses off belts, fan and"
              + " exhaust.",
          "Listen for leaks, look for fuel and oil before you go on; a fire extinguisher at hand."),
      SettingsPart.HARDWARE,
      SettingsPart.SENSORS,
      SettingsPart.CAR),
  /** What the spring alone gives, measured on a full-throttle pull with the coil held off. */
  SPRING_DRIVE(
      "spring drive",
      "one full-throttle pull in third gear from 2000 to 2500 rpm up with the coil held off, then"
          + " give the recording to 'stage --log'",
      true,
      List.of(
          "Spring pressure must already be safe for fuel, ignition and engine: every failure ends"
              + " there.",
          "A passenger reads, the driver drives; dynamometer or closed road. Coolant at 80 degC"
              + " first.",
          "Lift at once if the gauge passes the overboost limit: with the coil off only your foot"
              + " and the engine cut can stop it."),
      SettingsPart.HARDWARE,
      SettingsPart.SENSORS,
      SettingsPart.CAR),
  /** A little duty gives a little more boost. */
  FIRST_BOOST(
      "first boost",
      "one pull with the duty held low, no feedback, then give the recording to 'stage --log'",
      true,
      List.of(
          "Fuel and ignition must be ready for more than spring pressure; watch mixture and knock:"
              + " this program sees neither.",
          "Know where the spring-only switch is, and use it.",
          "One pull, then two to three minutes to cool."),
      SettingsPart.HARDWARE,
      SettingsPart.SENSORS,
      SettingsPart.CAR,
      SettingsPart.PROTECTION,
      SettingsPart.REACH),
  /** Base duty alone meets the target, three times. */
  FULL_TABLE(
      "full table",
      "three like pulls on base duty, without feedback; correct the table between them, one change"
          + " at a time; then give the three recordings to 'stage --log'",
      true,
      List.of(
          "Raise by 2 to 5 % duty at a time, one change, three repeats within 3 to 5 kPa.",
          "Tick mixture, knock and fuel pressure after each pull, or do not raise.",
          "Two to three minutes of gentle driving between pulls: heat makes knock."),
      SettingsPart.HARDWARE,
      SettingsPart.SENSORS,
      SettingsPart.CAR,
      SettingsPart.PROTECTION,
      SettingsPart.REACH,
      SettingsPart.TABLES),
  /** The pressure feedback settles on the target, three times. */
  PRESSURE_FEEDBACK(
      "pressure feedback",
      "three pulls with the feedback on, then give the three recordings to 'stage --log'",
      true,
      List.of(
          "The feedback hides a hose that begins to leak by adding duty: look at the trim, not only"
              + " at the pressure.",
          "A wrong gain swings: lift at the second swing."),
      SettingsPart.values());

  /**
   * Overboost limit of a cut test, kPa absolute: below every idle pressure (common practice: 25 to
   * 50) and at the low end of the usual sensors.
   */
  public static final double CUT_TEST_LIMIT_KPA_ABS = 20.0;

  private final String words;
  private final String next;
  private final boolean skippable;
  private final List<String> cautions;
  private final Set<SettingsPart> parts;

  Rung(
      String words,
      String next,
      boolean skippable,
      List<String> cautions,
      SettingsPart... parts) {
    this.words = words;
    this.next = next;
    this.skippable = skippable;
    this.cautions = cautions;
    this.parts = Set.of(parts);
  }

  /** As written in files and JSON. */
  public String id() {
    return name().toLowerCase(Locale.ROOT);
  }

  /** Its name for people. */
  public String words() {
    return words;
  }

  /** What to do to climb it. */
  public String next() {
    return next;
  }

  /** What to read before; never empty. */
  public List<String> cautions() {
    return cautions;
  }

  /** Settings whose change voids its proof. */
  public Set<SettingsPart> parts() {
    return parts;
  }

  /**
   * A new bench proof voids it: for the bench the hoses come off, so what was driven before says
   * little.
   */
  public boolean tiedToBench() {
    return this == BENCH || compareTo(SPRING_DRIVE) >= 0;
  }

  /** A person may skip it in words; never the two that decide whether anything can be stopped. */
  public boolean skippable() {
    return skippable;
  }
}
