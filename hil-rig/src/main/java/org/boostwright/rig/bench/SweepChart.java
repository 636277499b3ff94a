package org.boostwright.rig.bench;

import java.util.Arrays;
import java.util.List;
import java.util.Locale;
import org.boostwright.core.bench.BenchPlan;
import org.boostwright.core.bench.BenchRecord;
import org.boostwright.core.bench.Reading;
import org.boostwright.core.bench.model.ValveFitResult;
import org.boostwright.core.settings.PressureUnit;

/**
 * The duty sweep drawn in text, 100 columns: pressure over duty, the band of the ripple, the window
 * at this frequency and the curve at the recommended one.
 */
public final class SweepChart {
  private static final int LEFT = 9;
  private static final int COLUMNS = 88;
  private static final int ROWS = 18;

  private SweepChart() {}

  /** The chart; empty when nothing was swept. */
  public static String draw(BenchRecord record, BenchPlan plan, PressureUnit unit) {
    List<Reading> up = record.sweepUp;
    if (up.size() < 2 || record.sweepDown.isEmpty()) {
      return "";
    }
    double top = 1.0;
    for (Reading r : up) {
      top = Math.max(top, r.highKpaAbs() - record.ambientKpaAbs);
    }
    char[][] grid = new char[ROWS + 1][COLUMNS + 1];
    for (char[] row : grid) {
      Arrays.fill(row, ' ');
    }
    double hz = up.get(0).frequencyHz();
    StringBuilder legend = new StringBuilder();
    ValveFitResult fit = record.fit;
    if (fit != null) {
      edge(grid, fit.windowLowDuty(hz).value());
      edge(grid, fit.windowHighDuty(hz).value());
      double best = BenchResult.advice(fit, plan).frequencyHz();
      for (int c = 0; c <= COLUMNS; c++) {
        double p = fit.steady(best, (double) c / COLUMNS).meanKpaAbs() - fit.ambientKpaAbs();
        put(grid, c, p / top, '+');
      }
      legend.append(
          String.format(
              Locale.ROOT,
              "         | window %.1f to %.1f %%   + model at the recommended %.0f Hz, window %.1f"
                  + " to %.1f %%%n",
              100.0 * fit.windowLowDuty(hz).value(),
              100.0 * fit.windowHighDuty(hz).value(),
              best,
              100.0 * fit.windowLowDuty(best).value(),
              100.0 * fit.windowHighDuty(best).value()));
    }
    for (Reading r : up) {
      int c = column(r.dutyFraction());
      double low = (r.lowKpaAbs() - record.ambientKpaAbs) / top;
      double high = (r.highKpaAbs() - record.ambientKpaAbs) / top;
      for (int row = row(high); r.rippleKpa() > 1.0 && row <= row(low); row++) {
        grid[row][c] = ':';
      }
    }
    for (Reading r : record.sweepDown) {
      put(grid, column(r.dutyFraction()), record.gauge(r) / top, 'o');
    }
    for (Reading r : up) {
      put(grid, column(r.dutyFraction()), record.gauge(r) / top, '*');
    }
    return text(grid, top, hz, unit) + legend;
  }

  private static String text(char[][] grid, double top, double hz, PressureUnit unit) {
    StringBuilder text = new StringBuilder();
    text.append(
        String.format(
            Locale.ROOT,
            "%s gauge over duty in %% at %.0f Hz: * duty rising, o falling, : ripple%n",
            unit.label(),
            hz));
    for (int row = 0; row <= ROWS; row++) {
      double p = unit.fromKpa(top * (ROWS - row) / ROWS);
      String label = row % 3 == 0 ? String.format(Locale.ROOT, "%7.1f ", p) : "        ";
      text.append((label + "|" + new String(grid[row])).stripTrailing()).append('\n');
    }
    text.append("        +").append("-".repeat(COLUMNS + 1)).append('\n');
    char[] axis = new char[LEFT + COLUMNS + 3];
    Arrays.fill(axis, ' ');
    for (int pct = 0; pct <= 100; pct += 10) {
      String label = Integer.toString(pct);
      int at = LEFT + column(pct / 100.0) - (pct == 100 ? 2 : label.length() / 2);
      label.getChars(0, label.length(), axis, at);
    }
    text.append(new String(axis).stripTrailing()).append('\n');
    return text.toString();
  }

  private static void edge(char[][] grid, double duty) {
    if (duty >= 0.0 && duty <= 1.0) {
      for (char[] row : grid) {
        row[column(duty)] = '|';
      }
    }
  }

  private static void put(char[][] grid, int column, double share, char mark) {
    grid[row(share)][column] = mark;
  }

  private static int column(double duty) {
    return (int) Math.round(duty * COLUMNS);
  }

  private static int row(double share) {
    int row = (int) Math.round((1.0 - share) * ROWS);
    return Math.max(0, Math.min(ROWS, row));
  }
}
