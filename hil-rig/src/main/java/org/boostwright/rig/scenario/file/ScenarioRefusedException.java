package org.boostwright.rig.scenario.file;

/** A scenario file that cannot be used: place, what is wrong, what to do. */
public final class ScenarioRefusedException extends Exception {
  private static final long serialVersionUID = 1L;

  ScenarioRefusedException(String message) {
    super(message);
  }
}
