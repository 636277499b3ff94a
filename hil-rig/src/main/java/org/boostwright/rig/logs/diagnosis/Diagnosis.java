package org.boostwright.rig.logs.diagnosis;

import java.util.ArrayList;
import java.util.List;
import java.util.Locale;
import org.boostwright.core.settings.Settings;
import org.boostwright.rig.logs.pulls.Pull;
import org.boostwright.rig.logs.pulls.PullFlaw;
import org.boostwright.rig.plant.PlantParams;

/**
 * The likely cause of what a pull shows; empty when it went as a sound car's would.
 *
 * @param suspicions most likely first
 * @param heldBack how the duty ceiling held boost back, which is no fault of the car; empty when it
 *     did not
 */
public record Diagnosis(List<Suspicion> suspicions, String heldBack) {
  private static final double AMBIENT_KPA = 3.0;
  private static final double SHUT_SHARE = 0.15;
  private static final double SLOW_SHARE = 0.55;
  private static final double LEAK_KPA = 15.0;
  private static final double NO_EFFECT_SHARE = 0.10;
  private static final double WORTH_KPA = 15.0;
  private static final double REST_KPA = 7.0;
  private static final double SPIKE_KPA = 6.5;
  private static final double SPIKE_OVER_LATER_KPA = 4.0;
  private static final double UNEXPLAINED_KPA = 10.0;
  private static final double CREEP_SLOPE_KPA = 1.8;
  private static final double LOCAL_DUTY = 0.050;
  private static final double HELD_SHARE = 0.25;
  private static final double HELD_KPA = 3.0;

  /**
   * One suspicion with its evidence.
   *
   * @param cause what is suspected
   * @param evidence numbers that speak for it
   */
  public record Suspicion(Cause cause, String evidence) {}

  /** Copies the list. */
  public Diagnosis {
    suspicions = List.copyOf(suspicions);
  }

  /** A log can be diagnosed: duty and target recorded, pressure often enough. */
  public static boolean possible(Pull pull) {
    return pull.log().controlled()
        && !pull.flaws().contains(PullFlaw.TOO_SHORT)
        && !pull.flaws().contains(PullFlaw.SAMPLED_TOO_SLOWLY)
        && !pull.flaws().contains(PullFlaw.THROTTLE_LIFTED)
        && !pull.flaws().contains(PullFlaw.GEAR_CHANGED);
  }

  /**
   * Judges a pull.
   *
   * @param reference a sound car like this one
   * @param trueAmbientKpaAbs ambient pressure from elsewhere, kPa absolute; NaN when not known
   */
  public static Diagnosis of(
      Pull pull, Settings settings, PlantParams reference, double trueAmbientKpaAbs) {
    Symptoms s = Symptoms.of(pull, settings, reference, trueAmbientKpaAbs);
    List<Suspicion> found = new ArrayList<>();
    car(found, s);
    settings(found, s);
    return new Diagnosis(found, heldBack(s));
  }

  private static String heldBack(Symptoms s) {
    return s.ceilingShare() > HELD_SHARE && s.ceilingShortKpa() > HELD_KPA
        ? String.format(
            Locale.ROOT,
            "at its ceiling for %.0f %% of settled boost, %.1f kPa under target there",
            100.0 * s.ceilingShare(),
            s.ceilingShortKpa())
        : "";
  }

