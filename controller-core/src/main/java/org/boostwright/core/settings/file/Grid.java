package org.boostwright.core.settings.file;

import java.util.List;

/** Lines up columns of text. */
final class Grid {
  private Grid() {}

  /** One line per row, every column flush right and as wide as its widest cell. */
  static String align(List<List<String>> rows) {
    return align(rows, "  ");
  }

  /** As above, with a text of one's own between the columns. */
  static String align(List<List<String>> rows, String between) {
    int columns = rows.stream().mapToInt(List::size).max().orElse(0);
    int[] widths = new int[columns];
    for (List<String> row : rows) {
      for (int i = 0; i < row.size(); i++) {
        widths[i] = Math.max(widths[i], row.get(i).length());
      }
    }
    StringBuilder text = new StringBuilder();
    for (List<String> row : rows) {
      if (text.length() > 0) {
        text.append('\n');
      }
      for (int i = 0; i < row.size(); i++) {
        text.append(i == 0 ? "" : between).append(right(row.get(i), widths[i]));
      }
    }
    return text.toString();
  }

  /** Text filled with blanks on the left. */
  static String right(String text, int width) {
    return " ".repeat(Math.max(0, width - text.length())) + text;
  }

  /** Text filled with blanks on the right. */
  static String left(String text, int width) {
    return text + " ".repeat(Math.max(0, width - text.length()));
  }
}
