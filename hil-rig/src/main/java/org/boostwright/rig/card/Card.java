package org.boostwright.rig.card;

import java.util.ArrayList;
import java.util.Comparator;
import java.util.EnumSet;
import java.util.List;
import java.util.Set;
import org.boostwright.core.AnalogChannel;
import org.boostwright.core.monitor.FaultCode;
import org.boostwright.core.monitor.Reaction;
import org.boostwright.core.monitor.Roadside;
import org.boostwright.core.settings.AnalogSensor;
import org.boostwright.core.settings.Settings;
import org.boostwright.rig.logs.correct.Caution;
import org.boostwright.rig.logs.correct.CellChange;
import org.boostwright.rig.logs.correct.Correction;
import org.boostwright.rig.logs.correct.TableCorrection;
import org.boostwright.rig.logs.pulls.DriveLog;
import org.boostwright.rig.logs.pulls.Pull;
import org.boostwright.rig.logs.pulls.PullFinder;
import org.boostwright.rig.logs.pulls.PullRules;
import org.boostwright.rig.plant.PlantParams;
import org.jspecify.annotations.Nullable;

/**
 * The decision after a pull. Common practice, no source: raise duty by 2 to 5 %, one change at a
 * time, after three repeats within 3 to 5 kPa, with 2 to 3 minutes to cool in between.
 *
 * @param advice what to do
 * @param reasons why, most important first
 * @param pulls pulls that count
 * @param peakKpaAbs highest pressure, kPa absolute; NaN without a pull
 * @param overKpa highest over target once spooled up (negative: always below), kPa
 * @param underKpa farthest under target once spooled up, kPa
 * @param spreadKpa spread of the peaks, kPa
 * @param headroomKpa from the peak to the overboost limit, kPa
 * @param sensorKpa from the peak to the sensor's top, kPa
 * @param predictedPeakKpaAbs peak to expect after the change, kPa absolute; the same without one
 * @param cells cells to change, largest change first; empty unless raise or lower
 */
