package org.boostwright.rig.replay.csv;

import java.math.BigDecimal;
import java.math.MathContext;
import java.util.Arrays;

/** Reads the cells of one column; counts what cannot be read and refuses when it is too much. */
final class CellColumn {
  private final ColumnUse use;
  private final double gaugeKpa;
  private final RepairLog repairs;
  private final double[] written;
  private int firstBadLine;
  private String firstBad = "";

  /**
   * @param gaugeKpa added to gauge pressures, kPa
   * @param capacity most rows there can be
   */
  CellColumn(ColumnUse use, double gaugeKpa, int capacity, RepairLog repairs) {
    this.use = use;
    this.gaugeKpa = use.gauge() ? gaugeKpa : 0.0;
    this.repairs = repairs;
    this.written = new double[capacity];
  }

  ColumnUse use() {
    return use;
  }

  /** Reads a cell of the given row; what cannot be read is kept as NaN. */
  void read(int row, String text, int line, boolean decimalComma) {
    String cell = text.strip();
    double number = Double.NaN;
    if (cell.isEmpty()) {
      repairs.add(RepairKind.MISSING_CELL, use.header(), line, "");
    } else if (NumberCell.saysNoValue(cell)) {
      repairs.add(RepairKind.NO_VALUE_WORD, use.header(), line, cell);
    } else {
      number = NumberCell.parse(cell, decimalComma);
      if (Double.isNaN(number)) {
        bad(RepairKind.UNREADABLE_CELL, line, cell);
      } else if (!use.signal().isPossible(toBase(number))) {
        bad(RepairKind.IMPOSSIBLE_VALUE, line, cell);
        number = Double.NaN;
      }
    }
    written[row] = number;
  }

  private void bad(RepairKind kind, int line, String cell) {
    repairs.add(kind, use.header(), line, cell);
    if (firstBad.isEmpty()) {
      firstBadLine = line;
      firstBad = cell;
    }
  }

  private double toBase(double number) {
    return use.unit().toBase(number) + gaugeKpa;
  }

  /** Refuses the column when more than 1 % of the rows (and more than 3) cannot be read. */
  void refuseIfUnreadable(String file, int rows) throws LogRefusedException {
    int unreadable = repairs.count(RepairKind.UNREADABLE_CELL, use.header());
    int impossible = repairs.count(RepairKind.IMPOSSIBLE_VALUE, use.header());
    if (unreadable + impossible <= Math.max(3, rows / 100)) {
      return;
    }
    String what =
        "'"
            + use.header()
            + "': "
            + (unreadable + impossible)
            + " of "
            + rows
            + " cells cannot be used, first '"
            + RepairLog.shorten(firstBad)
            + "'; ";
    throw new LogRefusedException(
        file, firstBadLine, use.cell() + 1, what + advice(impossible > unreadable));
  }

  private String advice(boolean impossible) {
    LogSignal signal = use.signal();
    if (!impossible) {
      return "declare the decimal sign, or another column for "
          + signal.id()
          + ", in a mapping file";
    }
    if (signal.quantity() == Quantity.PRESSURE && !use.gauge()) {
      return "below a vacuum if absolute: is it gauge? Declare unit and reference under ["
          + signal.id()
          + "] in a mapping file";
    }
    return signal.id()
        + " lies within "
        + signal.lowest()
        + " to "
        + signal.highest()
        + " "
        + signal.baseUnit()
        + "; declare its unit in a mapping file";
  }

  /** The numbers of the rows kept, as written, NaN where there is none. */
  double[] written(int[] kept) {
    double[] numbers = new double[kept.length];
    for (int i = 0; i < kept.length; i++) {
      numbers[i] = written[kept[i]];
    }
    return numbers;
  }

  /** Turns numbers as written into base units, in place. */
  void toBase(double[] numbers) {
    for (int i = 0; i < numbers.length; i++) {
      numbers[i] = toBase(numbers[i]);
    }
  }

  /** Smallest difference between two numbers of the column as written; NaN when all are equal. */
  static double smallestStep(double[] numbers) {
    double[] sorted = Arrays.stream(numbers).filter(x -> !Double.isNaN(x)).sorted().toArray();
    double smallest = Double.NaN;
    for (int i = 1; i < sorted.length; i++) {
      double step = sorted[i] - sorted[i - 1];
      // Differences below this are rounding of the same decimal number.
      double rounding = 1e-12 * Math.max(Math.abs(sorted[i]), Math.abs(sorted[i - 1]));
      if (step > rounding && !(step >= smallest)) {
        smallest = step;
      }
    }
    return roundedTo9Digits(smallest);
  }

  /** 0.4 again, where the difference of two decimals gave 0.3999999999999986. */
  private static double roundedTo9Digits(double number) {
    return Double.isNaN(number)
        ? number
        : new BigDecimal(number).round(new MathContext(9)).doubleValue();
  }
}
