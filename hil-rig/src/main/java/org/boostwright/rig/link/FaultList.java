package org.boostwright.rig.link;

import java.util.List;

/** Names of the faults the rig can inject. */
public final class FaultList {
  private static final double USUAL_REFRESH_MILLIS = 5.0;

  private FaultList() {}

  /**
   * Every id, in the order in which they run.
   *
   * @param withProgram also those that freeze or kill a program the rig has started
   */
  public static List<String> ids(boolean withProgram) {
    return FaultCases.all(withProgram, USUAL_REFRESH_MILLIS).stream().map(FaultCase::id).toList();
  }

  /** One of each kind, in half a minute. */
  public static List<String> shortForm(boolean withProgram) {
    return ids(withProgram).stream().filter(FaultCases.SHORT::contains).toList();
  }
}
