package org.boostwright.rig.ladder;

import java.util.List;
import org.boostwright.core.ladder.Facts;
import org.boostwright.core.ladder.Rung;
import org.boostwright.core.ladder.Standing;
import org.boostwright.core.settings.Settings;
import org.boostwright.core.state.Permission;
import org.boostwright.rig.result.Severity;

/** Judges recordings for a rung. */
public final class RungProof {
  private RungProof() {}

  /**
   * What the recordings say.
   *
   * @param rung rung to be proven, above the bench
   * @param recordings read with the present settings
   * @param facts says whether the virtual car's recordings count
   */
  public static Checks of(
      Rung rung, List<Recording> recordings, Settings settings, Standing standing, Facts facts) {
    Checks checks = new Checks();
    for (Recording r : recordings) {
      if (r.virtual() != facts.practice()) {
        checks.find(
            "wrong_car",
            Severity.PROBLEM,
            r.name()
                + (r.virtual()
                    ? " is a run of the virtual car and proves nothing about yours."
                    : " is of a real car; practice is driven on the virtual one."),
            r.virtual() ? "use 'stage --practice'" : "leave out --practice");
      }
      permission(rung, r, settings, checks);
    }
    switch (rung) {
      case BENCH -> throw new IllegalArgumentException("the bench has its own proof");
      case CUT_PROVEN -> new IdleChecks(settings, checks).cut(recordings);
      case FIRST_START -> recordings.forEach(r -> new IdleChecks(settings, checks).firstStart(r));
      case SPRING_DRIVE -> new DriveChecks(settings, recordings, checks).spring();
      case FIRST_BOOST -> new DriveChecks(settings, recordings, checks).firstBoost(standing);
      case FULL_TABLE -> new DriveChecks(settings, recordings, checks).fullTable();
      case PRESSURE_FEEDBACK -> new DriveChecks(settings, recordings, checks).feedback();
    }
    return checks;
  }

  /** A recording made with more freedom than the rung has proves another rung. */
  private static void permission(Rung rung, Recording r, Settings settings, Checks checks) {
    Permission p = r.permission();
    double first = settings.valve().commandToDuty().at(Standing.FIRST_BOOST_COMMAND);
    boolean right =
        switch (rung) {
          case BENCH, CUT_PROVEN, FIRST_START -> true;
          case SPRING_DRIVE -> !p.controlAllowed();
          case FIRST_BOOST -> p.controlAllowed() && p.dutyCeilingFraction() <= first;
          case FULL_TABLE -> p.dutyCeilingFraction() >= 1.0 && !p.feedbackAllowed();
          case PRESSURE_FEEDBACK -> p.controlAllowed() && p.feedbackAllowed();
        };
    if (!right) {
      checks.find(
          "wrong_rung",
          Severity.PROBLEM,
          r.name()
              + " was driven with duty up to "
              + Math.round(100.0 * p.dutyCeilingFraction())
              + " %"
              + (p.feedbackAllowed() ? " and feedback" : ", no feedback")
              + ", which is not the rung '"
              + rung.words()
              + "'.",
          rung.next());
    }
  }
}
