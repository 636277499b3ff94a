package org.boostwright.rig.replay.csv;

import java.util.ArrayList;
import java.util.Arrays;
import java.util.BitSet;
import java.util.EnumMap;
import java.util.List;
import java.util.Map;

/** Turns columns of numbers into signals with resolution and refresh. */
final class TraceBuilder {
  /** A boost gauge that never comes this near to ambient may well be absolute, kPa gauge. */
  private static final double NEVER_BELOW_KPA = 60.0;

  private final String file;
  private final TimeLine time;
  private final long[] nanos;
  private final BitSet breaks = new BitSet();
  private final double ambientKpaAbs;
  private final List<String> notes;
  private final List<Draft> drafts = new ArrayList<>();

  private record Draft(
      CellColumn column,
      double[] values,
      SignalTrace.Step step,
      RefreshFinder finder,
      double rows) {}

  TraceBuilder(String file, TimeLine time, double ambientKpaAbs, List<String> notes) {
    this.file = file;
    this.time = time;
    this.nanos = time.nanos();
    this.ambientKpaAbs = ambientKpaAbs;
    this.notes = notes;
    for (Pause pause : time.pauses()) {
      breaks.set(pause.row());
    }
  }

  void add(CellColumn column) throws LogRefusedException {
    ColumnUse use = column.use();
    double[] values = column.written(time.kept());
    if (Arrays.stream(values).allMatch(Double::isNaN)) {
      notes.add(
          "'" + use.header() + "' has no value in any row; " + use.signal().id() + " is left out");
      return;
    }
    boolean undeclared = use.unitAssumed() && use.declared().equals(ColumnMapping.NONE);
    double scale = undeclared && isFraction(use, values) ? 100.0 : 1.0;
    for (int i = 0; scale != 1.0 && i < values.length; i++) {
      values[i] *= scale;
    }
    double found = CellColumn.smallestStep(values);
    RefreshFinder finder = new RefreshFinder(values, breaks);
    double declaredStep = use.declared().resolution();
    SignalTrace.Step step =
        Double.isNaN(declaredStep)
            ? new SignalTrace.Step(use.unit().stepToBase(found), Origin.FOUND)
            : new SignalTrace.Step(use.unit().stepToBase(declaredStep), Origin.DECLARED);
    drafts.add(new Draft(column, values, step, finder, finder.rowsPerRefresh(found)));
    column.toBase(values);
    if (use.gauge() && use.signal() == LogSignal.MAP) {
      checkGauge(use, values);
    }
  }

  boolean isEmpty() {
    return drafts.isEmpty();
  }

  private boolean isFraction(ColumnUse use, double[] values) {
    if (use.signal().quantity() != Quantity.SHARE) {
      return false;
    }
    double highest = Arrays.stream(values).filter(x -> !Double.isNaN(x)).max().orElse(0.0);
    if (!(highest > 0.0 && highest <= 1.0)) {
      return false;
    }
    notes.add("'" + use.header() + "' never exceeds 1; it is taken as a fraction, not as percent");
    return true;
  }

  /** Gauge taken for absolute, or the other way round, is about 101 kPa off. */
  private void checkGauge(ColumnUse use, double[] values) throws LogRefusedException {
    double lowest = Arrays.stream(values).filter(x -> !Double.isNaN(x)).min().orElseThrow();
    double gauge = lowest - ambientKpaAbs;
    notes.add(
        String.format(
            java.util.Locale.ROOT,
            "'%s' is gauge; it is counted from %.3f kPa absolute",
            use.header(),
            ambientKpaAbs));
    if (gauge > NEVER_BELOW_KPA && use.declared().reference() == null) {
      throw new LogRefusedException(
          file,
          String.format(
              java.util.Locale.ROOT,
              "'%s' never falls below %.0f kPa gauge: is it absolute? Declare reference under [%s]"
                  + " in a mapping file",
              use.header(),
              gauge,
              use.signal().id()));
    }
  }

  Map<LogSignal, SignalTrace> build() {
    double[] known =
        drafts.stream().mapToDouble(Draft::rows).filter(r -> r > 0.0).sorted().toArray();
    double usual = known.length == 0 ? 1.0 : known[known.length / 2];
    Map<LogSignal, SignalTrace> traces = new EnumMap<>(LogSignal.class);
    for (Draft draft : drafts) {
      ColumnUse use = draft.column.use();
      double declared = use.declared().refreshMillis();
      double rows = draft.rows > 0.0 ? draft.rows : usual;
      Origin origin = draft.rows > 0.0 ? Origin.FOUND : Origin.ASSUMED;
      if (!Double.isNaN(declared)) {
        rows = Math.max(1.0, declared * 1e-3 / time.typicalSeconds());
        origin = Origin.DECLARED;
      }
      BitSet fresh = draft.finder.freshRows(rows);
      SignalTrace.Refresh refresh = refresh(draft, fresh, rows, declared, origin);
      double noise = use.unit().stepToBase(use.declared().noise());
      traces.put(
          use.signal(), new SignalTrace(use, draft.values, fresh, draft.step, refresh, noise));
    }
    return traces;
  }

  private SignalTrace.Refresh refresh(
      Draft draft, BitSet fresh, double rows, double declaredMillis, Origin origin) {
    double[] millis = new double[fresh.cardinality()];
    int n = 0;
    int last = fresh.nextSetBit(0);
    double longest = 0.0;
    for (int row = fresh.nextSetBit(last + 1); row >= 0; row = fresh.nextSetBit(row + 1)) {
      if (isUnbroken(last, row)) {
        millis[n] = (nanos[row] - nanos[last]) * 1e-6;
        longest = Math.max(longest, millis[n++]);
      }
      last = row;
    }
    double found = n == 0 ? rows * time.typicalSeconds() * 1e3 : TimeLine.median(millis, n);
    double usual = Double.isNaN(declaredMillis) ? found : declaredMillis;
    if (!draft.finder.isSparse()) {
      longest = slowestMillis((int) Math.ceil(rows));
    }
    return new SignalTrace.Refresh(rows, usual, Math.max(usual, longest), origin);
  }

  /** Longest time the logger took for so many rows; a signal that drops out does not count. */
  private double slowestMillis(int rows) {
    double slowest = 0.0;
    for (int row = rows; row < nanos.length; row++) {
      if (isUnbroken(row - rows, row)) {
        slowest = Math.max(slowest, (nanos[row] - nanos[row - rows]) * 1e-6);
      }
    }
    return slowest;
  }

  private boolean isUnbroken(int from, int to) {
    int pause = breaks.nextSetBit(from + 1);
    return pause < 0 || pause > to;
  }
}
