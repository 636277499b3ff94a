package org.boostwright.rig.replay.csv;

import java.util.ArrayList;
import java.util.List;
import java.util.Locale;
import java.util.regex.Matcher;
import java.util.regex.Pattern;
import org.jspecify.annotations.Nullable;

/**
 * One cell of a header line, taken apart into the words of a name and a unit.
 *
 * <p>The unit stands in brackets at the end ({@code Engine speed [rpm]}) or as the last words
 * ({@code map_kpa_abs}).
 *
 * @param text the cell as written, blanks trimmed
 * @param words words of the name, lower case; those of a unit too when no brackets set it apart
 * @param unitText what stands where a unit stands, empty when nothing does
 * @param unit the unit, null when none was understood
 */
record HeaderCell(String text, List<String> words, String unitText, @Nullable UnitText unit) {

  private static final Pattern BRACKETED = Pattern.compile("^(.*?)[\\[(]([^\\[\\]()]*)[\\])]\\s*$");
  private static final Pattern CAMEL = Pattern.compile("(?<=[a-z])(?=[A-Z])");
  private static final Pattern BLANKS = Pattern.compile("[\\s_\\-.,:;#]+");
  private static final int LONGEST = 200;

  static HeaderCell parse(String cell) {
    String text = cell.strip();
    if (text.length() > LONGEST) {
      return new HeaderCell(text.substring(0, LONGEST), List.of(), "", null);
    }
    Matcher bracketed = BRACKETED.matcher(text);
    if (bracketed.matches()) {
      String inside = bracketed.group(2);
      UnitText unit = UnitText.parse(inside);
      List<String> words = words(bracketed.group(1));
      if (unit == null) {
        words.addAll(words(inside));
      }
      return new HeaderCell(text, List.copyOf(words), inside.strip(), unit);
    }
    List<String> words = words(text);
    for (int take = Math.min(2, words.size() - 1); take >= 1; take--) {
      int from = words.size() - take;
      String last = String.join("_", words.subList(from, words.size()));
      UnitText unit = UnitText.parse(last);
      if (unit != null) {
        return new HeaderCell(text, List.copyOf(words), last, unit);
      }
    }
    // A bare "rpm" is both the name and the unit.
    return new HeaderCell(
        text, List.copyOf(words), "", words.size() == 1 ? UnitText.parse(words.get(0)) : null);
  }

  /** The same column with the unit that a row below the header gives. */
  HeaderCell withUnit(String below) {
    List<String> all = new ArrayList<>(words);
    all.addAll(words(below));
    return new HeaderCell(text, List.copyOf(all), below, UnitText.parse(below));
  }

  private static List<String> words(String text) {
    List<String> words = new ArrayList<>();
    for (String part : BLANKS.split(CAMEL.matcher(text).replaceAll(" "))) {
      if (!part.isEmpty()) {
        words.add(part.toLowerCase(Locale.ROOT));
      }
    }
    return words;
  }

  /** True when the name holds this word. */
  boolean has(String word) {
    return words.contains(word);
  }

  /** True when the name holds one of these words. */
  boolean hasAny(String... any) {
    for (String word : any) {
      if (words.contains(word)) {
        return true;
      }
    }
    return false;
  }
}
