package org.boostwright.rig.replay;

/** What the replay does where the logger paused. */
public enum GapRule {
  /**
   * The recording starts again: a new controller at rest, which knows nothing of what was before. A
   * pause of the logger is no fault of a sensor, so nothing of it reaches the controller.
   */
  RESTART,
  /** Time goes on and no new data come, as if the link to the sensors had been lost. */
  STALE_DATA
}