  /** What is wrong with the car: pressure is not what a sound one would have made of this duty. */
  private static void car(List<Suspicion> found, Symptoms s) {
    if (Math.abs(s.ambientErrorKpa()) > AMBIENT_KPA) {
      add(found, Cause.SENSOR_OFFSET, "ambient reads %+.1f kPa off", s.ambientErrorKpa());
    }
    if (s.overboost() && s.belowShutKpa() < SHUT_SHARE * s.springBelowShutKpa()) {
      add(
          found,
          Cause.HOSE_OFF,
          "at rest boost is %.1f kPa from that of a gate held shut, where the spring is %.1f below",
          s.belowShutKpa(),
          s.springBelowShutKpa());
      return;
    }
    if (s.overboost() && s.atRestKpa() > REST_KPA) {
      add(
          found,
          Cause.CREEP,
          "at rest boost is %.1f kPa above what the spring explains",
          s.atRestKpa());
      return;
    }
    boolean slow = s.riseShare() < SLOW_SHARE;
    double unexplained = Double.isNaN(s.highKpa()) ? s.midKpa() : s.highKpa();
    if (slow) {
      Cause cause = unexplained < -LEAK_KPA ? Cause.LEAK : Cause.SLOW_SPOOL;
      add(
          found,
          cause,
          "boost rises at %.0f %% of a sound car's pace, and is %+.1f kPa off what duty explains"
              + " later",
          100.0 * s.riseShare(),
          unexplained);
      return;
    }
    if (s.explainedOverSpringKpa() > WORTH_KPA
        && s.overSpringKpa() < NO_EFFECT_SHARE * s.explainedOverSpringKpa()) {
      add(
          found,
          Cause.NO_AUTHORITY,
          "boost is %.1f kPa above the spring's where the duty should make it %.1f",
          s.overSpringKpa(),
          s.explainedOverSpringKpa());
      return;
    }
    double slope = s.highKpa() - s.midKpa();
    if (unexplained > UNEXPLAINED_KPA) {
      Cause cause = slope > CREEP_SLOPE_KPA ? Cause.CREEP : Cause.DUTY_WINDOW;
      add(found, cause, "boost is %+.1f kPa above what spring and duty explain", unexplained);
    } else if (unexplained < -UNEXPLAINED_KPA) {
      Cause cause = s.sagOffKpa() < s.windowOffKpa() ? Cause.SAG : Cause.DUTY_WINDOW;
      add(
          found,
          cause,
          "boost is %+.1f kPa off what spring and duty explain; a gate pushed open by the exhaust"
              + " leaves %.1f kPa of it over engine speed, a valve that switches late %.1f; duty at"
              + " its top for %.0f %% of the last 400 1/min",
          unexplained,
          s.sagOffKpa(),
          s.windowOffKpa(),
          100.0 * s.dutyAtTop());
    }
  }

  /** What is wrong with settings on a car that answers as it should. */
  private static void settings(List<Suspicion> found, Symptoms s) {
    if (s.swing().hunting()) {
      add(
          found,
          Cause.HUNTING,
          "%d turning points, %.1f kPa from one to the next",
          s.swing().turns(),
          s.swing().height());
      return;
    }
    if (s.trimSwing().hunting()) {
      add(
          found,
          Cause.HUNTING,
          "duty turns %d times, %.1f %% from one to the next",
          s.trimSwing().turns(),
          s.trimSwing().height());
      return;
    }
    boolean spike =
        s.afterHandoverKpa() > SPIKE_KPA
            && !(s.afterHandoverKpa() - s.laterKpa() < SPIKE_OVER_LATER_KPA);
    if (spike) {
      add(
          found,
          Cause.SPIKE,
          "%.1f kPa over target right after spooling, %.1f a second later",
          s.afterHandoverKpa(),
          s.laterKpa());
    }
    if (s.overboost()) {
      add(found, Cause.OVERBOOST_CUT, "cut at %.1f kPa over target", s.overAtTripKpa());
    }
    if (Math.abs(s.localDuty()) > LOCAL_DUTY) {
      add(
          found,
          Cause.TABLE_HOLE,
          "the duty needed leaves a straight line by %+.1f %% at one place",
          100.0 * s.localDuty());
    }
  }

  private static void add(List<Suspicion> found, Cause cause, String evidence, Object... values) {
    found.add(new Suspicion(cause, String.format(Locale.ROOT, evidence, values)));
  }
}
