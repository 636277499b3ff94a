package org.boostwright.rig.replay.csv;

/** What the import put right by itself, in the words of the report. */
public enum RepairKind {
  BYTE_ORDER_MARK("byte order mark skipped"),
  LATIN_1("not UTF-8, read as Latin-1"),
  MANGLED_DEGREE("mangled degree sign in the header understood"),
  LINES_BEFORE_HEADER("line before the header skipped"),
  DECIMAL_COMMA("decimal comma read"),
  MISSING_CELL("empty cell: the last value is held"),
  NO_VALUE_WORD("cell says there is no value: the last value is held"),
  UNREADABLE_CELL("cell is no number: the last value is held"),
  IMPOSSIBLE_VALUE("number cannot be this signal: the last value is held"),
  SHORT_ROW("row is short: the cells it lacks are taken as empty"),
  LONG_ROW("row has too many cells: left out"),
  TRAILING_SEPARATOR("separator at the end of the row ignored"),
  UNREADABLE_TIME("row without a readable time: left out"),
  MIDNIGHT("time of day passes midnight: a day added from here on"),
  BACKWARD_TIME("row out of order in time: left out"),
  CLOCK_SET_BACK("clock set back for good: the recording starts again here"),
  REPEATED_TIME("same time as the row before: rows spread evenly"),
  PAUSE("pause of the logger: the recording starts again after it");

  private final String words;

  RepairKind(String words) {
    this.words = words;
  }

  /** As shown to people. */
  public String words() {
    return words;
  }
}
