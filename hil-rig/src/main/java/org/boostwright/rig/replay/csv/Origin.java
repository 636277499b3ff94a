package org.boostwright.rig.replay.csv;

/** Where a number about a signal comes from. */
public enum Origin {
  /** A mapping file says so. */
  DECLARED("declared"),
  /** Found in the data. */
  FOUND("found"),
  /** Too few changes to find it; taken over from the log's other signals. */
  ASSUMED("assumed");

  private final String words;

  Origin(String words) {
    this.words = words;
  }

  /** As shown to people. */
  public String words() {
    return words;
  }
}
