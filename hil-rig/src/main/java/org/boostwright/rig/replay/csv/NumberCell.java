package org.boostwright.rig.replay.csv;

import ch.randelshofer.fastdoubleparser.JavaDoubleParser;
import java.util.Locale;
import java.util.Set;

/** Reads plain decimal numbers: no hexadecimal, no words, no thousands separators. */
final class NumberCell {
  private static final Set<String> NO_VALUE =
      Set.of("-", "--", "---", "nan", "n/a", "#n/a", "na", "null", "none", "nil", "no data");

  private NumberCell() {}

  /** The number; NaN when the text is none or too large for one. */
  static double parse(String cell, boolean decimalComma) {
    String text = decimalComma ? cell.replace(',', '.') : cell;
    for (int i = 0; i < text.length(); i++) {
      char c = text.charAt(i);
      if (!(c >= '0' && c <= '9') && c != '.' && c != '-' && c != '+' && c != 'e' && c != 'E') {
        return Double.NaN;
      }
    }
    try {
      double value = JavaDoubleParser.parseDouble(text);
      return Double.isInfinite(value) ? Double.NaN : value;
    } catch (NumberFormatException e) {
      return Double.NaN;
    }
  }

  /** True for the words by which loggers say that they have no value. */
  static boolean saysNoValue(String cell) {
    return NO_VALUE.contains(cell.toLowerCase(Locale.ROOT));
  }

  /** True when the text is a number with a decimal comma, and none with a point. */
  static boolean hasDecimalComma(String cell) {
    int comma = cell.indexOf(',');
    return comma >= 0
        && cell.indexOf('.') < 0
        && cell.indexOf(',', comma + 1) < 0
        && !Double.isNaN(parse(cell, true));
  }
}
