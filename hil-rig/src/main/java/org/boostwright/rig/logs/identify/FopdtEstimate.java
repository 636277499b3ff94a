package org.boostwright.rig.logs.identify;

/**
 * An identified first-order answer with 95 % intervals, each as half its width.
 *
 * @param model most likely model
 * @param gainHalf half width of the gain's interval
 * @param tauHalf half width of the time constant's interval, s
 * @param deadHalf half width of the dead time's interval, s
 * @param rms residual, root mean square, in the output's unit
 */
public record FopdtEstimate(
    Fopdt model, double gainHalf, double tauHalf, double deadHalf, double rms) {

  /** Every number is known to a third of itself or better. */
  public boolean sure() {
    return gainHalf <= Math.abs(model.gain()) / 3.0
        && tauHalf <= model.tauSeconds() / 3.0
        && deadHalf <= Math.max(0.02, model.deadSeconds() / 3.0);
  }
}
