package org.boostwright.core.settings.file;

import java.util.ArrayList;
import java.util.List;
import org.jspecify.annotations.Nullable;
import org.tomlj.TomlArray;
import org.tomlj.TomlPosition;
import org.tomlj.TomlTable;

/**
 * A list of numbers from the file, in the units used inside.
 *
 * @param where what the list is called in messages
 * @param values the numbers
 * @param places where each stands in the file
 * @param quantity how they were written
 */
@SuppressWarnings("ArrayRecordComponent")
record Numbers(String where, double[] values, TomlPosition[] places, Quantity quantity) {

  /** Reads a list; null, with every problem reported, when one of its entries is unusable. */
  static @Nullable Numbers read(
      Reading reading, String where, TomlArray array, Quantity quantity, Bounds bounds) {
    int size = array.size();
    double[] values = new double[size];
    TomlPosition[] places = new TomlPosition[size];
    List<Integer> outside = new ArrayList<>();
    boolean good = true;
    boolean fractions = quantity.kind() == Quantity.Kind.SHARE;
    for (int i = 0; i < size; i++) {
      places[i] = array.inputPositionOf(i);
      if (!(array.get(i) instanceof Number number)) {
        reading.error(
            "wrong_kind",
            places[i],
            where + ", entry " + (i + 1) + ": is " + kindOf(array.get(i)) + "; write a number");
        good = false;
        continue;
      }
      values[i] = quantity.inside(number.doubleValue());
      if (!bounds.complaint(values[i], quantity, where).isEmpty()) {
        outside.add(i);
      }
      fractions &= values[i] >= 0.0 && values[i] <= 0.01;
    }
    for (int i : outside) {
      String entry = fractions ? "" : ", entry " + (i + 1);
      reading.error(
          "out_of_range",
          places[i],
          where + entry + ": " + bounds.complaint(values[i], quantity, where));
      if (fractions) {
        break;
      }
    }
    return good && outside.isEmpty() ? new Numbers(where, values, places, quantity) : null;
  }

  /** Reads a list of rows; null, with every problem reported, when one of them is unusable. */
  static @Nullable List<Numbers> readRows(
      Reading reading, String words, TomlArray array, Quantity quantity, Bounds bounds) {
    List<Numbers> rows = new ArrayList<>();
    for (int i = 0; i < array.size(); i++) {
      String where = words + ", row " + (i + 1);
      if (array.get(i) instanceof TomlArray row) {
        Numbers numbers = read(reading, where, row, quantity, bounds);
        if (numbers != null) {
          rows.add(numbers);
        }
      } else {
        reading.error(
            "wrong_kind",
            array.inputPositionOf(i),
            where
                + ": is "
                + kindOf(array.get(i))
                + "; write a row of numbers in brackets: [1, 2, 3]");
      }
    }
    return rows.size() == array.size() ? rows : null;
  }

  /** What a value of the file is, in words. */
  static String kindOf(Object value) {
    if (value instanceof String text) {
      return "the text \"" + text + "\"";
    }
    if (value instanceof Boolean || value instanceof Number) {
      return value.toString();
    }
    if (value instanceof TomlArray) {
      return "a list";
    }
    return value instanceof TomlTable ? "a table" : "a date or time";
  }

  int size() {
    return values.length;
  }

  /** True when the numbers rise from each to the next; reports the first that does not. */
  boolean rises(Reading reading) {
    if (values.length == 0) {
      return false;
    }
    for (int i = 1; i < values.length; i++) {
      if (!(values[i] > values[i - 1])) {
        reading.error(
            "axis_order",
            places[i],
            where
                + ", entry "
                + (i + 1)
                + ": "
                + quantity.words(values[i])
                + " does not rise above the "
                + quantity.words(values[i - 1])
                + " before it; put the entries in rising order, each once");
        return false;
      }
    }
    return true;
  }
}
