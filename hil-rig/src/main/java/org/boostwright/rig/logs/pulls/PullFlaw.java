package org.boostwright.rig.logs.pulls;

/** Why a pull is no good for learning from. */
public enum PullFlaw {
  THROTTLE_LIFTED("throttle lifted on the way"),
  GEAR_CHANGED("gear changed on the way"),
  WHEELSPIN("wheels or clutch slipped"),
  SENSOR_DOUBT("pressure or speed reading in doubt"),
  FAULT("a fault put the valve at rest"),
  TOO_SHORT("too short: under 1.5 s or 500 rpm"),
  SAMPLED_TOO_SLOWLY("pressure recorded less than 20 times a second");

  private final String words;

  PullFlaw(String words) {
    this.words = words;
  }

  /** As shown to people. */
  public String words() {
    return words;
  }
}
