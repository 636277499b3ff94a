package org.boostwright.rig.replay;

import java.util.List;
import org.boostwright.core.AnalogChannel;
import org.boostwright.core.settings.MapLocation;
import org.jspecify.annotations.Nullable;

/**
 * How a log is replayed.
 *
 * @param ambientKpaAbs ambient pressure to start from, kPa absolute; NaN takes the settings'
 * @param demand which signal stands for the driver's demand, {@link AnalogChannel#THROTTLE} or
 *     {@link AnalogChannel#PEDAL}; null takes the settings'. The pedal is for engines whose
 *     throttle does not follow the driver, such as a diesel's
 * @param mapLocation where the recorded pressure sensor sat; null takes the settings'
 * @param lifeChangeKpa pressure change that counts as a sign of life, kPa; NaN takes the settings'
 * @param cutoffKpaAbs overboost limit, kPa absolute; NaN takes the settings'
 * @param gapRule what happens where the logger paused
 * @param splices faults spliced into the recorded channels
 * @param plotPoints most points of the series kept for plots
 */
public record ReplayOptions(
    double ambientKpaAbs,
    @Nullable AnalogChannel demand,
    @Nullable MapLocation mapLocation,
    double lifeChangeKpa,
    double cutoffKpaAbs,
    GapRule gapRule,
    List<TraceSplice> splices,
    int plotPoints) {

  /** Every tick of some hours at 200 Hz; what a report shows of them is thinned later. */
  private static final int PLOT_POINTS = 2_000_000;

  /** Everything as in the settings, restart after pauses, no faults. */
  public static final ReplayOptions DEFAULT =
      new ReplayOptions(
          Double.NaN, null, null, Double.NaN, Double.NaN, GapRule.RESTART, List.of(), PLOT_POINTS);

  /** Takes a copy of the splices and checks the numbers. */
  public ReplayOptions {
    splices = List.copyOf(splices);
    if (demand != null && demand != AnalogChannel.THROTTLE && demand != AnalogChannel.PEDAL) {
      throw new IllegalArgumentException(demand.id() + " is no demand; throttle or pedal is");
    }
    if (plotPoints < 1) {
      throw new IllegalArgumentException(plotPoints + " plot points; at least one is needed");
    }
  }

  /** The same with another ambient pressure to start from. */
  public ReplayOptions withAmbient(double kpaAbs) {
    return new ReplayOptions(
        kpaAbs, demand, mapLocation, lifeChangeKpa, cutoffKpaAbs, gapRule, splices, plotPoints);
  }

  /** The same with another demand signal. */
  public ReplayOptions withDemand(AnalogChannel signal) {
    return new ReplayOptions(
        ambientKpaAbs,
        signal,
        mapLocation,
        lifeChangeKpa,
        cutoffKpaAbs,
        gapRule,
        splices,
        plotPoints);
  }

  /** The same with another sign of life. */
  public ReplayOptions withLife(MapLocation location, double changeKpa) {
    return new ReplayOptions(
        ambientKpaAbs, demand, location, changeKpa, cutoffKpaAbs, gapRule, splices, plotPoints);
  }

  /** The same with another overboost limit. */
  public ReplayOptions withCutoff(double kpaAbs) {
    return new ReplayOptions(
        ambientKpaAbs, demand, mapLocation, lifeChangeKpa, kpaAbs, gapRule, splices, plotPoints);
  }

  /** The same with another rule for pauses. */
  public ReplayOptions withGapRule(GapRule rule) {
    return new ReplayOptions(
        ambientKpaAbs, demand, mapLocation, lifeChangeKpa, cutoffKpaAbs, rule, splices, plotPoints);
  }

  /** The same with these faults instead. */
  public ReplayOptions withSplices(List<TraceSplice> faults) {
    return new ReplayOptions(
        ambientKpaAbs,
        demand,
        mapLocation,
        lifeChangeKpa,
        cutoffKpaAbs,
        gapRule,
        faults,
        plotPoints);
  }
}
