package org.boostwright.rig.replay;

/**
 * What became of a spliced fault.
 *
 * @param splice the fault
 * @param ticks ticks in which it changed what the controller read
 */
public record SplicedFault(TraceSplice splice, long ticks) {

  /** False when the fault changed nothing: then nothing was tested. */
  public boolean tookEffect() {
    return ticks > 0;
  }
}
