package org.boostwright.rig.result;

/**
 * Text that came from a file, made fit to be shown: nothing in it can move the cursor, colour a
 * terminal, turn the reading direction of what follows or push everything else off the page.
 */
public final class SafeText {
  /** Longest text shown whole, in UTF-16 units; a sentence has some hundred. */
  public static final int LONGEST = 2_000;

  private static final char MARK = '\uFFFD';

  private SafeText() {}

  /**
   * The text with a visible mark for every control character (ECMA-48), directional control
   * (Unicode Standard Annex 9), other invisible format character and unpaired surrogate; cut after
   * {@link #LONGEST} with the length it had. Line feed and tabulator stay.
   */
  public static String visible(String text) {
    int length = Math.min(text.length(), LONGEST);
    StringBuilder shown = new StringBuilder(length + 32);
    for (int i = 0; i < length; i++) {
      char c = text.charAt(i);
      if (Character.isHighSurrogate(c) && i + 1 < length) {
        char low = text.charAt(i + 1);
        if (Character.isLowSurrogate(low)
            && Character.getType(Character.toCodePoint(c, low)) != Character.FORMAT) {
          shown.append(c).append(low);
          i++;
          continue;
        }
      }
      shown.append(hidden(c) ? MARK : c);
    }
    if (length < text.length()) {
      shown.append("… (").append(text.length()).append(" characters)");
    }
    return shown.toString();
  }

  private static boolean hidden(char c) {
    if (c == '\n' || c == '\t') {
      return false;
    }
    int type = Character.getType(c);
    return type == Character.CONTROL
        || type == Character.FORMAT
        || type == Character.SURROGATE
        || type == Character.LINE_SEPARATOR
        || type == Character.PARAGRAPH_SEPARATOR;
  }
}
