package org.boostwright.rig.logs.correct;

import java.util.List;
import java.util.Locale;
import java.util.function.ToDoubleFunction;
import org.boostwright.core.settings.Settings;
import org.boostwright.core.table.Table2d;
import org.boostwright.rig.logs.correct.Correction.Refusal;
import org.boostwright.rig.result.HeatTable;
import org.boostwright.rig.result.ResultBuilder;
import org.boostwright.rig.result.SettingsTables;
import org.boostwright.rig.result.Severity;
import org.boostwright.rig.result.Units;

/** A correction as a result: what changes, where, why, and what is expected of it. */
public final class CorrectionResult {
  private static final double PERCENT = 100.0;

  private CorrectionResult() {}

  /** Adds everything. */
  public static void add(ResultBuilder result, Correction correction, Settings settings) {
    result.caution(
        "Look at every change before you drive on it: raise one thing at a time, repeat each pull"
            + " three times, and keep the overboost limit where it was proven.");
    Refusal refusal = correction.refusal();
    if (refusal != null) {
      result.refuse(refusal.code(), refusal.text(), refusal.next());
      result.headline("No correction: " + refusal.text());
      return;
    }
    measures(result, correction);
    String rows = settings.demand().id();
    if (correction.changes()) {
      result.add(
          heat(
              "change",
              "Change of base duty",
              rows,
              correction,
              Units.PERCENT,
              c -> PERCENT * c.change()));
      result.add(
          heat(
              "expected",
              "Expected change of boost",
              rows,
              correction,
              Units.KPA,
              CellChange::expectedKpa));
    }
    result.add(
        heat(
            "error",
            "Target less boost, where boost was settled",
            rows,
            correction,
            Units.KPA,
            CellChange::shortKpa));
    result.add(
        heat(
            "confidence",
            "How well each cell is known",
            rows,
            correction,
            Units.FRACTION,
            CellChange::confidence));
    result.add(
        SettingsTables.heat(
            "base_duty", "Base duty, proposed", rows, correction.after(), Units.PERCENT, PERCENT));
    reasons(result, correction.cells());
    result.headline(headline(correction));
  }

  private static void measures(ResultBuilder result, Correction correction) {
    List<CellChange> cells = correction.cells();
    result.measure("correct.visits", "pulls with settled boost", correction.visits(), Units.COUNT);
    result.measure(
        "correct.settled_s", "settled time used", correction.settledSeconds(), Units.SECONDS);
    result.measure(
        "correct.cells_visited",
        "cells seen",
        cells.stream().filter(CellChange::visited).count(),
        Units.COUNT);
    result.measure(
        "correct.cells_moved",
        "cells moved",
        cells.stream().filter(cell -> cell.change() != 0.0).count(),
        Units.COUNT);
    result.measure(
        "correct.most_up_pct",
        "largest rise",
        PERCENT * cells.stream().mapToDouble(CellChange::change).max().orElse(0.0),
        Units.PERCENT,
        Double.NaN,
        PERCENT * Caution.DEFAULT.mostUp());
    result.measure(
        "correct.most_down_pct",
        "largest fall",
        PERCENT * cells.stream().mapToDouble(CellChange::change).min().orElse(0.0),
        Units.PERCENT);
    double worst = 0.0;
    for (CellChange cell : cells) {
      worst = Math.abs(cell.shortKpa()) > Math.abs(worst) ? cell.shortKpa() : worst;
    }
    result.measure(
        "correct.worst_error_kpa", "largest target less boost in a cell", worst, Units.KPA);
    if (correction.twin() != null && correction.gain() != null) {
      result.measure(
          "correct.fit_rms_kpa",
          "fitted virtual car against the pulls",
          correction.twin().rmsKpa(),
          Units.KPA);
      result.measure(
          "correct.gain_kpa_per_pct",
          "boost for each percent of duty at 4500 rpm",
          correction.gain().at(4500.0) / PERCENT,
          Units.KPA);
    }
  }

  private static HeatTable heat(
      String id,
      String title,
      String rows,
      Correction correction,
      String unit,
      ToDoubleFunction<CellChange> value) {
    return heat(id, title, rows, correction.before(), correction.cells(), unit, value);
  }

  /** Cells in their places of a table; those that are not given stay empty. */
  public static HeatTable heat(
      String id,
      String title,
      String rows,
      Table2d table,
      List<CellChange> cells,
      String unit,
      ToDoubleFunction<CellChange> value) {
    double[][] values = new double[table.rows().size()][table.columns().size()];
    for (int r = 0; r < values.length; r++) {
      for (int c = 0; c < values[r].length; c++) {
        double demandPct = table.rows().point(r);
        double rpm = table.columns().point(c);
        values[r][c] =
            cells.stream()
                .filter(cell -> cell.demandPct() == demandPct && cell.rpm() == rpm)
                .mapToDouble(value)
                .findFirst()
                .orElse(Double.NaN);
      }
    }
    return new HeatTable(
        id,
        title,
        rows,
        Units.PERCENT,
        table.rows().points(),
        "engine speed",
        Units.RPM,
        table.columns().points(),
        unit,
        values);
  }

  private static void reasons(ResultBuilder result, List<CellChange> cells) {
    int never = 0;
    for (CellChange cell : cells) {
      if (!cell.visited()) {
        never++;
        continue;
      }
      boolean waits =
          cell.reason() == CellReason.NOT_RAISED_DOUBT
              || cell.reason() == CellReason.NOT_RAISED_TOO_FEW_PULLS
              || cell.reason() == CellReason.LIMITED_BY_CEILING;
      result.find(
          "cell_" + cell.reason().name().toLowerCase(Locale.ROOT),
          waits ? Severity.CAUTION : Severity.NOTE,
          String.format(
              Locale.ROOT,
              "%.0f %% at %.0f rpm: %.1f %% to %.1f %% duty, %+.1f kPa expected: %s (target less"
                  + " boost %+.1f kPa over %.1f s in %d pulls).",
              cell.demandPct(),
              cell.rpm(),
              PERCENT * cell.oldDuty(),
              PERCENT * cell.newDuty(),
              cell.expectedKpa(),
              cell.reason().words(),
              cell.shortKpa(),
              cell.seconds(),
              cell.visits()),
          "");
    }
    if (never > 0) {
      result.find(
          "cells_never_visited",
          Severity.NOTE,
          String.format(
              Locale.ROOT,
              "%d of %d cells were never visited; none of them moves by more than %.1f %% duty.",
              never,
              cells.size(),
              PERCENT * Caution.DEFAULT.mostUnvisited()),
          "");
    }
  }

  private static String headline(Correction correction) {
    long moved = correction.cells().stream().filter(cell -> cell.change() != 0.0).count();
    return moved == 0
        ? "The base duty table fits these drives; nothing to change."
        : moved + " cells of base duty move, from " + correction.visits() + " pulls.";
  }
}