public record Card(
    Advice advice,
    List<String> reasons,
    List<Pull> pulls,
    double peakKpaAbs,
    double overKpa,
    double underKpa,
    double spreadKpa,
    double headroomKpa,
    double sensorKpa,
    double predictedPeakKpaAbs,
    List<CellChange> cells) {

  /** Repeats before anything is raised. */
  public static final int REPEATS = 3;

  /** Repeats agree within this, kPa. */
  public static final double REPEAT_KPA = 5.0;

  /** Closer to the target than this nothing is changed, kPa. */
  public static final double GOOD_KPA = 3.0;

  /** Closer to the overboost limit than this is too close, kPa. */
  public static final double LEAST_HEADROOM_KPA = 6.0;

  /** Shortest rest between pulls, s. */
  public static final double COOL_SECONDS = 120.0;

  private static final long RESTING = resting();

  private static long resting() {
    long bits = 0L;
    for (FaultCode code : FaultCode.values()) {
      bits |= code.reaction().compareTo(Reaction.REST) >= 0 ? code.bit() : 0L;
    }
    return bits;
  }

  /** Copies the lists. */
  public Card {
    reasons = List.copyOf(reasons);
    pulls = List.copyOf(pulls);
    cells = List.copyOf(cells);
  }

  /**
   * The card of one session.
   *
   * @param settings settings all logs were driven with
   * @param logs logs of the session
   * @param fine what the person ticked as fine
   */
  public static Card of(Settings settings, List<DriveLog> logs, Set<Fine> fine) {
    List<Pull> pulls = new ArrayList<>();
    long faults = 0L;
    for (DriveLog log : logs) {
      PullFinder.find(log, PullRules.FULL_THROTTLE).stream()
          .filter(Pull::usable)
          .forEach(pulls::add);
      for (int row = 0; row < log.rows(); row++) {
        faults |= log.faults(row) & RESTING;
      }
    }
    double peak = pulls.stream().mapToDouble(Pull::peakKpaAbs).max().orElse(Double.NaN);
    double lowestPeak = pulls.stream().mapToDouble(Pull::peakKpaAbs).min().orElse(Double.NaN);
    double over = OffTarget.over(pulls);
    double under = OffTarget.under(pulls);
    double headroom = settings.limits().cutoffKpaAbs() - peak;
    List<String> reasons = new ArrayList<>();
    Advice advice =
        decide(
            pulls, faults, new double[] {over, under, peak - lowestPeak, headroom}, fine, reasons);
    List<CellChange> cells = new ArrayList<>();
    if (advice == Advice.RAISE || advice == Advice.LOWER) {
      @Nullable String refusal = change(settings, logs, advice == Advice.RAISE, cells);
      if (refusal != null) {
        reasons.add(0, refusal);
        advice = advice == Advice.RAISE ? Advice.HOLD : Advice.LOWER;
      }
    }
    double expected = cells.stream().mapToDouble(CellChange::expectedKpa).max().orElse(0.0);
    if (advice == Advice.LOWER) {
      expected = cells.stream().mapToDouble(CellChange::expectedKpa).min().orElse(0.0);
    }
    return new Card(
        advice,
        reasons,
        pulls,
        peak,
        over,
        under,
        peak - lowestPeak,
        headroom,
        top(settings) - peak,
        peak + expected,
        cells);
  }

  private static double top(Settings settings) {
    AnalogSensor map = settings.sensors().channel(AnalogChannel.MAP);
    double top = Double.NaN;
    if (map != null) {
      for (double value : map.calibration().values()) {
        top = Double.isNaN(top) ? value : Math.max(top, value);
      }
    }
    return top;
  }

  private static Advice decide(
      List<Pull> pulls, long faults, double[] seen, Set<Fine> fine, List<String> reasons) {
    double over = seen[0];
    double under = seen[1];
    for (FaultCode code : FaultCode.values()) {
      if ((faults & code.bit()) != 0L) {
        reasons.add(
            code.id().replace('_', ' ')
                + " put the valve at rest; check in order: "
                + Roadside.order(code)
                + "; driving on: "
                + Roadside.driveOn(Roadside.blinks(code)));
      }
    }
    if (faults != 0L) {
      return Advice.STOP;
    }
    if (pulls.isEmpty()) {
      reasons.add("no full-throttle pull that counts");
      return Advice.HOLD;
    }
    if (!(seen[3] >= LEAST_HEADROOM_KPA)) {
      reasons.add("the peak came too close to the overboost limit");
      return over > GOOD_KPA ? Advice.LOWER : Advice.STOP;
    }
    if (over > GOOD_KPA) {
      reasons.add("pressure went over the target");
      return Advice.LOWER;
    }
    if (!(under > GOOD_KPA)) {
      reasons.add("within 3 kPa of the target: nothing to gain");
      return Advice.HOLD;
    }
    return mayRaise(pulls, seen[2], fine, reasons) ? Advice.RAISE : Advice.HOLD;
  }

  private static boolean mayRaise(
      List<Pull> pulls, double spread, Set<Fine> fine, List<String> reasons) {
    Set<Fine> missing = EnumSet.allOf(Fine.class);
    missing.removeAll(fine);
    for (Fine each : missing) {
      reasons.add(
          each.words()
              + " is not ticked as fine, and this program cannot see it: nothing is raised"
              + " without");
    }
    if (pulls.size() < REPEATS) {
      reasons.add(
          pulls.size() + " of " + REPEATS + " like pulls: repeat before anything is raised");
    }
    if (!(spread <= REPEAT_KPA)) {
      reasons.add("the pulls differ by more than 5 kPa: find out why before anything is raised");
    }
    for (int i = 1; i < pulls.size(); i++) {
      Pull before = pulls.get(i - 1);
      Pull now = pulls.get(i);
      boolean known = before.log() == now.log();
      double rest =
          known ? now.log().seconds(now.from()) - before.log().seconds(before.to() - 1) : 0;
      if (known && rest < COOL_SECONDS) {
        reasons.add("less than two minutes between pulls: let it cool, heat makes knock");
        break;
      }
    }
    if (reasons.isEmpty()) {
      reasons.add("below the target in every pull");
      return true;
    }
    return false;
  }

  /** Fills in the cells; returns why there are none. */
  private static @Nullable String change(
      Settings settings, List<DriveLog> logs, boolean raise, List<CellChange> cells) {
    Correction correction =
        TableCorrection.of(settings, PlantParams.PROJECT_CAR, logs, Caution.DEFAULT, raise);
    Correction.Refusal refusal = correction.refusal();
    if (refusal != null) {
      return refusal.text();
    }
    correction.cells().stream()
        .filter(c -> raise ? c.change() != 0.0 : c.change() < 0.0)
        .sorted(Comparator.comparingDouble((CellChange c) -> -Math.abs(c.change())))
        .forEach(cells::add);
    return cells.isEmpty() ? "no cell has enough settled time behind it to be changed" : null;
  }
}
