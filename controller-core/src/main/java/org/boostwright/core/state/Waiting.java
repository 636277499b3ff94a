package org.boostwright.core.state;

/** Why the controller goes no further, most basic reason first. */
public enum Waiting {
  NOTHING("nothing"),
  FAULT("a confirmed fault to clear"),
  KEY("the key to be switched on"),
  PERMIT("the permit input to close"),
  SPRING_ONLY_SWITCH("the spring-only switch to let the coil feed through"),
  PROOF("the missing proofs (see 'boostwright stage')"),
  AMBIENT("the ambient pressure: key on with the engine stopped for two seconds"),
  ENGINE("the engine to run"),
  SENSOR_LIFE("the pressure sensor to move as it should since the engine started"),
  DEMAND("more throttle or engine speed");

  private final String words;

  Waiting(String words) {
    this.words = words;
  }

  /** The reason as shown to people, completing "waiting for". */
  public String words() {
    return words;
  }
}
