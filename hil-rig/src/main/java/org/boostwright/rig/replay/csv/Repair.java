package org.boostwright.rig.replay.csv;

/**
 * One kind of repair in one column, counted.
 *
 * @param kind what was put right
 * @param column header of the column, empty where the repair is not about one
 * @param count how often
 * @param firstLine line in the file of the first, from 1
 * @param lastLine line in the file of the last
 * @param example what stood in the first place, shortened; empty where nothing did
 */
public record Repair(
    RepairKind kind, String column, int count, int firstLine, int lastLine, String example) {

  /** One line for people. */
  public String text() {
    String where = firstLine == lastLine ? "line " + firstLine : lines();
    String what = column.isEmpty() ? kind.words() : column + ": " + kind.words();
    return what + ", " + where + (example.isEmpty() ? "" : ", first '" + example + "'");
  }

  private String lines() {
    return count + " times, lines " + firstLine + " to " + lastLine;
  }
}
