package org.boostwright.core.table;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatIllegalArgumentException;
import static org.assertj.core.api.Assertions.within;

import java.util.Random;
import org.junit.jupiter.api.Test;

/** Bilinear lookup against the weights of the four corners by area, at the edges and outside. */
class Table2dTest {
  private static final double[] ROWS = {0.0, 30.0, 50.0, 100.0};
  private static final double[] COLUMNS = {1_000.0, 2_500.0, 7_000.0};
  private static final double[] CELLS = {1, 2, 3, 40, 50, 60, 7, 8, 900, 10, -11, 12};

  private final Table2d table = new Table2d(new Axis(ROWS), new Axis(COLUMNS), CELLS);

  /** Clamps, then weighs each corner by the area opposite to it. */
  private static double byAreas(double row, double column) {
    double y = Math.max(ROWS[0], Math.min(ROWS[3], row));
    double x = Math.max(COLUMNS[0], Math.min(COLUMNS[2], column));
    int r = 0;
    while (r < 2 && y > ROWS[r + 1]) {
      r++;
    }
    int c = 0;
    while (c < 1 && x > COLUMNS[c + 1]) {
      c++;
    }
    double area = (ROWS[r + 1] - ROWS[r]) * (COLUMNS[c + 1] - COLUMNS[c]);
    double sum =
        CELLS[3 * r + c] * (ROWS[r + 1] - y) * (COLUMNS[c + 1] - x)
            + CELLS[3 * r + c + 1] * (ROWS[r + 1] - y) * (x - COLUMNS[c])
            + CELLS[3 * r + 3 + c] * (y - ROWS[r]) * (COLUMNS[c + 1] - x)
            + CELLS[3 * r + 4 + c] * (y - ROWS[r]) * (x - COLUMNS[c]);
    return sum / area;
  }

  @Test
  void badTablesAreRefused() {
    assertThatIllegalArgumentException()
        .isThrownBy(() -> new Table2d(new Axis(0.0, 1.0), new Axis(0.0), new double[3]))
        .withMessageContaining("needs 2 values, not 3");
    assertThatIllegalArgumentException()
        .isThrownBy(
            () -> new Table2d(new Axis(0.0), new Axis(0.0), new double[] {Double.POSITIVE_INFINITY}));
  }

  @Test
  void everyCellIsReadAtItsCorner() {
    for (int r = 0; r < 4; r++) {
      for (int c = 0; c < 3; c++) {
        assertThat(table.cell(r, c)).isEqualTo(CELLS[3 * r + c]);
        assertThat(table.at(ROWS[r], COLUMNS[c])).isCloseTo(CELLS[3 * r + c], within(1e-12));
      }
    }
  }

  @Test
  void insideAndOutsideItAgreesWithTheAreasOfTheCorners() {
    Random random = new Random(8);
    for (int i = 0; i < 20_000; i++) {
      double row = -30.0 + 160.0 * random.nextDouble();
      double column = -1_000.0 + 10_000.0 * random.nextDouble();
      assertThat(table.at(row, column))
          .as("%f %f", row, column)
          .isCloseTo(byAreas(row, column), within(1e-9));
    }
  }

  @Test
  void itIsContinuousAcrossEveryEdge() {
    Random random = new Random(9);
    for (int i = 0; i < 1_000; i++) {
      double column = 1_000.0 + 6_000.0 * random.nextDouble();
      double row = ROWS[1 + random.nextInt(2)];
      double below = table.at(Math.nextDown(row), column);
      assertThat(table.at(Math.nextUp(row), column)).isCloseTo(below, within(1e-9));
    }
  }

  @Test
  void wildCoordinatesClampAndStayFinite() {
    assertThat(table.at(Double.NEGATIVE_INFINITY, Double.NEGATIVE_INFINITY)).isEqualTo(1.0);
    assertThat(table.at(Double.POSITIVE_INFINITY, Double.POSITIVE_INFINITY)).isEqualTo(12.0);
    assertThat(table.at(Double.NaN, Double.NaN)).isFinite();
  }

  @Test
  void itCoversItsAxesAndATableOfOneCellEverything() {
    assertThat(table.covers(0.0, 1_000.0)).isTrue();
    assertThat(table.covers(100.0, 7_000.0)).isTrue();
    assertThat(table.covers(100.1, 3_000.0)).isFalse();
    assertThat(table.covers(-0.1, 3_000.0)).isFalse();
    assertThat(table.covers(50.0, 7_000.1)).isFalse();
    assertThat(table.covers(50.0, 999.9)).isFalse();
    assertThat(table.covers(Double.NaN, 3_000.0)).isFalse();
    Table2d one = Table2d.constant(3.0);
    assertThat(one.covers(1e9, -1e9)).isTrue();
    assertThat(one.at(1e9, Double.NaN)).isEqualTo(3.0);
    Table2d row = new Table2d(new Axis(0.0), new Axis(0.0, 1.0), new double[] {4.0, 6.0});
    assertThat(row.covers(1e9, 0.5)).isTrue();
    assertThat(row.covers(1e9, 1.5)).isFalse();
    assertThat(row.at(-5.0, 0.5)).isEqualTo(5.0);
    Table2d column = new Table2d(new Axis(0.0, 1.0), new Axis(0.0), new double[] {4.0, 6.0});
    assertThat(column.covers(0.5, 1e9)).isTrue();
    assertThat(column.covers(1.5, 1e9)).isFalse();
    assertThat(column.at(0.5, -5.0)).isEqualTo(5.0);
  }

  @Test
  void cellsAreCopiedInAndOut() {
    double[] given = {1.0, 2.0};
    Table2d own = new Table2d(new Axis(0.0), new Axis(0.0, 1.0), given);
    given[0] = 9.0;
    own.values()[1] = 9.0;
    assertThat(own.values()).containsExactly(1.0, 2.0);
    assertThat(own.rows()).isEqualTo(new Axis(0.0));
    assertThat(own.columns()).isEqualTo(new Axis(0.0, 1.0));
  }

  @Test
  void equalTablesHaveEqualNumbers() {
    Table2d same = new Table2d(new Axis(ROWS), new Axis(COLUMNS), CELLS);
    assertThat(table).isEqualTo(same);
    assertThat(table.hashCode()).isEqualTo(same.hashCode());
    double[] other = CELLS.clone();
    other[5] = 61.0;
    assertThat(table)
        .isNotEqualTo(new Table2d(new Axis(ROWS), new Axis(COLUMNS), other))
        .isNotEqualTo("table");
  }
}
