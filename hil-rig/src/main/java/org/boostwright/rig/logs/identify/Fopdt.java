package org.boostwright.rig.logs.identify;

/**
 * A first-order answer with dead time: {@code k*exp(-dead*s)/(tau*s + 1)}.
 *
 * @param gain k, output per input
 * @param tauSeconds time constant, s
 * @param deadSeconds dead time, s
 */
public record Fopdt(double gain, double tauSeconds, double deadSeconds) {

  /**
   * Answer to an input held from each time to the next.
   *
   * @param seconds rising times, s
   * @param input input from each time on, deviation from where it was at rest before
   * @return output at each time, deviation from where it was at rest
   */
  public double[] answer(double[] seconds, double[] input) {
    double[] output = new double[seconds.length];
    double y = 0.0;
    HeldInput held = new HeldInput(seconds, input);
    for (int i = 1; i < seconds.length; i++) {
      double from = seconds[i - 1] - deadSeconds;
      double to = seconds[i] - deadSeconds;
      y = held.through(this, y, from, to);
      output[i] = y;
    }
    return output;
  }

  /** An input that is held from each sample to the next, and 0 before the first. */
  private static final class HeldInput {
    private final double[] seconds;
    private final double[] input;
    private int at = -1;

    HeldInput(double[] seconds, double[] input) {
      this.seconds = seconds;
      this.input = input;
    }

    /** The lag's exact answer from one time to a later one, from sample to sample. */
    double through(Fopdt model, double start, double from, double to) {
      double y = start;
      double t = from;
      while (t < to) {
        while (at + 1 < seconds.length && seconds[at + 1] <= t) {
          at++;
        }
        double end = at + 1 < seconds.length ? Math.min(to, seconds[at + 1]) : to;
        double u = at < 0 ? 0.0 : input[at];
        y += (model.gain * u - y) * -Math.expm1(-(end - t) / model.tauSeconds);
        t = end;
      }
      return y;
    }
  }
}
