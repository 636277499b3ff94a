package org.boostwright.core.settings.file;

import java.util.ArrayList;
import java.util.List;
import org.tomlj.Toml;
import org.tomlj.TomlArray;
import org.tomlj.TomlParseResult;

/**
 * Puts other numbers into a list or table of a file's text. Where the shape stays, each number is
 * replaced where it stands and columns stay lined up, with their comments; else the whole list is
 * written anew.
 */
final class ListEdit {
  private final StringBuilder text;

  ListEdit(String text) {
    this.text = new StringBuilder(text);
  }

  /**
   * The text with other numbers in one of its lists.
   *
   * @param parsed the text, parsed
   * @param rows the numbers; one row only for a plain list
   * @param nested true for a list of rows
   */
  String replace(TomlParseResult parsed, String key, double[][] rows, boolean nested) {
    TomlArray standing = parsed.getArrayOrEmpty(key);
    if (sameShape(standing, rows, nested)) {
      overwriteCells(standing, rows, nested);
    } else {
      String whole = text.toString();
      int open = TextSpan.listStart(whole, TextSpan.offset(whole, parsed.inputPositionOf(key)));
      text.replace(open, TextSpan.listEnd(whole, open), list(rows, nested));
    }
    return text.toString();
  }

  private static boolean sameShape(TomlArray standing, double[][] rows, boolean nested) {
    if (!nested) {
      return standing.size() == rows[0].length && standing.size() > 0 && !standing.isArray(0);
    }
    if (standing.size() != rows.length) {
      return false;
    }
    for (int i = 0; i < rows.length; i++) {
      if (!standing.isArray(i) || standing.getArray(i).size() != rows[i].length) {
        return false;
      }
    }
    return true;
  }

  /** A number in the text: from its first blank in front to its end. */
  private record Cell(int from, int start, int end, String fresh) {
    /** How many places are missing when the number is to stand there. */
    int missing(int column) {
      int room = end - from - (column == 0 ? 0 : 1);
      return Math.max(0, fresh.length() - room);
    }
  }

  private void overwriteCells(TomlArray standing, double[][] rows, boolean nested) {
    int columns = nested ? 0 : rows[0].length;
    List<List<Cell>> cells = new ArrayList<>();
    for (int row = 0; row < rows.length; row++) {
      TomlArray line = nested ? standing.getArray(row) : standing;
      List<Cell> found = new ArrayList<>();
      for (int i = 0; i < line.size(); i++) {
        found.add(cell(TextSpan.offset(text.toString(), line.inputPositionOf(i)), rows[row][i]));
      }
      columns = Math.max(columns, found.size());
      cells.add(found);
    }
    int[] wider = new int[columns];
    for (List<Cell> line : cells) {
      for (int i = 0; i < line.size(); i++) {
        wider[i] = Math.max(wider[i], line.get(i).missing(i));
      }
    }
    // Last cell first, so that the places of those before it stay right.
    for (int row = cells.size() - 1; row >= 0; row--) {
      for (int i = cells.get(row).size() - 1; i >= 0; i--) {
        Cell cell = cells.get(row).get(i);
        int width = cell.end() - cell.from() + wider[i];
        text.replace(cell.from(), cell.end(), Grid.right(cell.fresh(), width));
      }
    }
  }

  private Cell cell(int start, double value) {
    int end = TextSpan.numberEnd(text, start);
    int from = start;
    while (from > 0 && text.charAt(from - 1) == ' ') {
      from--;
    }
    String standing = text.substring(start, end);
    String fresh = SettingsEdit.number(value).toString();
    boolean same = valueOf(standing) == valueOf(fresh);
    return new Cell(from, start, end, same ? standing : fresh);
  }

  private static double valueOf(String token) {
    Object value = Toml.parse("v = " + token).get("v");
    return value instanceof Number number ? number.doubleValue() : Double.NaN;
  }

  private static String list(double[][] rows, boolean nested) {
    List<List<String>> cells = new ArrayList<>();
    for (double[] row : rows) {
      List<String> line = new ArrayList<>();
      for (double value : row) {
        line.add(SettingsEdit.number(value).toString());
      }
      cells.add(line);
    }
    if (!nested) {
      return "[" + String.join(", ", cells.get(0)) + "]";
    }
    StringBuilder block = new StringBuilder("[\n");
    for (String line : Grid.align(cells, ", ").split("\n", -1)) {
      block.append("  [").append(line).append("],\n");
    }
    return block.append("]").toString();
  }
}
