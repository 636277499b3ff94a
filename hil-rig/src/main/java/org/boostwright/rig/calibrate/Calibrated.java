package org.boostwright.rig.calibrate;

import java.util.List;

/**
 * What came of calibrating one thing.
 *
 * @param what what was calibrated, for people
 * @param outcome what became of it
 * @param text what was found
 * @param next what to do; empty when nothing
 * @param key settings key to write; empty when nothing is to be written
 * @param values its new values; one for a plain number
 */
public record Calibrated(
    String what, Outcome outcome, String text, String next, String key, List<Double> values) {

  /** What became of it. */
  public enum Outcome {
    /** The settings are right as they are. */
    RIGHT,
    /** New values are proposed. */
    CHANGED,
    /** A slip or a fault: nothing is proposed. */
    REFUSED
  }

  static Calibrated right(String what, String text) {
    return new Calibrated(what, Outcome.RIGHT, text, "", "", List.of());
  }

  static Calibrated refused(String what, String text, String next) {
    return new Calibrated(what, Outcome.REFUSED, text, next, "", List.of());
  }

  static Calibrated changed(String what, String text, String key, List<Double> values) {
    return new Calibrated(what, Outcome.CHANGED, text, "", key, values);
  }
}
