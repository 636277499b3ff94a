package org.boostwright.rig.logs.correct;

import java.util.List;
import org.boostwright.core.table.Table2d;
import org.ojalgo.optimisation.Expression;
import org.ojalgo.optimisation.ExpressionsBasedModel;
import org.ojalgo.optimisation.Optimisation;
import org.ojalgo.optimisation.Variable;

/**
 * The table correction as a quadratic programme over the changes x of all cells:
 *
 * <p>minimise {@code sum w*(B*x - wanted)^2 + smooth*sum(second differences of x)^2 +
 * close*sum(x^2)} within bounds on every cell and {@code B*x <= room} wherever the logs have been.
 * Solved with ojAlgo's active-set solver.
 */
final class CorrectionProblem {
  private static final double SMOOTH = 0.02;
  private static final double CLOSE = 0.004;
  private static final double PERCENT = 100.0;

  private final Table2d table;
  private final ExpressionsBasedModel model = new ExpressionsBasedModel();
  private final Variable[] x;
  private final double[][] quadratic;
  private final double[] linear;

  /** Changes in percent duty inside, so that the solver meets numbers near 1. */
  CorrectionProblem(Table2d table, double[] lowest, double[] highest) {
    this.table = table;
    int n = table.rows().size() * table.columns().size();
    x = new Variable[n];
    quadratic = new double[n][n];
    linear = new double[n];
    for (int i = 0; i < n; i++) {
      x[i] =
          model
              .newVariable("cell " + i)
              .lower(PERCENT * lowest[i])
              .upper(PERCENT * Math.max(lowest[i], highest[i]));
    }
  }

  void fit(List<EvidenceBin> bins) {
    for (EvidenceBin bin : bins) {
      CornerWeights corners = CornerWeights.at(table, bin.demandPct(), bin.rpm());
      add(bin.seconds(), corners.cells(), corners.weights(), PERCENT * bin.wanted());
    }
  }

  void stayBelow(CornerWeights corners, double room) {
    // The model keeps expressions by name: a second one of the same name would replace the first.
    Expression limit =
        model.newExpression("room " + model.countExpressions()).upper(PERCENT * room);
    double[] sums = new double[x.length];
    for (int i = 0; i < corners.cells().length; i++) {
      sums[corners.cells()[i]] += corners.weights()[i];
    }
    for (int i = 0; i < sums.length; i++) {
      if (sums[i] > 0.0) {
        limit.set(x[i], sums[i]);
      }
    }
  }

  /** Solves; changes as fractions. */
  double[] solve() {
    int columns = table.columns().size();
    for (int i = 0; i < x.length; i++) {
      add(CLOSE, new int[] {i}, new double[] {1.0}, 0.0);
      int column = i % columns;
      if (column > 0 && column + 1 < columns) {
        bend(i - 1, i, i + 1);
      }
      if (i - columns >= 0 && i + columns < x.length) {
        bend(i - columns, i, i + columns);
      }
    }
    Expression objective = model.newExpression("distance").weight(1.0);
    for (int i = 0; i < x.length; i++) {
      objective.set(x[i], linear[i]);
      for (int j = 0; j < x.length; j++) {
        if (quadratic[i][j] != 0.0) {
          objective.set(x[i], x[j], quadratic[i][j]);
        }
      }
    }
    Optimisation.Result result = model.minimise();
    if (!result.getState().isFeasible()) {
      throw new IllegalStateException("the correction found no solution: " + result.getState());
    }
    double[] changes = new double[x.length];
    for (int i = 0; i < changes.length; i++) {
      changes[i] = result.doubleValue(i) / PERCENT;
    }
    return changes;
  }

  private void bend(int before, int at, int after) {
    add(SMOOTH, new int[] {before, at, after}, new double[] {1.0, -2.0, 1.0}, 0.0);
  }

  /** Adds {@code weight*(sum(factor*x) - wanted)^2}. */
  private void add(double weight, int[] cells, double[] factors, double wanted) {
    for (int i = 0; i < cells.length; i++) {
      linear[cells[i]] -= 2.0 * weight * factors[i] * wanted;
      for (int j = 0; j < cells.length; j++) {
        quadratic[cells[i]][cells[j]] += weight * factors[i] * factors[j];
      }
    }
  }
}
