package org.boostwright.core.settings.file;

import java.math.BigDecimal;
import java.math.MathContext;
import java.util.Collection;
import java.util.Locale;
import org.jspecify.annotations.Nullable;

/** Numbers and names as people read them. */
public final class Words {
  private static final MathContext SHORT = new MathContext(5);
  private static final MathContext EXACT = new MathContext(10);

  private Words() {}

  /** A number to five significant digits, for messages. */
  static String number(double value) {
    return digits(value, SHORT);
  }

  /**
   * A number to ten significant digits: enough to tell apart any two that a person would write, few
   * enough to hide the last bits of a unit conversion.
   */
  static String exact(double value) {
    return digits(value, EXACT);
  }

  private static String digits(double value, MathContext precision) {
    if (Double.isNaN(value)) {
      return "not known";
    }
    if (Double.isInfinite(value)) {
      return value > 0 ? "no limit" : "minus infinity";
    }
    BigDecimal rounded = new BigDecimal(value).round(precision).stripTrailingZeros();
    if (rounded.signum() == 0) {
      return "0";
    }
    int exponent = rounded.precision() - rounded.scale() - 1;
    return exponent > 15 || exponent < -9 ? rounded.toString() : rounded.toPlainString();
  }

  /** The known word a mistyped one most likely stands for, null when none is near. */
  public static @Nullable String nearest(String word, Collection<String> known) {
    String best = null;
    int bestDistance = Math.max(2, word.length() / 3) + 1;
    for (String candidate : known) {
      int distance = distance(word.toLowerCase(Locale.ROOT), candidate);
      if (distance < bestDistance) {
        best = candidate;
        bestDistance = distance;
      }
    }
    return best;
  }

  /**
   * Edits between two words: letters put in, left out, changed, and neighbours swapped (Damerau,
   * Communications of the ACM 7, 1964, 171-176).
   */
  static int distance(String a, String b) {
    int[][] d = new int[a.length() + 1][b.length() + 1];
    for (int i = 0; i <= a.length(); i++) {
      d[i][0] = i;
    }
    for (int j = 0; j <= b.length(); j++) {
      d[0][j] = j;
    }
    for (int i = 1; i <= a.length(); i++) {
      for (int j = 1; j <= b.length(); j++) {
        int change = a.charAt(i - 1) == b.charAt(j - 1) ? 0 : 1;
        int least = Math.min(Math.min(d[i - 1][j], d[i][j - 1]) + 1, d[i - 1][j - 1] + change);
        if (i > 1
            && j > 1
            && a.charAt(i - 1) == b.charAt(j - 2)
            && a.charAt(i - 2) == b.charAt(j - 1)) {
          least = Math.min(least, d[i - 2][j - 2] + 1);
        }
        d[i][j] = least;
      }
    }
    return d[a.length()][b.length()];
  }
}
