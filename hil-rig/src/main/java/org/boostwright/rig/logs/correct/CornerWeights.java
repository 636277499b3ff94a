package org.boostwright.rig.logs.correct;

import org.boostwright.core.table.Axis;
import org.boostwright.core.table.Table2d;

/**
 * How much each of the four cells around a place counts in the table's reading there.
 *
 * @param cells cell numbers, row by row
 * @param weights their weights, adding up to 1
 */
@SuppressWarnings("ArrayRecordComponent") // stays inside the package
record CornerWeights(int[] cells, double[] weights) {

  /** The weights of a place; outside the axes those of the edge. */
  static CornerWeights at(Table2d table, double demandPct, double rpm) {
    Axis rows = table.rows();
    Axis columns = table.columns();
    int r = rows.locate(demandPct);
    int c = columns.locate(rpm);
    double fr = rows.fraction(r, demandPct);
    double fc = columns.fraction(c, rpm);
    int r1 = Math.min(r + 1, rows.size() - 1);
    int c1 = Math.min(c + 1, columns.size() - 1);
    int n = columns.size();
    return new CornerWeights(
        new int[] {r * n + c, r * n + c1, r1 * n + c, r1 * n + c1},
        new double[] {(1 - fr) * (1 - fc), (1 - fr) * fc, fr * (1 - fc), fr * fc});
  }
}
