package org.boostwright.rig.logs.whatif;

import org.boostwright.rig.logs.pulls.Pull;
import org.jspecify.annotations.Nullable;

/**
 * What a recorded pull would have been with other settings; a computation, not a recording.
 *
 * @param pull the recorded pull
 * @param seconds times since the throttle opened, s
 * @param kpaAbs predicted pressure as the log would show it, mean of 100 ms, kPa absolute
 * @param low lower edge of the 90 % band, kPa absolute
 * @param high upper edge of the 90 % band, kPa absolute
 * @param duty predicted duty, fraction
 * @param faults faults the controller would have confirmed, as bits
 * @param extrapolates it goes beyond what the recording has seen; where from, in words; null when
 *     it does not
 * @param refusal why it is not to be believed at all; null when it may be
 */
@SuppressWarnings("ArrayRecordComponent") // handed out to plots as they are
public record Prediction(
    Pull pull,
    double[] seconds,
    double[] kpaAbs,
    double[] low,
    double[] high,
    double[] duty,
    long faults,
    @Nullable String extrapolates,
    @Nullable String refusal) {

  /** Highest predicted pressure, kPa absolute. */
  public double peakKpaAbs() {
    double peak = 0.0;
    for (double kpa : kpaAbs) {
      peak = Math.max(peak, kpa);
    }
    return peak;
  }

  /** Highest upper edge of the band, kPa absolute. */
  public double highestKpaAbs() {
    double peak = 0.0;
    for (double kpa : high) {
      peak = Math.max(peak, kpa);
    }
    return peak;
  }
}
