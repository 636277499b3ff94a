package org.boostwright.rig.logs.correct;

import java.util.ArrayList;
import java.util.HashSet;
import java.util.List;
import java.util.Set;
import org.boostwright.core.settings.Settings;
import org.boostwright.core.table.Table2d;
import org.boostwright.rig.logs.identify.LocalGain;

/** What the logs say about each cell, how far it may move for that, and the reason given. */
final class CellKnowledge {
  private static final double STEP = 0.001;
  private static final double FITS_KPA = 1.0;
  private static final double CONFIDENT_SECONDS = 1.5;
  private static final double LITTLE = 1e-4;

  private final Settings settings;
  private final Table2d table;
  private final Caution caution;
  private final boolean raiseAllowed;
  private final double[] seconds;
  private final double[] wanted;
  private final double[] shortKpa;
  private final double[] doubtSeconds;
  private final List<Set<Integer>> visits = new ArrayList<>();

  CellKnowledge(Settings settings, Caution caution, List<EvidenceBin> bins, boolean raiseAllowed) {
    this.settings = settings;
    this.caution = caution;
    this.raiseAllowed = raiseAllowed;
    table = settings.baseDuty();
    int n = table.rows().size() * table.columns().size();
    seconds = new double[n];
    wanted = new double[n];
    shortKpa = new double[n];
    doubtSeconds = new double[n];
    for (int i = 0; i < n; i++) {
      visits.add(new HashSet<>());
    }
    for (EvidenceBin bin : bins) {
      CornerWeights corners = CornerWeights.at(table, bin.demandPct(), bin.rpm());
      for (int i = 0; i < corners.cells().length; i++) {
        int cell = corners.cells()[i];
        double weighted = corners.weights()[i] * bin.seconds();
        seconds[cell] += weighted;
        wanted[cell] += weighted * bin.wanted();
        shortKpa[cell] += weighted * bin.shortKpa();
        doubtSeconds[cell] += bin.mayRaise() ? 0.0 : weighted;
        if (corners.weights()[i] > 0.25) {
          visits.get(cell).add(bin.visit());
        }
      }
    }
    for (int i = 0; i < n; i++) {
      wanted[i] /= seconds[i];
      shortKpa[i] /= seconds[i];
    }
  }

  private boolean visited(int cell) {
    return seconds[cell] >= caution.visitSeconds() && !visits.get(cell).isEmpty();
  }

  private double duty(int cell) {
    return table.cell(cell / table.columns().size(), cell % table.columns().size());
  }

  private double rpm(int cell) {
    return table.columns().point(cell % table.columns().size());
  }

  /** Highest duty that means anything in a cell. */
  private double top(int cell) {
    return Math.min(
        settings.limits().dutyCeiling().at(rpm(cell)), settings.valve().windowHighDuty());
  }

  /** Below the window a duty moves nothing, so a cell there is not for small steps. */
  private boolean atRest(int cell) {
    return !(duty(cell) > settings.valve().windowLowDuty());
  }

  private boolean enoughPulls(int cell) {
    return visits.get(cell).size() >= caution.visitsToRaise();
  }

  private boolean doubtful(int cell) {
    return !raiseAllowed || doubtSeconds[cell] > 0.0;
  }

  double[] lowest() {
    double[] lowest = new double[seconds.length];
    for (int i = 0; i < lowest.length; i++) {
      double most = visited(i) ? caution.mostDown() : caution.mostUnvisited();
      lowest[i] = atRest(i) ? 0.0 : -Math.min(most, duty(i));
    }
    return lowest;
  }

  double[] highest() {
    double[] highest = new double[seconds.length];
    for (int i = 0; i < highest.length; i++) {
      double most = visited(i) ? caution.mostUp() : caution.mostUnvisited();
      boolean mayRise =
          raiseAllowed && !atRest(i) && (!visited(i) || enoughPulls(i) && !doubtful(i));
      highest[i] = mayRise ? Math.max(0.0, Math.min(most, top(i) - duty(i))) : 0.0;
    }
    return highest;
  }

  /** The changed table to the tenth of a percent; rises are rounded down. */
  static Table2d rounded(Table2d table, double[] changes) {
    double[] values = table.values();
    for (int i = 0; i < values.length; i++) {
      if (Math.abs(changes[i]) < STEP / 2.0) {
        continue;
      }
      double tenths = (values[i] + changes[i]) / STEP;
      double whole = changes[i] > 0.0 ? Math.floor(tenths + LITTLE) : Math.rint(tenths);
      values[i] = Math.max(0.0, whole * STEP);
    }
    return new Table2d(table.rows(), table.columns(), values);
  }

  List<CellChange> explain(Table2d after, double[] changes, Headroom headroom, LocalGain gain) {
    List<CellChange> cells = new ArrayList<>();
    int columns = table.columns().size();
    for (int i = 0; i < seconds.length; i++) {
      double fresh = after.cell(i / columns, i % columns);
      double confidence =
          visited(i)
              ? Math.min(1.0, seconds[i] / CONFIDENT_SECONDS)
                  * Math.min(1.0, visits.get(i).size() / 3.0)
              : 0.0;
      cells.add(
          new CellChange(
              table.rows().point(i / columns),
              rpm(i),
              duty(i),
              fresh,
              seconds[i],
              visits.get(i).size(),
              visited(i) ? shortKpa[i] : Double.NaN,
              confidence,
              (fresh - duty(i)) * gain.at(rpm(i)),
              reason(i, changes, headroom, gain)));
    }
    return cells;
  }

  private CellReason reason(int i, double[] changes, Headroom headroom, LocalGain gain) {
    if (!visited(i)) {
      return atRest(i) ? CellReason.AT_REST : CellReason.NEVER_VISITED;
    }
    double change = changes[i];
    if (Math.abs(wanted[i]) * gain.at(rpm(i)) <= FITS_KPA) {
      return CellReason.FITS;
    }
    if (wanted[i] < 0.0) {
      return change > -caution.mostDown() + LITTLE ? CellReason.LOWERED : CellReason.LIMITED_BY_STEP;
    }
    if (doubtful(i)) {
      return CellReason.NOT_RAISED_DOUBT;
    }
    if (!enoughPulls(i)) {
      return CellReason.NOT_RAISED_TOO_FEW_PULLS;
    }
    if (duty(i) + change >= top(i) - LITTLE) {
      return CellReason.LIMITED_BY_CEILING;
    }
    if (change >= caution.mostUp() - LITTLE) {
      return CellReason.LIMITED_BY_STEP;
    }
    return headroom.binds(i, changes) && change < wanted[i] - STEP
        ? CellReason.LIMITED_BY_PREDICTION
        : CellReason.RAISED;
  }
}
