package org.boostwright.core.settings.file;

import java.util.ArrayList;
import java.util.List;
import org.jspecify.annotations.Nullable;
import org.tomlj.TomlArray;
import org.tomlj.TomlPosition;

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
            where + ", entry " + (i + 1) + ": expected a number, found " + kind(array, i));
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

  private static String kind(TomlArray array, int index) {
    return Section.kindOf(array.get(index));
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
